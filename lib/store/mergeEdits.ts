import { group } from 'd3-array';
import type { ComputedDefinition } from '../sheet/edits.ts';
import type { CellsEdit, Entered, JournalEdit, RowId, RowsColumn } from './journal.ts';
import type { Merge, MergedCell, MergedFormula } from './merge.ts';

/** Which of two unlike cells stands after a merge. */
export type Choice = 'ours' | 'theirs';

/** What was chosen for cells and formulas that differ. */
export interface MergeChoices {
  readonly cell: (conflict: MergedCell) => Choice;
  readonly formula?: (conflict: MergedFormula) => Choice;
}

/** How the rows are named to which a merge is applied. */
export interface MergeRows {
  readonly idAt: (row: number) => RowId;
  /** The ids of rows that come in. */
  readonly newId: (nth: number) => RowId;
  /** The row below which they stand; `null` for the top. */
  readonly last: RowId | null;
}

/**
 * A merge as edits of one change: applied together they make ours of both, and the choice stands in the history.
 * @param own  the computed columns of ours
 */
export function mergeEdits(
  merge: Merge,
  own: readonly ComputedDefinition[],
  choices: MergeChoices,
  rows: MergeRows,
): JournalEdit[] {
  const chosen = merge.conflicts.filter((conflict) => choices.cell(conflict) === 'theirs');
  const repeats = merge.numbered.map(({ row, repeat }): MergedCell => {
    return { column: 'repeat', row, ours: null, theirs: repeat };
  });
  return [
    ...cellsEdits(merge, [...repeats, ...merge.filled, ...chosen], rows),
    ...rowsEdits(merge, rows),
    ...formulaEdits(merge, own, choices.formula ?? (() => 'ours')),
  ];
}

function cellsEdits({ columns }: Merge, cells: readonly MergedCell[], { idAt }: MergeRows): CellsEdit[] {
  const byColumn = group(cells, ({ column }) => column);
  return Array.from(byColumn, ([column, changed]) => {
    const { holds, unit } = columns.find(({ name }) => name === column) ?? { holds: 'number' as const, unit: '1' };
    return {
      ...{ kind: 'cells', column, holds, unit },
      rows: changed.map(({ row }) => idAt(row)),
      before: changed.map(({ ours }) => ours),
      after: changed.map(({ theirs }) => theirs),
    };
  });
}

function rowsEdits({ newRows, columns, cellOfTheirs }: Merge, { newId, last }: MergeRows): JournalEdit[] {
  if (newRows.length === 0) return [];
  const ids = newRows.map((_, nth) => newId(nth));
  const cellOf = (name: string) =>
    newRows.map(
      ({ row, repeat }): Entered => (name === 'repeat' && repeat !== undefined ? repeat : cellOfTheirs(name, row)),
    );
  const named = columns.some(({ name }) => name === 'repeat');
  const all: Merge['columns'] =
    named || newRows.every(({ repeat }) => repeat === undefined) ? columns : [...columns, repeatColumn];
  const filled = all.map(({ name, holds, unit }): RowsColumn => {
    const cells = name === 'repeat' && !named ? newRows.map(({ repeat }) => repeat ?? null) : cellOf(name);
    return { column: name, holds, unit, cells };
  });
  return [
    {
      ...{ kind: 'rows', how: 'add', rows: ids },
      below: ids.map((_, nth) => (nth === 0 ? last : ids[nth - 1])),
      columns: filled.filter(({ cells }) => cells.some((cell) => cell !== null)),
    },
  ];
}

const repeatColumn = { name: 'repeat', holds: 'number', unit: '1' } as const;

function formulaEdits(
  { newFormulas, formulaConflicts }: Merge,
  own: readonly ComputedDefinition[],
  choose: (conflict: MergedFormula) => Choice,
): JournalEdit[] {
  const changed = formulaConflicts
    .filter((conflict) => choose(conflict) === 'theirs')
    .map(({ ours, theirs }): JournalEdit => {
      const place = own.findIndex(({ name }) => name === ours.name);
      return { kind: 'own column', column: ours.name, place, before: ours, after: theirs };
    });
  const added = newFormulas.map((definition, nth): JournalEdit => {
    return { kind: 'own column', column: definition.name, place: own.length + nth, before: null, after: definition };
  });
  return [...changed, ...added];
}
