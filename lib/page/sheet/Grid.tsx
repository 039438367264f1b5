// biome-ignore-all lint/a11y/useSemanticElements: virtual rows are put in their place, which a table's own can't be
// biome-ignore-all lint/a11y/useFocusableInteractive: the cells take the focus, one at a time
import { Component } from 'preact';
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Column } from '../../sheet/column.ts';
import type { Sheet } from '../../sheet/sheet.ts';
import { cellText } from './cellText.ts';
import { copied } from './copied.ts';
import type { Order } from './matchingRows.ts';
import { type Cell, moved } from './moved.ts';
import type { ShownColumn } from './shownColumns.ts';
import { useVirtualRows } from './useVirtualRows.ts';

interface GridProps {
  readonly label: string;
  readonly sheet: Sheet;
  readonly columns: readonly ShownColumn[];
  /** Rows of the sheet in the order shown. */
  readonly rows: Uint32Array;
  readonly order?: Order;
  readonly onOrder: (column: string) => void;
  /** Told which column the focus is in. */
  readonly onColumn: (column: ShownColumn) => void;
  readonly onCopied: (cells: number) => void;
}

/**
 * The cells themselves, after the WAI-ARIA grid pattern: one stop for the Tab key, arrows inside, only the rows near the
 * screen in the document.
 */
export function Grid({ label, sheet, columns, rows, order, onOrder, onColumn, onCopied }: GridProps) {
  const scroller = useRef<HTMLDivElement>(null);
  const head = useRef<HTMLDivElement>(null);
  const rowHeight = useMemo(() => (matchMedia('(pointer: coarse)').matches ? 44 : 30), []);
  const [wantedFocus, setFocus] = useState<Cell>({ row: 0, column: 0 });
  const [wantedAnchor, setAnchor] = useState<Cell>(wantedFocus);
  const bring = useRef(false);
  // Rows may have gone since.
  const inside = ({ row, column }: Cell): Cell => ({
    row: Math.min(row, rows.length - 1),
    column: Math.max(0, Math.min(column, columns.length - 1)),
  });
  const focus = inside(wantedFocus);
  const anchor = inside(wantedAnchor);
  const { items, total } = useVirtualRows(scroller, rows.length, rowHeight, focus.row);
  const data = useMemo(() => columns.map(({ name }) => sheet.column(name)), [sheet, columns]);
  const template = useMemo(() => widths(columns, data, rows), [columns, data]);

  useLayoutEffect(() => {
    scroller.current!.style.scrollPaddingTop = `${head.current!.offsetHeight}px`;
  });
  useEffect(() => {
    if (!bring.current) return;
    bring.current = false;
    const cell = scroller.current!.querySelector<HTMLElement>('[tabindex="0"]');
    cell?.focus({ preventScroll: true });
    cell?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  });

  function go(to: Cell, extend: boolean) {
    bring.current = true;
    setFocus(to);
    if (!extend) setAnchor(to);
    onColumn(columns[to.column]);
  }

  function onKeyDown(event: KeyboardEvent) {
    const control = event.ctrlKey || event.metaKey;
    if (control && event.key === 'a') {
      event.preventDefault();
      setAnchor({ row: 0, column: 0 });
      bring.current = true;
      setFocus({ row: rows.length - 1, column: columns.length - 1 });
      return;
    }
    if (focus.row < 0 && (event.key === 'Enter' || event.key === ' ')) {
      event.preventDefault();
      onOrder(columns[focus.column].name);
      return;
    }
    if (event.altKey) return;
    const page = Math.max(1, Math.floor(scroller.current!.clientHeight / rowHeight) - 2);
    const to = moved(event.key, control, focus, { row: rows.length, column: columns.length }, page);
    if (!to) return;
    event.preventDefault();
    go(to, event.shiftKey && to.row >= 0);
  }

  function onClick(event: MouseEvent) {
    const cell = (event.target as Element).closest('[aria-colindex]');
    if (!cell) return;
    const to = {
      row: Number(cell.parentElement!.getAttribute('aria-rowindex')) - 2,
      column: Number(cell.getAttribute('aria-colindex')) - 1,
    };
    go(to, event.shiftKey && to.row >= 0);
    if (to.row < 0) onOrder(columns[to.column].name);
  }

  function onCopy(event: ClipboardEvent) {
    const [top, bottom] = [Math.min(focus.row, anchor.row), Math.max(focus.row, anchor.row)];
    const [left, right] = [Math.min(focus.column, anchor.column), Math.max(focus.column, anchor.column)];
    const text = (row: number, column: number) => {
      const shown = columns[left + column];
      return top + row < 0 ? headingText(shown) : cellText(data[left + column], rows[top + row], shown).value;
    };
    const size = { rows: bottom - top + 1, columns: right - left + 1 };
    event.clipboardData!.setData('text/plain', copied(size.rows, size.columns, text));
    event.preventDefault();
    onCopied(size.rows * size.columns);
  }

  return (
    <div
      class="grid"
      role="grid"
      aria-label={label}
      aria-rowcount={rows.length + 1}
      aria-colcount={columns.length}
      aria-multiselectable="true"
      ref={scroller}
      style={{ '--row-height': `${rowHeight}px` }}
      onClick={onClick}
      onKeyDown={onKeyDown}
      onCopy={onCopy}
    >
      <div class="grid-head" role="rowgroup" ref={head}>
        <div role="row" aria-rowindex={1} style={{ gridTemplateColumns: template }}>
          {columns.map((shown, column) => (
            <Head
              key={shown.name}
              shown={shown}
              index={column}
              order={order?.column === shown.name ? order.direction : undefined}
              focused={focus.row < 0 && focus.column === column}
            />
          ))}
        </div>
      </div>
      <div class="grid-body" role="rowgroup" style={{ height: `${total}px` }}>
        {items.map(({ index, start }) => {
          const chosen = between(index, focus.row, anchor.row);
          return (
            <Row
              key={index}
              index={index}
              start={start}
              row={rows[index]}
              columns={columns}
              data={data}
              template={template}
              focused={focus.row === index ? focus.column : -1}
              chosenFrom={chosen ? Math.min(focus.column, anchor.column) : -1}
              chosenTo={chosen ? Math.max(focus.column, anchor.column) : -1}
            />
          );
        })}
      </div>
    </div>
  );
}

interface HeadProps {
  readonly shown: ShownColumn;
  readonly index: number;
  readonly order: Order['direction'] | undefined;
  readonly focused: boolean;
}

const ORDER_WORDS = {
  text: { ascending: 'A to Z', descending: 'Z to A' },
  other: { ascending: 'rising', descending: 'falling' },
};

function Head({ shown, index, order, focused }: HeadProps) {
  const words = ORDER_WORDS[shown.kind === 'text' ? 'text' : 'other'];
  return (
    <div
      role="columnheader"
      aria-colindex={index + 1}
      aria-sort={order ?? 'none'}
      class={classes(shown)}
      tabIndex={focused ? 0 : -1}
    >
      <span>
        <ColumnName shown={shown} />
      </span>
      {shown.symbol && <span class="unit">{shown.symbol}</span>}
      {order && <span class="unit">{words[order]}</span>}
    </div>
  );
}

/** A column that is worked out carries the sign for "therefore", and says so to those who can't see it. */
export function ColumnName({ shown }: { shown: ShownColumn }) {
  return (
    <>
      {shown.formula !== undefined && (
        <>
          <span aria-hidden="true">∴ </span>
          <span class="unseen">worked out: </span>
        </>
      )}
      {shown.title}
    </>
  );
}

export const classes = ({ kind, formula }: ShownColumn): string =>
  `${kind === 'number' ? 'as-number' : ''}${formula === undefined ? '' : ' worked-out'}`;

const headingText = ({ title, symbol }: ShownColumn) => (symbol ? `${title} (${symbol})` : title);

interface RowProps {
  readonly index: number;
  readonly start: number;
  readonly row: number;
  readonly columns: readonly ShownColumn[];
  readonly data: readonly Column[];
  readonly template: string;
  readonly focused: number;
  readonly chosenFrom: number;
  readonly chosenTo: number;
}

/** A row is drawn again only when something of it has changed, so that scrolling costs the new rows alone. */
class Row extends Component<RowProps> {
  override shouldComponentUpdate(next: RowProps) {
    return (Object.keys(next) as (keyof RowProps)[]).some((name) => next[name] !== this.props[name]);
  }

  override render({ index, start, row, columns, data, template, focused, chosenFrom, chosenTo }: RowProps) {
    return (
      <div
        role="row"
        aria-rowindex={index + 2}
        style={{ transform: `translateY(${start}px)`, gridTemplateColumns: template }}
      >
        {columns.map((shown, column) => {
          const chosen = between(column, chosenFrom, chosenTo);
          const lone = chosenFrom === chosenTo && focused === chosenFrom;
          return (
            <div
              key={shown.name}
              role="gridcell"
              aria-colindex={column + 1}
              aria-selected={chosen}
              class={`${classes(shown)}${chosen && !lone ? ' chosen' : ''}`}
              tabIndex={focused === column ? 0 : -1}
            >
              <CellContent column={data[column]} row={row} shown={shown} />
            </div>
          );
        })}
      </div>
    );
  }
}

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
      {error && <span class="give"> ± {error}</span>}
    </>
  );
}

const between = (value: number, a: number, b: number) => value >= Math.min(a, b) && value <= Math.max(a, b);

/** Widths that fit the headings' longest words and a sample of the cells, as CSS grid tracks. */
function widths(columns: readonly ShownColumn[], data: readonly Column[], rows: Uint32Array): string {
  const sample = rows.subarray(0, 60);
  return columns
    .map((shown, index) => {
      let longest = Math.max(...shown.title.split(' ').map(({ length }) => length)) + (shown.formula ? 2 : 0);
      for (const row of sample) {
        const { value, error } = cellText(data[index], row, shown);
        longest = Math.max(longest, value.length + (error ? error.length + 3 : 0));
      }
      return `${Math.min(Math.max(longest, 7), 26) + 3}ch`;
    })
    .join(' ');
}
