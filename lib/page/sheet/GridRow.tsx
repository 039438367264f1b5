// biome-ignore-all lint/a11y/useSemanticElements: virtual rows are put in their place, which a table's own can't be
// biome-ignore-all lint/a11y/useFocusableInteractive: the cells take the focus, one at a time
import { Component } from 'preact';
import type { Column } from '../../sheet/column.ts';
import { CellContent } from './CellContent.tsx';
import { columnClass } from './ColumnName.tsx';
import type { ShownColumn } from './shownColumns.ts';

interface RowProps {
  /** Its place on the screen, from 0, and in px. */
  readonly index: number;
  readonly start: number;
  /** Its row in the sheet. */
  readonly row: number;
  readonly columns: readonly ShownColumn[];
  readonly data: readonly Column[];
  /** Which columns are near the screen. */
  readonly near: readonly number[];
  readonly template: string;
  /** The column of the focused cell, -1 where it is in another row; the first and last of the chosen ones. */
  readonly focused: number;
  readonly chosenFrom: number;
  readonly chosenTo: number;
}

/** A row is drawn again only when something of it has changed, so that scrolling costs the new rows alone. */
export class GridRow extends Component<RowProps> {
  override shouldComponentUpdate(next: RowProps) {
    return (Object.keys(next) as (keyof RowProps)[]).some((name) => next[name] !== this.props[name]);
  }

  override render({ index, start, row, columns, data, near, template, focused, chosenFrom, chosenTo }: RowProps) {
    const several = chosenFrom !== chosenTo || focused !== chosenFrom;
    return (
      <div
        role="row"
        aria-rowindex={index + 2}
        style={{ transform: `translateY(${start}px)`, gridTemplateColumns: template }}
      >
        {near.map((column) => {
          const chosen = column >= chosenFrom && column <= chosenTo;
          return (
            <div
              key={column}
              role="gridcell"
              aria-colindex={column + 1}
              aria-selected={chosen}
              class={`${columnClass(columns[column])}${chosen && several ? ' chosen' : ''}`}
              style={{ gridColumn: column + 1 }}
              tabIndex={focused === column ? 0 : -1}
            >
              <CellContent column={data[column]} row={row} shown={columns[column]} />
            </div>
          );
        })}
      </div>
    );
  }
}
