import {
  defaultRangeExtractor,
  elementScroll,
  observeElementOffset,
  observeElementRect,
  type VirtualItem,
  Virtualizer,
} from '@tanstack/virtual-core';
import { useLayoutEffect, useMemo, useReducer } from 'preact/hooks';

/**
 * Which rows stand in or near the part of a scrolling element that can be seen.
 * @param height of a row in px
 * @param always a row that is kept although it is out of sight: the one that holds the focus
 */
export function useVirtualRows(
  scroller: { readonly current: HTMLElement | null },
  count: number,
  height: number,
  always: number,
): { items: VirtualItem[]; total: number } {
  const [, redraw] = useReducer((times: number) => times + 1, 0);
  const virtualizer = useMemo(
    () =>
      new Virtualizer<HTMLElement, HTMLElement>({
        count,
        getScrollElement: () => scroller.current,
        estimateSize: () => height,
        scrollToFn: elementScroll,
        observeElementRect,
        observeElementOffset,
        onChange: redraw,
        initialRect: { width: 0, height: 700 },
      }),
    [],
  );
  virtualizer.setOptions({
    ...virtualizer.options,
    count,
    overscan: 8,
    estimateSize: () => height,
    rangeExtractor: (range) => {
      const rows = defaultRangeExtractor(range);
      if (always < 0 || always >= count || rows.includes(always)) return rows;
      return [...rows, always].sort((a, b) => a - b);
    },
  });
  useLayoutEffect(() => virtualizer._didMount(), []);
  useLayoutEffect(() => virtualizer._willUpdate());
  useLayoutEffect(() => virtualizer.measure(), [height]);
  return { items: virtualizer.getVirtualItems(), total: virtualizer.getTotalSize() };
}
