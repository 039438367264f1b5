import {
  defaultRangeExtractor,
  elementScroll,
  observeElementOffset,
  observeElementRect,
  type VirtualItem,
  Virtualizer,
} from '@tanstack/virtual-core';
import { useLayoutEffect, useMemo, useReducer } from 'preact/hooks';

interface Track {
  readonly count: number;
  /** Of one row or column, in px. */
  readonly size: (index: number) => number;
  /** Kept although out of sight: what holds the focus, what sticks to the edge. */
  readonly always: readonly number[];
  readonly horizontal?: boolean;
  /** How many more than can be seen, on either side. */
  readonly beyond: number;
}

/** Which rows, or columns, stand in or near the part of a scrolling element that can be seen. */
export function useVirtual(scroller: { readonly current: HTMLElement | null }, track: Track) {
  const [, redraw] = useReducer((times: number) => times + 1, 0);
  const { count, size, always, horizontal = false, beyond } = track;
  const options = {
    count,
    horizontal,
    overscan: beyond,
    estimateSize: size,
    getScrollElement: () => scroller.current,
    scrollToFn: elementScroll,
    observeElementRect,
    observeElementOffset,
    onChange: () => redraw(0),
    // Before it is measured: a usual screen.
    initialRect: { width: 1200, height: 700 },
    rangeExtractor: (range: Parameters<typeof defaultRangeExtractor>[0]) => {
      const near = new Set(defaultRangeExtractor(range));
      for (const index of always) if (index >= 0 && index < count) near.add(index);
      return [...near].sort((a, b) => a - b);
    },
  };
  const virtualizer = useMemo(() => new Virtualizer<HTMLElement, HTMLElement>(options), []);
  virtualizer.setOptions(options);
  useLayoutEffect(() => virtualizer._didMount(), []);
  useLayoutEffect(() => virtualizer._willUpdate());
  useLayoutEffect(() => virtualizer.measure(), [size]);
  const items: readonly VirtualItem[] = virtualizer.getVirtualItems();
  return { items, total: virtualizer.getTotalSize() };
}
