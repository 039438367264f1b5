import type { Columns, NumberColumn, TextColumn } from '../sheet/column.ts';
import type { Groups, Table } from '../sheet/table.ts';
import { means } from './average.ts';
import { oppositeRows } from './oppositeRows.ts';
import { partName } from './partName.ts';

/** What is summed up for each horse: its fronts, its hinds, and left minus right of both. */
export const summarised: readonly string[] = [
  'toe_angle_deg',
  'toe_length_mm',
  'toe_minus_pastern_deg',
  'toe_minus_heel_deg',
  'wall_level_mm',
  'heel_level_mm',
  'width_to_length',
  'frog_ratio',
];

const parts = ['front', 'hind'] as const;

/** The names of all columns that the summaries add. */
export const summaryNames: readonly string[] = [
  'occasions_measured',
  'last_measured',
  ...summarised.flatMap((name) =>
    parts.flatMap((part) => [partName(name, part), partName(name, `${part}_left_minus_right`)]),
  ),
];

/**
 * Summaries of each horse over all days and moments on which its feet were measured.
 * @param occasions  one row a foot, day and moment, with the relation `opposite`
 * @param horses  the horses, one row each in the result
 * @returns `occasions_measured`, `last_measured`, and for each summarised column the mean of the front and of the hind
 *   feet and the mean of left minus right in front and behind, with errors where known; missing where nothing was measured
 */
export function horseSummaries(occasions: Table, horses: readonly string[]): Columns {
  const horse = occasions.column('horse_id') as TextColumn;
  const codeOf = new Map(horses.map((name, code) => [name, code]));
  const places = horse.levels.map((name) => codeOf.get(name) ?? -1);
  const groups: Groups = { codes: horse.codes.map((code) => places[code]), count: horses.length };
  const end = occasions.column('end') as TextColumn;
  const side = occasions.column('side') as TextColumn;
  const opposite = oppositeRows(occasions);

  const columns: Columns = Object.create(null);
  columns.occasions_measured = { unit: '1', values: new Float64Array(horses.length) };
  columns.last_measured = { kind: 'date', values: new Float64Array(horses.length).fill(Number.NaN) };
  const days = occasions.column('date').values as Float64Array;
  const [count, last] = [
    columns.occasions_measured.values as Float64Array,
    columns.last_measured.values as Float64Array,
  ];
  for (const [row, code] of groups.codes.entries()) {
    count[code]++;
    if (!(days[row] <= last[code])) last[code] = days[row];
  }

  const byPart = parts.map((part) => onlyOf(groups, end, part));
  for (const name of summarised) {
    const column = occasions.column(name) as NumberColumn;
    const differences = leftMinusRight(column, side, opposite);
    for (const [i, part] of parts.entries()) {
      columns[partName(name, part)] = meansOf(column, byPart[i]);
      columns[partName(name, `${part}_left_minus_right`)] = meansOf(differences, byPart[i]);
    }
  }
  return columns;
}

/** The groups with the other end's feet in none. */
function onlyOf({ codes, count }: Groups, end: TextColumn, part: string): Groups {
  const wanted = end.levels.indexOf(part);
  return { codes: codes.map((code, row) => (end.codes[row] === wanted ? code : -1)), count };
}

/** On the rows of left feet, so that each pair counts once. */
function leftMinusRight({ unit, values, error }: NumberColumn, side: TextColumn, opposite: Int32Array): NumberColumn {
  const left = side.levels.indexOf('left');
  const paired = (row: number): boolean => side.codes[row] === left && opposite[row] >= 0;
  return {
    kind: 'number',
    unit,
    values: values.map((value, row) => (paired(row) ? value - values[opposite[row]] : Number.NaN)),
    error: error?.map((e, row) => (paired(row) ? Math.hypot(e, error[opposite[row]]) : Number.NaN)),
  };
}

function meansOf({ kind, unit, values, error }: NumberColumn, groups: Groups): NumberColumn {
  return { kind, unit, ...means(values, error, groups) };
}
