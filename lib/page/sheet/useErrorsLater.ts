import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Column } from '../../sheet/column.ts';
import { ComputedColumn } from '../../sheet/computedColumn.ts';

/** From how many rows on the errors of a whole computed column take longer than a frame. */
const MANY = 20_000;
const REST_MS = 60;

/**
 * The columns of a long sheet whose errors are not worked out yet: their values stand there at once, the errors follow
 * column by column once scrolling and typing rest.
 * @param near which columns are near the screen; no others are waited for
 */
export function useErrorsLater(data: readonly Column[], near: readonly number[], rows: number): ReadonlySet<Column> {
  const [known, learn] = useState<ReadonlySet<Column>>(() => new Set());
  const waiting = useMemo(
    () =>
      new Set(
        rows < MANY
          ? []
          : near
              .map((index) => data[index])
              .filter((column) => column instanceof ComputedColumn && !column.errors.ready() && !known.has(column)),
      ),
    [data, near, rows, known],
  );
  useEffect(() => {
    const [next] = waiting;
    if (!next) return;
    const timer = setTimeout(() => {
      void (next.kind !== 'text' && next.error);
      learn((before) => new Set([...data.filter((column) => before.has(column)), next]));
    }, REST_MS);
    return () => clearTimeout(timer);
  });
  return waiting;
}
