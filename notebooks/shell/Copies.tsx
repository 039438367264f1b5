import { useEffect, useState } from 'preact/hooks';
import { say } from '../../lib/index.ts';
import { inUse } from './herdInUse.ts';
import { Later } from './Later.tsx';

/** The door to copies of the record outside the browser, with a quiet line where the last one is old. */
export function Copies() {
  const [open, setOpen] = useState(false);
  const [line, setLine] = useState<string | undefined>();
  const own = inUse.value?.whose === 'own' ? inUse.value.record : undefined;
  useEffect(() => {
    setLine(undefined);
    if (own)
      import('./copies.ts')
        .then(async ({ reminder, resumeFolder }) => {
          await resumeFolder(own);
          setLine(await reminder(own));
        })
        .catch((error: unknown) => console.info(say`Nothing is known of copies of the record:`, error));
  }, [own]);
  if (!own) return null;
  return (
    <details class="records" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {say`Copies outside the browser`}
        {line && <span class="note"> · {line}</span>}
      </summary>
      {open && (
        <Later
          part={async () => (await import('./CopiesPanel.tsx')).CopiesPanel}
          record={own}
          saved={() => setLine(undefined)}
        />
      )}
    </details>
  );
}
