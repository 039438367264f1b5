import { useLayoutEffect, useState } from 'preact/hooks';

/** The width of an element in whole pixels, followed as it changes; 0 before it is on the page. */
export function useWidth(place: { readonly current: HTMLElement | null }): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = place.current!;
    const measure = () => setWidth(Math.floor(element.clientWidth));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return width;
}
