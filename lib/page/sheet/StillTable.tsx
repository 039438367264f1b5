import { useContext } from 'preact/hooks';
import { say } from '../../words/say.ts';
import type { SheetBlock } from '../blocks.ts';
import { SurroundingsContext } from '../surroundings.ts';
import { CellContent } from './CellContent.tsx';
import { ColumnName, columnClass } from './ColumnName.tsx';
import { shownColumns } from './shownColumns.ts';

/** What a sheet of paper holds; the rest is in the file that goes with the table, and the table says so. */
const MOST_ROWS = 60;
const MOST_COLUMNS = 10;

export function StillTable({ block }: { block: SheetBlock }) {
  const { units } = useContext(SurroundingsContext);
  const columns = shownColumns(block.sheet, block.columns, units);
  const rows = block.rows ?? Uint32Array.from({ length: block.sheet.rows }, (_, row) => row);
  const shown = columns.slice(0, MOST_COLUMNS);
  const data = shown.map(({ name }) => block.sheet.column(name));
  const left = [
    rows.length > MOST_ROWS ? say`${MOST_ROWS} of ${rows.length} rows` : '',
    columns.length > MOST_COLUMNS ? say`${MOST_COLUMNS} of ${columns.length} columns` : '',
  ].filter(Boolean);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table must be scrolled by keyboard too
    <section class="still-sheet" aria-label={block.title} tabIndex={0}>
      <table>
        <thead>
          <tr>
            {shown.map((column) => (
              <th key={column.name} scope="col" class={columnClass(column)}>
                <ColumnName shown={column} />
                {column.symbol && `, ${column.symbol}`}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {[...rows.subarray(0, MOST_ROWS)].map((row) => (
            <tr key={row}>
              {shown.map((column, index) => (
                <td key={column.name} class={columnClass(column)}>
                  <CellContent column={data[index]} row={row} shown={column} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {left.length > 0 && (
        <p class="note">{say`Shown here: ${left.join(say` and `)}. The whole table is in its CSV file.`}</p>
      )}
    </section>
  );
}
