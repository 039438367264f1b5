import { useMemo, useState } from 'preact/hooks';
import { counted } from '../../words/counted.ts';
import { say } from '../../words/say.ts';
import { wholeNumber } from '../../words/wholeNumber.ts';
import type { SheetBlock } from '../blocks.ts';
import { type Condition, matchingRows, type Order } from './matchingRows.ts';

/** Which rows of a sheet are seen and in what order, and how the reader changes that. */
export interface RowsInView {
  readonly conditions: readonly Condition[];
  readonly setConditions: (conditions: readonly Condition[]) => void;
  readonly order: Order | undefined;
  readonly sortBy: (column: string) => void;
  readonly rows: Uint32Array;
  /** Whether all rows are seen, in the table's own order. */
  readonly whole: boolean;
  readonly showAll: () => void;
  /** How many rows, in words. */
  readonly count: string;
}

/**
 * @param table what stays the same while cells are typed into, so that no row jumps or vanishes under one's hands
 */
export function useView(block: SheetBlock, table: unknown): RowsInView {
  const [conditions, setConditions] = useState<readonly Condition[]>([]);
  const [order, setOrder] = useState<Order | undefined>();
  const { sheet } = block;
  const rows = useMemo(
    () => matchingRows(sheet, conditions, order, block.rows),
    [table, sheet.rows, block.rows, conditions, order],
  );
  const all = block.rows?.length ?? sheet.rows;
  return {
    conditions,
    setConditions,
    order,
    sortBy(column) {
      if (order?.column !== column) setOrder({ column, direction: 'ascending' });
      else setOrder(order.direction === 'ascending' ? { column, direction: 'descending' } : undefined);
    },
    rows,
    whole: order === undefined && conditions.length === 0 && block.rows === undefined,
    showAll() {
      setConditions([]);
      setOrder(undefined);
    },
    count:
      rows.length < all
        ? counted(all, {
            one: say`${wholeNumber(rows.length)} of ${wholeNumber(all)} row`,
            other: say`${wholeNumber(rows.length)} of ${wholeNumber(all)} rows`,
          })
        : counted(all, { one: say`${wholeNumber(all)} row`, other: say`${wholeNumber(all)} rows` }),
  };
}
