/** A cell of the grid on the screen: row -1 is the heading. */
export interface Cell {
  readonly row: number;
  readonly column: number;
}

/**
 * Where a key leads in a grid, as the WAI-ARIA grid pattern has it.
 * @param size rows and columns of the grid
 * @param page how many rows a screen holds
 * @returns `undefined` for a key that doesn't move
 */
export function moved(key: string, control: boolean, at: Cell, size: Cell, page: number): Cell | undefined {
  const lastRow = size.row - 1;
  const lastColumn = size.column - 1;
  const go = (row: number, column: number) => ({
    row: Math.min(Math.max(row, -1), lastRow),
    column: Math.min(Math.max(column, 0), lastColumn),
  });
  switch (key) {
    case 'ArrowUp':
      return go(control ? -1 : at.row - 1, at.column);
    case 'ArrowDown':
      return go(control ? lastRow : at.row + 1, at.column);
    case 'ArrowLeft':
      return go(at.row, control ? 0 : at.column - 1);
    case 'ArrowRight':
      return go(at.row, control ? lastColumn : at.column + 1);
    case 'Home':
      return go(control ? Math.min(0, lastRow) : at.row, 0);
    case 'End':
      return go(control ? lastRow : at.row, lastColumn);
    case 'PageUp':
      return go(Math.max(at.row - page, Math.min(0, at.row)), at.column);
    case 'PageDown':
      return go(at.row + page, at.column);
    default:
      return undefined;
  }
}
