import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import {
  type Choice,
  counted,
  describeColumn,
  type Entered,
  formatQuantity,
  type KeptTable,
  type KeptTables,
  limbName,
  type Merge,
  type MergeChoices,
  type MergedCell,
  mergeOf,
  nothingNew,
  say,
  shownDay,
  type TableName,
  wholeNumber,
} from '../../lib/index.ts';
import { units } from './displayUnits.ts';
import { tableNames } from './herdInUse.ts';

/** What was decided about tables of which the record has some already. */
export type MergeDecision = 'replace' | { readonly [name in TableName]?: MergeChoices };

interface Props {
  /** Where the others come from, in words. */
  readonly from: string;
  readonly ours: KeptTables;
  readonly theirs: KeptTables;
  readonly answer: (decision: MergeDecision | undefined) => void;
}

/** How many cells that differ are shown at once. */
const PAGE = 100;

interface Difference {
  readonly key: string;
  readonly where: string;
  readonly what: string;
  readonly ours: string;
  readonly theirs: string;
}

/** Offers to merge tables into those of the record, or to put them in their place; of what differs one is chosen. */
export function MergeOffer({ from, ours, theirs, answer }: Props) {
  const place = useRef<HTMLElement>(null);
  useEffect(() => place.current?.focus(), []);
  const merges = useRef<readonly Merge[] | undefined>(undefined);
  merges.current ??= tableNames.flatMap((name) => {
    const [here, there] = [ours[name], theirs[name]];
    return here && there ? [mergeOf(name, here, there)] : [];
  });
  const found = merges.current;
  const [shown, setShown] = useState(PAGE);
  const [all, setAll] = useState<Choice>('ours');
  const [single, setSingle] = useState<ReadonlyMap<string, Choice>>(new Map());
  const differences = useMemo(() => found.flatMap((merge) => differencesOf(merge, ours[merge.table]!)), [units.value]);
  const chosen = (key: string) => single.get(key) ?? all;
  const settle = (choice: Choice) => {
    setAll(choice);
    setSingle(new Map());
  };
  const merge = () =>
    answer(
      Object.fromEntries(
        found.map(({ table }): [TableName, MergeChoices] => [
          table,
          {
            cell: (conflict) => chosen(cellKey(table, conflict)),
            formula: ({ ours: { name } }) => chosen(formulaKey(table, name)),
          },
        ]),
      ),
    );
  return (
    <section class="merging" tabIndex={-1} ref={place} aria-label={say`Merge ${from}`}>
      <h2>{say`Merge ${from} into what you have?`}</h2>
      <ul>
        {found.map((one) => (
          <li key={one.table}>{summary(one)}</li>
        ))}
      </ul>
      {differences.length > 0 && (
        <>
          <p>{say`Where both hold something and it is not the same, choose what stays. What you don’t choose can be found in the history.`}</p>
          <div class="merging-all">
            <button
              type="button"
              aria-pressed={single.size === 0 && all === 'ours'}
              onClick={() => settle('ours')}
            >{say`Keep mine in all`}</button>
            <button
              type="button"
              aria-pressed={single.size === 0 && all === 'theirs'}
              onClick={() => settle('theirs')}
            >{say`Take the other in all`}</button>
          </div>
          <table class="differences">
            <caption>
              {counted(differences.length, {
                one: say`${wholeNumber(differences.length)} cell differs`,
                other: say`${wholeNumber(differences.length)} cells differ`,
              })}
            </caption>
            <thead>
              <tr>
                <th scope="col">{say`Where`}</th>
                <th scope="col">{say`What`}</th>
                <th scope="col">{say`Mine`}</th>
                <th scope="col">{say`In ${brief(from)}`}</th>
              </tr>
            </thead>
            <tbody>
              {differences.slice(0, shown).map(({ key, where, what, ...sides }) => (
                <tr key={key}>
                  <th scope="row">{brief(where)}</th>
                  <td>{brief(what)}</td>
                  {(['ours', 'theirs'] as const).map((choice) => (
                    <td key={choice}>
                      <label>
                        <input
                          type="radio"
                          name={key}
                          checked={chosen(key) === choice}
                          onChange={() => setSingle(new Map(single).set(key, choice))}
                        />{' '}
                        <span class="unseen">
                          {brief(what)}, {brief(where)}, {choice === 'ours' ? say`mine` : say`the other`}:{' '}
                        </span>
                        <span class="side" aria-hidden="true">
                          {choice === 'ours' ? say`Mine` : say`The other`}
                        </span>{' '}
                        {brief(sides[choice])}
                      </label>
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
          {differences.length > shown && (
            <p>
              {say`${differences.length - shown} more stand as chosen for all.`}{' '}
              <button type="button" onClick={() => setShown(shown + PAGE)}>{say`Show more`}</button>
            </p>
          )}
        </>
      )}
      <div class="merging-end">
        {found.some((one) => !nothingNew(one)) ? (
          <button type="button" onClick={merge}>{say`Merge`}</button>
        ) : (
          <button type="button" onClick={merge}>{say`Nothing to merge, go on`}</button>
        )}
        <button type="button" onClick={() => answer('replace')}>{say`Replace what I have`}</button>
        <button type="button" onClick={() => answer(undefined)}>{say`Leave it`}</button>
      </div>
    </section>
  );
}

const cellKey = (table: TableName, { row, column }: MergedCell) => `${table} ${row} ${column}`;
const formulaKey = (table: TableName, name: string) => `${table} formula ${name}`;

const brief = (text: string) => (text.length > 120 ? `${text.slice(0, 120)}…` : text);

function summary({ table, newRows, filled, equal, conflicts, formulaConflicts }: Merge): string {
  const different = conflicts.length + formulaConflicts.length;
  const parts = [
    counted(newRows.length, {
      one: say`${wholeNumber(newRows.length)} row new`,
      other: say`${wholeNumber(newRows.length)} rows new`,
    }),
    counted(equal, { one: say`${wholeNumber(equal)} row the same`, other: say`${wholeNumber(equal)} rows the same` }),
    counted(filled.length, {
      one: say`${wholeNumber(filled.length)} cell filled in where mine is blank`,
      other: say`${wholeNumber(filled.length)} cells filled in where mine are blank`,
    }),
    counted(different, {
      one: say`${wholeNumber(different)} cell different`,
      other: say`${wholeNumber(different)} cells different`,
    }),
  ];
  return say`Table of ${table}: ${parts.join(', ')}.`;
}

function differencesOf({ table, conflicts, formulaConflicts, columns }: Merge, ours: KeptTable): Difference[] {
  const kinds = new Map(columns.map((column) => [column.name, column]));
  const cells = conflicts.map((conflict): Difference => {
    const { column, row } = conflict;
    const { holds, unit } = kinds.get(column)!;
    const shown = (cell: Entered) => inWords(cell, holds, unit);
    return {
      key: cellKey(table, conflict),
      where: rowWords(ours, row),
      what: describeColumn(column).title ?? column,
      ours: shown(conflict.ours),
      theirs: shown(conflict.theirs),
    };
  });
  const formulas = formulaConflicts.map(({ ours: mine, theirs }): Difference => {
    return {
      ...{ key: formulaKey(table, mine.name), where: say`Computed column of ${table}`, what: mine.title ?? mine.name },
      ...{ ours: mine.formula, theirs: theirs.formula },
    };
  });
  return [...cells, ...formulas];
}

function inWords(cell: Entered, holds: string, unit: string): string {
  if (cell === null) return '';
  if (typeof cell === 'object') return say`“${cell.text}” (not read)`;
  if (typeof cell === 'string') return cell;
  if (holds === 'date') return shownDay(cell);
  if (holds === 'boolean') return cell === 1 ? say`yes` : say`no`;
  // All digits of a pure number; a measured one as it is shown everywhere, and more where that would hide the difference.
  return unit === '1' ? String(cell) : formatQuantity(cell, unit, units.value, { digits: decimals(cell) });
}

const decimals = (value: number) => Math.max(1, Math.min((String(value).split('.')[1] ?? '').length, 6));

const keyColumns = ['horse_id', 'date', 'limb', 'moment', 'repeat'] as const;

function rowWords({ columns }: KeptTable, row: number): string {
  const words = keyColumns.flatMap((name) => {
    const value = columns[name]?.values[row];
    if (value === undefined || value === '' || Number.isNaN(value)) return [];
    if (name === 'date') return shownDay(Number(value));
    if (name === 'limb') return limbName(value as Parameters<typeof limbName>[0]) ?? String(value);
    return name === 'repeat' ? `repeat ${value}` : String(value);
  });
  return words.join(', ') || say`row ${row + 1}`;
}
