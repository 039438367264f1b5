import type { SqlOptions } from './formula/sql.ts';
import { sql } from './formula/sql.ts';
import type { Sheet } from './sheet.ts';

/**
 * One `SELECT` that gives a sheet's measured columns and, worked out by the database, the computed ones. It rests on
 * window functions alone, so that any engine that has those runs it.
 * @param table  the name of the stored table; what it must hold is said at `sql`
 * @param options  `rowId`: a stored column to sort the result by; `dialect`: for which engine (`standard`, `duckdb`,
 *   `trino`, `spark`); `dates`: the columns that are dates in the table, and not whole days since 1970-01-01
 * @example sqlOf(herd(tables).feet, 'feet', { dialect: 'spark', dates: ['date'] })
 */
export function sqlOf(
  sheet: Sheet,
  table: string,
  options: Pick<SqlOptions, 'rowId' | 'dialect' | 'dates'> = {},
): string {
  const { names, relations } = sheet;
  const formulas = names.flatMap((name) => {
    const node = sheet.checkedFormula(name);
    return node === undefined ? [] : [{ name, node }];
  });
  const stored = names.filter((name) => sheet.checkedFormula(name) === undefined);
  return sql(formulas, { ...options, table, names: stored, relations });
}
