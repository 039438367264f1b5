// biome-ignore-all lint/a11y/useSemanticElements: virtual rows are put in their place, which a table's own can't be
import { useCallback, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { counted } from '../../words/counted.ts';
import { say } from '../../words/say.ts';
import { wholeNumber } from '../../words/wholeNumber.ts';
import type { SheetBlock } from '../blocks.ts';
import { useWidth } from '../parts/useWidth.ts';
import { CellEditor } from './CellEditor.tsx';
import { cellText } from './cellText.ts';
import { characterWidth, columnLengths, columnWidths } from './columnWidths.ts';
import { copied } from './copied.ts';
import type { Editing } from './editing.ts';
import { GridHead } from './GridHead.tsx';
import { GridRow } from './GridRow.tsx';
import type { Order } from './matchingRows.ts';
import { type Cell, moved } from './moved.ts';
import type { ShownColumn } from './shownColumns.ts';
import { beginningText, clearCells, pasteBlock, type Region, type TypedGrid, typeCell, workedOut } from './typing.ts';
import { useErrorsLater } from './useErrorsLater.ts';
import { placeOf, useSameRow } from './useSameRow.ts';
import { useVirtual } from './useVirtual.ts';

interface GridProps {
  readonly label: string;
  readonly sheet: SheetBlock['sheet'];
  readonly columns: readonly ShownColumn[];
  /** Rows of the sheet in the order shown. */
  readonly rows: Uint32Array;
  readonly order?: Order;
  readonly onOrder: (column: string) => void;
  /** Told which cell the focus is in, and which block is chosen. */
  readonly onChosen: (focus: Cell, region: Region) => void;
  readonly onSaid: (words: string) => void;
  /** Grows with every change of the sheet. */
  readonly revision?: number;
  /** Left out where the sheet is only shown. */
  readonly editing?: Editing;
  /** Whether all rows are shown, in the table's own order. */
  readonly whole?: boolean;
}

interface Block {
  readonly focus: Cell;
  /** The corner of the chosen block that stays when it grows. */
  readonly anchor: Cell;
}

const TYPED = /^.$/u;

/**
 * The cells themselves, after the WAI-ARIA grid pattern: one stop for the Tab key, arrows inside, only the cells near the
 * screen in the document. The first column stays in sight. Where it is edited, typing begins in the cell that has the focus.
 */
export function Grid(props: GridProps) {
  const { label, sheet, columns, rows, order, onOrder, onChosen, onSaid, revision = 0, editing, whole = true } = props;
  const scroller = useRef<HTMLDivElement>(null);
  const head = useRef<HTMLDivElement>(null);
  const [chosen, choose] = useState<Block>({ focus: { row: 0, column: 0 }, anchor: { row: 0, column: 0 } });
  const [typing, type] = useState<string | undefined>();
  const typedRow = useRef<string | undefined>(undefined);
  const bring = useRef(false);
  const dragging = useRef(false);
  // Rows and columns may have gone since.
  const inside = ({ row, column }: Cell): Cell => ({
    row: Math.min(row, rows.length - 1),
    column: Math.min(column, columns.length - 1),
  });
  // What is typed into stays where it is seen; whose cell it is, is asked when it is put.
  const at = useSameRow(rows, chosen, inside(chosen.focus).row, typing === undefined ? editing?.rowKey : undefined);
  const focus = { ...inside(chosen.focus), row: at };
  const anchor = inside({ ...chosen.anchor, row: chosen.anchor.row + at - inside(chosen.focus).row });
  const region = regionOf(focus, anchor);
  const { top, bottom, left, right } = region;

  const rowHeight = useMemo(() => (matchMedia('(pointer: coarse)').matches ? 44 : 30), []);
  const data = useMemo(() => columns.map(({ name }) => sheet.column(name)), [sheet, columns, revision]);
  const room = useWidth(scroller);
  const character = useMemo(characterWidth, []);
  const lengths = useMemo(() => columnLengths(columns, data, rows), [columns]);
  const widths = useMemo(() => columnWidths(lengths, character, room), [lengths, character, room]);
  const template = useMemo(() => widths.map((width) => `${width}px`).join(' '), [widths]);
  const grid: TypedGrid | undefined = editing && { editing, columns, data, rows, whole };
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
  const bare = useErrorsLater(data, near, sheet.rows);

  // Only when the columns change: asking for a height makes the browser lay everything out at once.
  useLayoutEffect(() => {
    scroller.current!.style.scrollPaddingTop = `${head.current!.offsetHeight}px`;
    scroller.current!.style.scrollPaddingLeft = `${widths[0]}px`;
  }, [widths, near]);
  useLayoutEffect(() => {
    if (!bring.current) return;
    bring.current = false;
    const cell = scroller.current!.querySelector<HTMLElement>('[tabindex="0"]');
    if (typing === undefined) cell?.focus({ preventScroll: true });
    cell?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  });

  function go(to: Cell, extend = false) {
    bring.current = true;
    const block = extend && to.row >= 0 ? { focus: to, anchor } : { focus: to, anchor: to };
    choose(block);
    onChosen(to, regionOf(block.focus, block.anchor));
  }

  function begin(text?: string) {
    if (!grid || focus.row < 0 || typing !== undefined) return;
    if (!grid.editing.typed(columns[focus.column].name)) return onSaid(workedOut(columns[focus.column]));
    bring.current = true;
    choose({ focus, anchor: focus });
    typedRow.current = grid.editing.rowKey(rows[focus.row]);
    type(text ?? beginningText(grid, focus.row, focus.column));
  }

  /** Puts the text into the cell that typing began in. @returns the row to go on from */
  function put(text: string): number {
    const row = placeOf(rows, focus.row, typedRow.current, grid!.editing.rowKey);
    if (row < 0) onSaid(say`The row is gone; “${text}” was put nowhere`);
    else if (text !== beginningText(grid!, row, focus.column)) onSaid(typeCell(grid!, row, focus.column, text));
    return row < 0 ? focus.row : row;
  }

  function finish(text: string, down: number, right: number) {
    type(undefined);
    const row = put(text);
    if (down === 0 && right === 0) return;
    go(inside({ row: Math.max(row + down, 0), column: Math.max(focus.column + right, 0) }));
  }

  function onKeyDown(event: KeyboardEvent) {
    const control = event.ctrlKey || event.metaKey;
    const size = { row: rows.length, column: columns.length };
    const page = Math.max(1, Math.floor(scroller.current!.clientHeight / rowHeight) - 2);
    const to = moved(event.key, control, focus, size, page);
    if (to && !event.altKey) go(to, event.shiftKey);
    else if (control && event.key === 'a') {
      const all = { focus: { row: size.row - 1, column: size.column - 1 }, anchor: { row: 0, column: 0 } };
      bring.current = true;
      choose(all);
      onChosen(all.focus, regionOf(all.focus, all.anchor));
    } else if (focus.row < 0 && (event.key === 'Enter' || event.key === ' ')) onOrder(columns[focus.column].name);
    else if (grid && typesInto(event)) {
      // Done by the key.
    } else return;
    event.preventDefault();
  }

  /** What a key does in a grid that is typed into; whether it did anything. */
  function typesInto(event: KeyboardEvent): boolean {
    const control = event.ctrlKey || event.metaKey;
    if (focus.row < 0 || control || event.altKey) return false;
    if (event.key === 'F2' || event.key === ' ') begin();
    else if (event.key === 'Enter') go(inside({ ...focus, row: Math.max(0, focus.row + (event.shiftKey ? -1 : 1)) }));
    else if (event.key === 'Delete' || event.key === 'Backspace') onSaid(clearCells(grid!, region));
    else if (TYPED.test(event.key)) begin(event.key);
    else return false;
    return true;
  }

  function cellOf(event: Event): Cell | undefined {
    const cell = (event.target as Element).closest('[aria-colindex]');
    if (!cell) return undefined;
    return {
      row: Number(cell.parentElement!.getAttribute('aria-rowindex')) - 2,
      column: Number(cell.getAttribute('aria-colindex')) - 1,
    };
  }

  // A mouse draws out a block; a finger scrolls, and chooses where it taps.
  function onPointerDown(event: PointerEvent) {
    // What is being typed is done with where it stands, before the focus goes on.
    if (typing !== undefined) (document.activeElement as HTMLElement | null)?.blur();
    const to = cellOf(event);
    dragging.current = event.pointerType === 'mouse' && event.button === 0 && to !== undefined && to.row >= 0;
    if (dragging.current) go(to!, event.shiftKey);
  }

  function onPointerOver(event: PointerEvent) {
    if (!dragging.current) return;
    if (event.buttons !== 1) dragging.current = false;
    const to = cellOf(event);
    if (dragging.current && to && to.row >= 0 && (to.row !== focus.row || to.column !== focus.column)) go(to, true);
  }

  function onClick(event: MouseEvent) {
    const to = cellOf(event);
    const drawn = dragging.current;
    dragging.current = false;
    if (!to || (drawn && to.row >= 0)) return;
    // A second tap on a cell types into it.
    if (
      to.row >= 0 &&
      to.row === focus.row &&
      to.column === focus.column &&
      grid?.editing.typed(columns[to.column].name)
    )
      return begin();
    go(to, event.shiftKey);
    if (to.row < 0) onOrder(columns[to.column].name);
  }

  function onCopy(event: ClipboardEvent) {
    const size = { rows: bottom - top + 1, columns: right - left + 1 };
    const text = (row: number, column: number) => {
      const shown = columns[left + column];
      if (top + row < 0) return headingText(shown);
      if (grid && shown.typed) return beginningText(grid, top + row, left + column);
      return cellText(data[left + column], rows[top + row], shown).value;
    };
    event.clipboardData!.setData('text/plain', copied(size.rows, size.columns, text));
    event.preventDefault();
    const cells = size.rows * size.columns;
    onSaid(
      counted(cells, { one: say`${wholeNumber(cells)} cell copied`, other: say`${wholeNumber(cells)} cells copied` }),
    );
  }

  function onCut(event: ClipboardEvent) {
    if (!grid || top < 0) return;
    onCopy(event);
    onSaid(clearCells(grid, region));
  }

  function onPaste(event: ClipboardEvent) {
    if (!grid || top < 0) return;
    event.preventDefault();
    const pasted = pasteBlock(grid, region, event.clipboardData!.getData('text/plain'));
    onSaid(pasted.said);
    bring.current = true;
    const block = {
      focus: { row: top, column: left },
      anchor: { row: pasted.region.bottom, column: pasted.region.right },
    };
    choose(block);
    onChosen(block.focus, regionOf(block.focus, block.anchor));
  }

  const shown = columns[focus.column];
  const editor = typing !== undefined && (
    <CellEditor
      label={shown.symbol ? `${shown.title}, ${shown.symbol}` : shown.title}
      text={typing}
      onPut={put}
      onDone={finish}
      onGiveUp={() => {
        bring.current = true;
        type(undefined);
      }}
    />
  );
  return (
    <div
      class={`grid${grid ? ' typed-into' : ''}`}
      role="grid"
      aria-label={label}
      aria-rowcount={rows.length + 1}
      aria-colcount={columns.length}
      aria-multiselectable="true"
      ref={scroller}
      style={{ '--row-height': `${rowHeight}px` }}
      onPointerDown={onPointerDown}
      onPointerOver={onPointerOver}
      onClick={onClick}
      onDblClick={() => begin()}
      onKeyDown={onKeyDown}
      onCopy={onCopy}
      onCut={onCut}
      onPaste={onPaste}
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
              bare={bare}
              revision={revision}
              editing={editing}
              editor={focus.row === index && editor}
            />
          );
        })}
      </div>
    </div>
  );
}

function regionOf(focus: Cell, anchor: Cell): Region {
  return {
    top: Math.min(focus.row, anchor.row),
    bottom: Math.max(focus.row, anchor.row),
    left: Math.min(focus.column, anchor.column),
    right: Math.max(focus.column, anchor.column),
  };
}

const headingText = ({ title, symbol }: ShownColumn) => (symbol ? `${title} (${symbol})` : title);
