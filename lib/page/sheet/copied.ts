/**
 * A block of cells as spreadsheets and text editors take it from the clipboard.
 * @param text of a cell, by row and column of the block
 * @returns lines of tab-separated cells; tabs and line breaks inside a cell become spaces
 * @example copied(1, 2, (row, column) => `${row}:${column}`) // '0:0\t0:1'
 */
export function copied(rows: number, columns: number, text: (row: number, column: number) => string): string {
  const lines = Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => text(row, column).replace(/[\t\r\n]+/g, ' ')).join('\t'),
  );
  return lines.join('\n');
}
