import { type ColumnInput, TextColumn } from '../sheet/column.ts';

/**
 * The rows in which a column holds nothing, from 0.
 * @example emptyRows({ values: ['Bella', ' '] }) // [1]
 */
export function emptyRows(column: ColumnInput): number[] {
  if (column instanceof TextColumn) {
    const blank = Uint8Array.from(column.levels, (level) => (isBlank(level) ? 1 : 0));
    return emptyCodes(column.codes, blank);
  }
  if (column.values instanceof Float64Array) return emptyNumbers(column.values);
  return column.values.flatMap((text, row) => (isBlank(text) ? [row] : []));
}

function emptyCodes(codes: Int32Array, blank: Uint8Array): number[] {
  const rows: number[] = [];
  for (let row = 0; row < codes.length; row++) if (codes[row] < 0 || blank[codes[row]] === 1) rows.push(row);
  return rows;
}

function emptyNumbers(values: Float64Array): number[] {
  const rows: number[] = [];
  for (let row = 0; row < values.length; row++) if (Number.isNaN(values[row])) rows.push(row);
  return rows;
}

function isBlank(text: string): boolean {
  return text.trim() === '';
}
