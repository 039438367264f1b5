import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { render } from 'preact';
import type { DisplayUnits } from '../../sheet/display.ts';
import type { Download, SheetBlock } from '../blocks.ts';
import { fromHash, toHash } from '../controls.ts';
import { PageView } from '../PageView.tsx';
import type { Page } from '../page.ts';

export interface LivePage<Data> {
  readonly page: Page<Data>;
  readonly herd: ReadonlySignal<Data>;
  readonly units: ReadonlySignal<DisplayUnits>;
  /** The files that go with each table. */
  readonly files?: (block: SheetBlock) => readonly Download[];
}

/**
 * Draws a page into an element and keeps it up to date with its herd, its units and its controls. What the controls say
 * stands in the address after `#`, so that a reload or a link brings it back.
 * @returns how to take the page away again
 */
export function mountPage<Data>(
  element: HTMLElement,
  { page, herd, units, files = () => [] }: LivePage<Data>,
): () => void {
  const controls = signal(fromHash(location.hash));
  const follow = () => {
    controls.value = fromHash(location.hash);
  };
  addEventListener('hashchange', follow);
  const surroundings = computed(() => ({
    units: units.value,
    still: false,
    files,
    set: (name: string, value: Parameters<typeof toHash>[0][string]) => {
      controls.value = { ...controls.value, [name]: value };
      history.replaceState(null, '', `#${toHash(controls.value)}`);
    },
  }));
  render(<PageView page={page} herd={herd} controls={controls} surroundings={surroundings} />, element);
  return () => {
    removeEventListener('hashchange', follow);
    render(null, element);
  };
}
