// biome-ignore-all lint/a11y/useSemanticElements: virtual rows are put in their place, which a table's own can't be
// biome-ignore-all lint/a11y/useFocusableInteractive: the cells take the focus, one at a time
import { Component, type ComponentChild } from 'preact';
import type { Column } from '../../sheet/column.ts';
import { CellContent } from './CellContent.tsx';
import { columnClass } from './ColumnName.tsx';
import type { Editing } from './editing.ts';
import type { ShownColumn } from './shownColumns.ts';
import { UnreadCell } from './UnreadCell.tsx';

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
  /** Columns whose errors are not worked out yet. */
  readonly bare: ReadonlySet<Column>;
  /** Grows with every change of the sheet. */
  readonly revision: number;
  readonly editing?: Editing;
  /** Stands in place of the focused cell's words while it is typed into. */
  readonly editor?: ComponentChild;
}

/** A row is drawn again only when something of it has changed, so that scrolling costs the new rows alone. */
export class GridRow extends Component<RowProps> {
  override shouldComponentUpdate(next: RowProps) {
    return (Object.keys(next) as (keyof RowProps)[]).some((name) => next[name] !== this.props[name]);
  }

  override render() {
    const { index, start, row, columns, data, near, template, focused, chosenFrom, chosenTo, bare, editing, editor } =
      this.props;
    const several = chosenFrom !== chosenTo || focused !== chosenFrom;
    return (
      <div
        role="row"
        aria-rowindex={index + 2}
        class={focused < 0 ? undefined : 'in-front'}
        style={{ transform: `translateY(${start}px)`, gridTemplateColumns: template }}
      >
        {near.map((column) => {
          const shown = columns[column];
          const chosen = column >= chosenFrom && column <= chosenTo;
          const here = focused === column;
          const unread = shown.typed ? editing?.unread(shown.name, row) : undefined;
          const classes = [
            columnClass(shown),
            chosen && several ? 'chosen' : '',
            unread ? 'unread' : '',
            here && editor ? 'typing' : '',
          ];
          return (
            <div
              key={column}
              role="gridcell"
              aria-colindex={column + 1}
              aria-selected={chosen}
              aria-readonly={editing ? !shown.typed : undefined}
              aria-invalid={unread ? true : undefined}
              class={classes.filter(Boolean).join(' ')}
              style={{ gridColumn: column + 1 }}
              tabIndex={here ? 0 : -1}
            >
              {here && editor
                ? editor
                : !unread && (
                    <CellContent column={data[column]} row={row} shown={shown} bare={bare.has(data[column])} />
                  )}
              {unread && <UnreadCell unread={unread} near={here} alone={!(here && editor)} />}
            </div>
          );
        })}
      </div>
    );
  }
}
