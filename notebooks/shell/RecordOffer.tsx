import { useEffect, useRef } from 'preact/hooks';
import { counted, rowCount, say, type WholeRecord, wholeNumber } from '../../lib/index.ts';
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

const ownPages = (count: number) =>
  count === 0
    ? ''
    : counted(count, { one: say`, 1 page of its owner’s own`, other: say`, ${count} pages of its owner’s own` });

const rowsOf = (rows: number, table: string) =>
  counted(rows, { one: say`${wholeNumber(rows)} row of ${table}`, other: say`${wholeNumber(rows)} rows of ${table}` });

const changes = (count: number) =>
  counted(count, {
    one: say`${wholeNumber(count)} change in its history`,
    other: say`${wholeNumber(count)} changes in its history`,
  });

const photos = (count: number) =>
  counted(count, { one: say`, ${count} photograph`, other: say`, ${count} photographs` });

/** Offers to open a whole record beside those on this device, or to merge it into the one in use. */
export function RecordOffer({ file, record: { name, tables, journal, pages = [], photographs }, own, answer }: Props) {
  const place = useRef<HTMLElement>(null);
  useEffect(() => place.current?.focus(), []);
  const holds = tableNames.flatMap((table) => (tables[table] ? rowsOf(rowCount(tables[table].columns), table) : []));
  return (
    <section class="merging" tabIndex={-1} ref={place} aria-label={say`Open ${file}`}>
      <h2>{say`Open ${file}?`}</h2>
      <p>{say`It holds the record “${name || say`without a name`}”: ${holds.join(', ') || say`no table`}, ${changes(journal.length)}${ownPages(pages.length)}${photographs ? photos(photographs.size) : ''}.`}</p>
      <div class="merging-end">
        <button type="button" onClick={() => answer('beside')}>{say`Open it as a record of its own`}</button>
        {own !== undefined && (
          <button type="button" onClick={() => answer('merge')}>{say`Merge it into “${own}”`}</button>
        )}
        <button type="button" onClick={() => answer(undefined)}>{say`Leave it`}</button>
      </div>
    </section>
  );
}
