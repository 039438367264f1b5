import { useState } from 'preact/hooks';
import { say } from '../../lib/index.ts';
import { Later } from './Later.tsx';

/** The door to all records on this device. */
export function Records() {
  const [open, setOpen] = useState(false);
  return (
    <details class="records" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{say`Records on this device`}</summary>
      {open && <Later part={async () => (await import('./RecordsPanel.tsx')).RecordsPanel} />}
    </details>
  );
}
