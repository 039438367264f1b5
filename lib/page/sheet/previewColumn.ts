import type { Column } from '../../sheet/column.ts';
import { TextColumn } from '../../sheet/column.ts';
import type { ComputedDefinition } from '../../sheet/edits.ts';
import { parse } from '../../sheet/formula/parse.ts';
import { resolve } from '../../sheet/formula/resolve.ts';
import { FormulaError } from '../../sheet/formula/syntax.ts';
import { values } from '../../sheet/formula/values.ts';
import type { Table } from '../../sheet/table.ts';

/** What a formula would give before it is kept; or what is wrong with it, and where. */
export type Preview =
  | { readonly column: Column }
  | { readonly message: string; readonly start: number; readonly end: number }
  | undefined;

/** Works a column out without adding it. `undefined` for an empty formula. */
export function previewColumn(table: Table, { formula, unit }: Pick<ComputedDefinition, 'formula' | 'unit'>): Preview {
  if (formula.trim() === '') return undefined;
  try {
    const resolved = resolve(parse(formula), table, unit);
    const [found] = values([resolved.node], table);
    if (found instanceof TextColumn) return { column: found };
    const kind = resolved.kind === 'text' ? 'number' : resolved.kind;
    return { column: { kind, unit: resolved.unit, values: found } };
  } catch (error) {
    if (error instanceof FormulaError) return { message: error.message, start: error.start, end: error.end };
    return { message: error instanceof Error ? error.message : String(error), start: 0, end: formula.length };
  }
}
