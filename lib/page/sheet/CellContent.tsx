import type { Column } from '../../sheet/column.ts';
import { say } from '../../words/say.ts';
import { cellText } from './cellText.ts';
import type { ShownColumn } from './shownColumns.ts';

interface ContentProps {
  readonly column: Column;
  readonly row: number;
  readonly shown: ShownColumn;
  /** Without its error, which is not worked out yet. */
  readonly bare?: boolean;
}

/** A cell's words with its error; what is missing is said. */
export function CellContent({ column, row, shown, bare = false }: ContentProps) {
  const { value, error } = cellText(column, row, shown, bare);
  if (value === '')
    return (
      <span class="missing">
        <span aria-hidden="true">–</span>
        <span class="unseen">{say`missing`}</span>
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
