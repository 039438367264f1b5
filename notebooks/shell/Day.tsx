import { useState } from 'preact/hooks';
import type { HerdPage } from '../../lib/index.ts';
import { say } from '../../lib/index.ts';
import { inUse } from './herdInUse.ts';
import { Later } from './Later.tsx';

/** The door to the record as it stood on another day. */
export function Day({ page }: { page: HerdPage }) {
  const [open, setOpen] = useState(false);
  if (!inUse.value?.record?.own) return null;
  return (
    <details class="day unprinted" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{say`The record as it stood on another day`}</summary>
      {open && <Later part={async () => (await import('./DayPanel.tsx')).DayPanel} page={page} />}
    </details>
  );
}
