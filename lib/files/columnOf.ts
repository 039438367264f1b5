import type { TableName } from '../hoof/context.ts';
import type { Kind } from '../sheet/column.ts';
import type { ColumnPlan } from './columnPlan.ts';
import { schemas } from './schemas.ts';

/**
 * How cells typed into a column of a table are read: by the table's schema where it knows the column, else by the
 * column's own kind and unit.
 * @param headingUnit  UCUM code of a number that names no unit, where it is not the column's own
 */
export function columnOf(
  table: TableName,
  column: { readonly name: string; readonly kind: Kind; readonly unit: string },
  headingUnit?: string,
): ColumnPlan {
  const schema = schemas[table].columns.find(({ name }) => name === column.name);
  const { name } = column;
  const { kind, unit } = schema ?? column;
  return { name, heading: name, kind, unit, schema, ...(headingUnit === unit ? {} : { headingUnit }) };
}
