// biome-ignore-all lint/a11y/useSemanticElements: virtual rows are put in their place, which a table's own can't be
import { useCallback, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { SheetBlock } from '../blocks.ts';
import { cellText } from './cellText.ts';
import { columnWidths } from './columnWidths.ts';
import { copied } from './copied.ts';
import { GridHead } from './GridHead.tsx';
import { GridRow } from './GridRow.tsx';
import type { Order } from './matchingRows.ts';
import { type Cell, moved } from './moved.ts';
import type { ShownColumn } from './shownColumns.ts';
import { useVirtual } from './useVirtual.ts';

interface GridProps {
  readonly label: string;
  readonly sheet: SheetBlock['sheet'];
  readonly columns: readonly ShownColumn[];
  /** Rows of the sheet in the order shown. */
  readonly rows: Uint32Array;
  readonly order?: Order;
  readonly onOrder: (column: string) => void;
  /** Told which column the focus is in. */
  readonly onColumn: (column: ShownColumn) => void;
  readonly onCopied: (cells: number) => void;
}

interface Block {
  readonly focus: Cell;
  /** The corner of the chosen block that stays when it grows. */
  readonly anchor: Cell;
}

/**
 * The cells themselves, after the WAI-ARIA grid pattern: one stop for the Tab key, arrows inside, only the cells near the
 * screen in the document. The first column stays in sight.
 */
export function Grid({ label, sheet, columns, rows, order, onOrder, onColumn, onCopied }: GridProps) {
  const scroller = useRef<HTMLDivElement>(null);
  const head = useRef<HTMLDivElement>(null);
  const [chosen, choose] = useState<Block>({ focus: { row: 0, column: 0 }, anchor: { row: 0, column: 0 } });
  const bring = useRef(false);
  // Rows and columns may have gone since.
  const inside = ({ row, column }: Cell): Cell => ({
    row: Math.min(row, rows.length - 1),
    column: Math.min(column, columns.length - 1),
  });
  const [focus, anchor] = [inside(chosen.focus), inside(chosen.anchor)];
  const [top, bottom] = [Math.min(focus.row, anchor.row), Math.max(focus.row, anchor.row)];
  const [left, right] = [Math.min(focus.column, anchor.column), Math.max(focus.column, anchor.column)];

  const rowHeight = useMemo(() => (matchMedia('(pointer: coarse)').matches ? 44 : 30), []);
  const data = useMemo(() => columns.map(({ name }) => sheet.column(name)), [sheet, columns]);
  const widths = useMemo(() => columnWidths(columns, data, rows), [columns, data]);
  const template = useMemo(() => widths.map((width) => `${width}px`).join(' '), [widths]);
  const down = useVirtual(scroller, {
    count: rows.length,
    size: useCallback(() => rowHeight, [rowHeight]),
    always: [focus.row],
    beyond: 6,
  });
  const across = useVirtual(scroller, {
    count: columns.length,
    size: useCallback((column: number) => widths[column], [widths]),
    always: [0, focus.column],
    horizontal: true,
    beyond: 2,
  });
  const indexes = across.items.map(({ index }) => index);
  const near = useMemo(() => indexes, [indexes.join(' ')]);

  useLayoutEffect(() => {
    scroller.current!.style.scrollPaddingTop = `${head.current!.offsetHeight}px`;
    scroller.current!.style.scrollPaddingLeft = `${widths[0]}px`;
    if (!bring.current) return;
    bring.current = false;
    const cell = scroller.current!.querySelector<HTMLElement>('[tabindex="0"]');
    cell?.focus({ preventScroll: true });
    cell?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  });

  function go(to: Cell, extend: boolean) {
    bring.current = true;
    choose(extend && to.row >= 0 ? { focus: to, anchor } : { focus: to, anchor: to });
    onColumn(columns[to.column]);
  }

  function onKeyDown(event: KeyboardEvent) {
    const control = event.ctrlKey || event.metaKey;
    const size = { row: rows.length, column: columns.length };
    const page = Math.max(1, Math.floor(scroller.current!.clientHeight / rowHeight) - 2);
    const to = moved(event.key, control, focus, size, page);
    if (to && !event.altKey) go(to, event.shiftKey);
    else if (control && event.key === 'a') {
      bring.current = true;
      choose({ focus: { row: size.row - 1, column: size.column - 1 }, anchor: { row: 0, column: 0 } });
    } else if (focus.row < 0 && (event.key === 'Enter' || event.key === ' ')) onOrder(columns[focus.column].name);
    else return;
    event.preventDefault();
  }

  function onClick(event: MouseEvent) {
    const cell = (event.target as Element).closest('[aria-colindex]');
    if (!cell) return;
    const to = {
      row: Number(cell.parentElement!.getAttribute('aria-rowindex')) - 2,
      column: Number(cell.getAttribute('aria-colindex')) - 1,
    };
    go(to, event.shiftKey);
    if (to.row < 0) onOrder(columns[to.column].name);
  }

  function onCopy(event: ClipboardEvent) {
    const size = { rows: bottom - top + 1, columns: right - left + 1 };
    const text = (row: number, column: number) => {
      const shown = columns[left + column];
      return top + row < 0 ? headingText(shown) : cellText(data[left + column], rows[top + row], shown).value;
    };
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
      <div class="grid-head" role="rowgroup" ref={head} style={{ width: `${across.total}px` }}>
        <GridHead
          columns={columns}
          near={near}
          template={template}
          order={order}
          focused={focus.row < 0 ? focus.column : -1}
        />
      </div>
      <div class="grid-body" role="rowgroup" style={{ height: `${down.total}px`, width: `${across.total}px` }}>
        {down.items.map(({ index, start }) => {
          const inBlock = index >= top && index <= bottom;
          return (
            <GridRow
              key={index}
              index={index}
              start={start}
              row={rows[index]}
              columns={columns}
              data={data}
              near={near}
              template={template}
              focused={focus.row === index ? focus.column : -1}
              chosenFrom={inBlock ? left : -1}
              chosenTo={inBlock ? right : -2}
            />
          );
        })}
      </div>
    </div>
  );
}

const headingText = ({ title, symbol }: ShownColumn) => (symbol ? `${title} (${symbol})` : title);
