import { cellWord } from '../words/cellWord.ts';
import { say } from '../words/say.ts';
import type { Column } from './column.ts';
import { parse } from './formula/parse.ts';
import { resolve } from './formula/resolve.ts';
import { FormulaError } from './formula/syntax.ts';
import { values } from './formula/values.ts';
import type { Table } from './table.ts';

export interface SortBy<Name extends string = string> {
  readonly by: Name;
  readonly order?: 'ascending' | 'descending';
}

/** Which rows to see, and in what order. */
export interface View<Name extends string = string> {
  /** A formula that is true for the rows to see; where it is missing the row isn't seen. */
  readonly filter?: string;
  /** The first decides, the next among equals; equal rows stay in the table's order. */
  readonly sort?: SortBy<Name> | readonly SortBy<Name>[];
}

/**
 * The rows of a table that pass a filter, sorted. The table itself stays as it is.
 * Numbers go by size, text as in a book's index in the reader's language with numbers in it by size (`Hoof 9` before `Hoof 10`); missing values last,
 * whichever way the others go.
 * @returns row numbers, in the order to show
 * @throws FormulaError where the filter can't be used or isn't a yes/no
 * @example rowsWhere(table, { filter: 'toe_angle_deg > 50', sort: { by: 'toe_angle_deg', order: 'descending' } })
 */
export function rowsWhere(table: Table, { filter, sort = [] }: View): Uint32Array {
  const passed =
    filter === undefined ? Uint32Array.from({ length: table.rows }, (_, row) => row) : passing(table, filter);
  const keys = (Array.isArray(sort) ? (sort as readonly SortBy[]) : [sort as SortBy]).map(({ by, order }) => ({
    ranks: ranksOf(table.column(by), by),
    sign: order === 'descending' ? -1 : 1,
  }));
  if (keys.length === 0) return passed;
  return passed.sort((a, b) => {
    for (const { ranks, sign } of keys) {
      const [x, y] = [ranks[a], ranks[b]];
      if (x === y) continue;
      if (Number.isNaN(x)) {
        if (Number.isNaN(y)) continue;
        return 1;
      }
      return Number.isNaN(y) ? -1 : sign * (x - y);
    }
    return a - b;
  });
}

function passing(table: Table, filter: string): Uint32Array {
  const { node, kind } = resolve(parse(filter), table);
  if (kind !== 'boolean')
    throw new FormulaError(
      say`A filter says yes or no for each row, and this gives ${kind === 'text' ? say`text` : say`numbers`}. Compare it with something, as in toe_angle_deg > 50`,
      0,
      filter.length,
    );
  const [yes] = values([node], table) as Float64Array[];
  const rows = new Uint32Array(table.rows);
  let count = 0;
  for (let row = 0; row < yes.length; row++) if (yes[row] === 1) rows[count++] = row;
  return rows.slice(0, count);
}

const alphabet = new Intl.Collator(say`en`, { numeric: true });

/** Numbers in the order of the values, `NaN` for missing. */
function ranksOf(column: Column, name: string): Float64Array {
  if (column.kind !== 'text') return column.values;
  const { codes } = column;
  const levels = column.levels.map((level) => cellWord(name, level));
  const order = levels.map((_, code) => code).sort((a, b) => alphabet.compare(levels[a], levels[b]));
  const ranks = new Float64Array(levels.length);
  order.forEach((code, i) => {
    const equal = i > 0 && alphabet.compare(levels[order[i - 1]], levels[code]) === 0;
    ranks[code] = equal ? ranks[order[i - 1]] : i;
  });
  return Float64Array.from(codes, (code) => (code < 0 ? Number.NaN : ranks[code]));
}
