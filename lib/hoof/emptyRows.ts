import { type ColumnInput, TextColumn } from '../sheet/column.ts';

/**
 * The rows in which a column holds nothing, from 0.
 * @example emptyRows({ values: ['Bella', ' '] }) // [1]
 */
export function emptyRows(column: ColumnInput): number[] {
  const rows: number[] = [];
  if (column instanceof TextColumn) {
    const { codes } = column;
    const blank = column.levels.map(isBlank);
    for (let row = 0; row < codes.length; row++) if (codes[row] < 0 || blank[codes[row]]) rows.push(row);
  } else if (column.values instanceof Float64Array) {
    const { values } = column;
    for (let row = 0; row < values.length; row++) if (Number.isNaN(values[row])) rows.push(row);
  } else
    column.values.forEach((text, row) => {
      if (isBlank(text)) rows.push(row);
    });
  return rows;
}

function isBlank(text: string): boolean {
  return text.trim() === '';
}
