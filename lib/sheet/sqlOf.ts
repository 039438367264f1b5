import { sql } from './formula/sql.ts';
import type { Sheet } from './sheet.ts';

/**
 * One `SELECT` in standard SQL that gives a sheet's measured columns and, worked out by the database, the computed ones.
 * @param table  the name of the stored table; what it must hold is said at `sql`
 * @param rowId  a stored column to sort the result by
 */
export function sqlOf(sheet: Sheet, table: string, rowId?: string): string {
  const { names, relations } = sheet;
  const formulas = names.flatMap((name) => {
    const node = sheet.checkedFormula(name);
    return node === undefined ? [] : [{ name, node }];
  });
  const stored = names.filter((name) => sheet.checkedFormula(name) === undefined);
  return sql(formulas, { table, names: stored, relations, rowId });
}
