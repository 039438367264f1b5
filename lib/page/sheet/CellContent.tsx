import type { Column } from '../../sheet/column.ts';
import { cellText } from './cellText.ts';
import type { ShownColumn } from './shownColumns.ts';

/** A cell's words with its error; what is missing is said. */
export function CellContent({ column, row, shown }: { column: Column; row: number; shown: ShownColumn }) {
  const { value, error } = cellText(column, row, shown);
  if (value === '')
    return (
      <span class="missing">
        <span aria-hidden="true">–</span>
        <span class="unseen">missing</span>
      </span>
    );
  return (
    <>
      {value}
      {shown.typed && shown.symbol && <span class="unseen"> {shown.symbol}</span>}
      {error && <span class="give"> ± {error}</span>}
    </>
  );
}
