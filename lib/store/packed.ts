import { type ColumnInput, TextColumn } from '../sheet/column.ts';

/** A column as a database can hold it: a class would come back without its prototype. */
export type PackedColumn = ColumnInput | { readonly codes: Int32Array; readonly levels: readonly string[] };

/** A column as plain data, without the room that its arrays had to grow into: a view is kept with all that lies behind it. */
export function packed(column: ColumnInput): PackedColumn {
  if (column instanceof TextColumn) return { codes: alone(column.codes), levels: column.levels };
  const { values, error } = column;
  return {
    ...column,
    values: values instanceof Float64Array ? alone(values) : values,
    ...(error && { error: alone(error) }),
  };
}

function alone<Numbers extends Float64Array | Int32Array>(numbers: Numbers): Numbers {
  return numbers.byteLength === numbers.buffer.byteLength ? numbers : (numbers.slice() as Numbers);
}

/** The inverse of `packed`. */
export function unpacked(column: PackedColumn): ColumnInput {
  return 'codes' in column ? new TextColumn(column.codes, column.levels) : column;
}
