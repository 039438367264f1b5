import { type Columns, toColumn } from '../sheet/column.ts';
import type { TableSchema } from './schemas.ts';

/**
 * The schema by which a table that was written reads back as it was, column by column, whatever stands in it.
 * @example readTable(writeTable(columns), { schema: schemaOf(columns) }).columns // as `columns`
 */
export function schemaOf(columns: Columns): TableSchema {
  return {
    name: 'table',
    columns: Object.entries(columns).map(([name, input]) => {
      const { kind, unit } = toColumn(input);
      return { name, title: name, kind, unit, headings: [] };
    }),
    required: Object.keys(columns),
    keys: [],
  };
}
