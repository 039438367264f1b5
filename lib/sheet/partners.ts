import { type Column, TextColumn } from './column.ts';
import { groupRows } from './groups.ts';
import type { Relation } from './relation.ts';
import type { Table } from './table.ts';

/** What finding partners needs of a table. */
export type Rows = Pick<Table, 'rows' | 'names' | 'column'>;

/**
 * For each row the row that a relation leads to, or -1 where there is none, or more than one to choose from.
 * A missing value in a column to `match`, `swap` or look `before` leads nowhere; a missing value in an `optional`
 * column is equal to another missing one.
 * @throws TypeError or FormulaError where the table lacks a column that the relation needs
 */
export function findPartners(relation: Relation, table: Rows): Int32Array {
  const { rows } = table;
  const optional = (relation.optional ?? [])
    .filter((name) => table.names.includes(name))
    .map((name) => table.column(name));
  const matched = relation.match.map((name) => table.column(name));
  const swaps = Object.entries(relation.swap ?? {}).map(([name, map]) => swapOf(table.column(name), name, map));
  const here = groupRows([...matched, ...swaps.map(({ own }) => own)], rows);
  const there = swaps.length === 0 ? here.codes : swappedCodes(matched, swaps, here.codes, rows);
  const before = relation.before === undefined ? undefined : numbers(table.column(relation.before), relation.before);
  const choice = groupRows(optional, rows).codes;

  const known = [...matched, ...swaps.map(({ own }) => own)];
  const usable = Uint8Array.from({ length: rows }, (_, row) =>
    known.every((column) => present(column, row)) && !Number.isNaN(before?.[row]) ? 1 : 0,
  );
  const { starts, order } = arranged(here.codes, here.count, usable, before, choice);

  const partners = new Int32Array(rows).fill(-1);
  for (let row = 0; row < rows; row++) {
    const group = usable[row] ? there[row] : -1;
    if (group < 0) continue;
    let from = starts[group];
    let to = starts[group + 1];
    if (before) {
      to = from + lowerBound(order.subarray(from, to), (other) => before[other] < before[row]);
      if (to === from) continue;
      const nearest = before[order[to - 1]];
      from += lowerBound(order.subarray(from, to), (other) => before[other] < nearest);
    }
    const run = order.subarray(from, to);
    const first = lowerBound(run, (other) => choice[other] < choice[row]);
    // Past the end of the run stands nothing, which is nobody's choice.
    const own = choice[row];
    if (choice[run[first]] === own && choice[run[first + 1]] !== own) partners[row] = run[first];
  }
  return partners;
}

interface Swap {
  readonly own: TextColumn;
  /** For each row the code of the value that its partner has, or -1. */
  readonly partner: TextColumn;
}

function swapOf(column: Column, name: string, map: Readonly<Record<string, string>>): Swap {
  if (!(column instanceof TextColumn))
    throw new TypeError(`The column ${name} holds numbers, and a relation swaps the words of a text column`);
  const { levels } = column;
  const other = Int32Array.from(levels, (level) => (Object.hasOwn(map, level) ? levels.indexOf(map[level]) : -1));
  const codes = column.codes.map((code) => (code < 0 ? -1 : other[code]));
  return { own: column, partner: new TextColumn(codes, levels) };
}

/** The group that each row's partner is in. */
function swappedCodes(matched: readonly Column[], swaps: readonly Swap[], here: Int32Array, rows: number): Int32Array {
  // Rows as they are and as their partners must be, sorted into groups together.
  const twice = [
    ...matched.map((column) => stacked(column, column)),
    ...swaps.map(({ own, partner }) => stacked(own, partner)),
  ];
  const both = groupRows(twice, 2 * rows);
  const group = new Int32Array(both.count).fill(-1);
  for (let row = 0; row < rows; row++) group[both.codes[row]] = here[row];
  return both.codes.subarray(rows).map((code) => group[code]);
}

function stacked(top: Column, bottom: Column): Column {
  if (top instanceof TextColumn && bottom instanceof TextColumn) {
    const codes = new Int32Array(2 * top.codes.length);
    codes.set(top.codes);
    codes.set(bottom.codes, top.codes.length);
    return new TextColumn(codes, top.levels);
  }
  const values = new Float64Array(2 * top.values.length);
  values.set(top.values as Float64Array);
  values.set(bottom.values as Float64Array, top.values.length);
  return { kind: 'number', unit: '1', values };
}

function numbers(column: Column, name: string): Float64Array {
  if (column instanceof TextColumn)
    throw new TypeError(`The column ${name} holds text, and a relation looks for the nearest smaller number or date`);
  return column.values;
}

function present(column: Column, row: number): boolean {
  return column instanceof TextColumn ? column.codes[row] >= 0 : !Number.isNaN(column.values[row]);
}

/** The usable rows group by group, in a group by `before`, then by choice; group `g` from `starts[g]` to `starts[g + 1]`. */
function arranged(
  codes: Int32Array,
  count: number,
  usable: Uint8Array,
  before: Float64Array | undefined,
  choice: Int32Array,
): { starts: Int32Array; order: Int32Array } {
  const starts = new Int32Array(count + 1);
  for (let row = 0; row < codes.length; row++) if (usable[row]) starts[codes[row] + 1]++;
  for (let group = 0; group < count; group++) starts[group + 1] += starts[group];
  const next = starts.slice();
  const order = new Int32Array(starts[count]);
  for (let row = 0; row < codes.length; row++) if (usable[row]) order[next[codes[row]]++] = row;
  for (let group = 0; group < count; group++) {
    if (starts[group + 1] - starts[group] < 2) continue;
    order
      .subarray(starts[group], starts[group + 1])
      .sort((a, b) => (before ? before[a] - before[b] : 0) || choice[a] - choice[b]);
  }
  return { starts, order };
}

/** How many of the first entries satisfy a condition that no entry satisfies after one that doesn't. */
function lowerBound(sorted: Int32Array, below: (entry: number) => boolean): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (below(sorted[middle])) low = middle + 1;
    else high = middle;
  }
  return low;
}
