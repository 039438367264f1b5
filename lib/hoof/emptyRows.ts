import { type ColumnInput, TextColumn } from '../sheet/column.ts';

/**
 * The rows in which a column holds nothing, from 0.
 * @example emptyRows({ values: ['Bella', ' '] }) // [1]
 */
export function emptyRows(column: ColumnInput): number[] {
  const rows: number[] = [];
  if (column instanceof TextColumn) {
    const blank = column.levels.map(isBlank);
    column.codes.forEach((code, row) => {
      if (code < 0 || blank[code]) rows.push(row);
    });
  } else if (column.values instanceof Float64Array) {
    column.values.forEach((value, row) => {
      if (Number.isNaN(value)) rows.push(row);
    });
  } else
    column.values.forEach((text, row) => {
      if (isBlank(text)) rows.push(row);
    });
  return rows;
}

function isBlank(text: string): boolean {
  return text.trim() === '';
}
