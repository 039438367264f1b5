import { useEffect, useRef } from 'preact/hooks';
import { rowCount, type WholeRecord } from '../../lib/index.ts';
import { tableNames } from './herdInUse.ts';

/** What is done with a whole record out of a file. */
export type RecordDecision = 'beside' | 'merge' | undefined;

interface Props {
  readonly file: string;
  readonly record: WholeRecord;
  /** What the record in use is called, where there is one to merge with. */
  readonly own: string | undefined;
  readonly answer: (decision: RecordDecision) => void;
}

/** Offers to open a whole record beside those on this device, or to merge it into the one in use. */
export function RecordOffer({ file, record: { name, tables, journal, photographs }, own, answer }: Props) {
  const place = useRef<HTMLElement>(null);
  useEffect(() => place.current?.focus(), []);
  const holds = tableNames.flatMap((table) =>
    tables[table] ? `${rowCount(tables[table].columns)} rows of ${table}` : [],
  );
  return (
    <section class="merging" tabIndex={-1} ref={place} aria-label={`Open ${file}`}>
      <h2>Open {file}?</h2>
      <p>
        It holds the record “{name || 'without a name'}”: {holds.join(', ') || 'no table'}, {journal.length} changes in
        its history{photographs ? `, ${photographs.size} photographs` : ''}.
      </p>
      <div class="merging-end">
        <button type="button" onClick={() => answer('beside')}>
          Open it as a record of its own
        </button>
        {own !== undefined && (
          <button type="button" onClick={() => answer('merge')}>
            Merge it into “{own}”
          </button>
        )}
        <button type="button" onClick={() => answer(undefined)}>
          Leave it
        </button>
      </div>
    </section>
  );
}
