import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { render } from 'preact';
import type { DisplayUnits } from '../../sheet/display.ts';
import type { Download, SheetBlock } from '../blocks.ts';
import { fromHash, toHash } from '../controls.ts';
import { PageView } from '../PageView.tsx';
import type { ControlValue, ControlValues, Page } from '../page.ts';
import type { Editing } from '../sheet/editing.ts';
import type { RunTask } from '../task.ts';

export interface LivePage<Data> {
  readonly page: Page<Data>;
  readonly herd: ReadonlySignal<Data>;
  readonly units: ReadonlySignal<DisplayUnits>;
  /** The files that go with each table. */
  readonly files?: (block: SheetBlock) => readonly Download[];
  /** How tables are typed into; they are only shown where left out. */
  readonly editing?: (table: string) => Editing | undefined;
  /** How tasks are run; on the page itself where left out. */
  readonly run?: RunTask;
}

/**
 * Draws a page into an element and keeps it up to date with its herd, its units and its controls. What the controls say
 * stands in the address after `#`, so that a reload or a link brings it back.
 * @returns how to take the page away again
 */
export function mountPage<Data>(
  element: HTMLElement,
  { page, herd, units, files = () => [], editing, run }: LivePage<Data>,
): () => void {
  const controls = signal<ControlValues>({});
  const follow = () => {
    if (!namesPlace(location.hash)) controls.value = fromHash(location.hash);
  };
  follow();
  addEventListener('hashchange', follow);
  const surroundings = computed(() => ({
    units: units.value,
    still: false,
    files,
    editing,
    run,
    set: (name: string, value: ControlValue) => {
      controls.value = { ...controls.value, [name]: value };
      history.replaceState(null, '', `#${toHash(controls.value)}`);
    },
  }));
  render(<PageView page={page} herd={herd} controls={controls} surroundings={surroundings} />, element);
  // The browser looked for the place before it was drawn.
  if (namesPlace(location.hash)) document.getElementById(decodeURIComponent(location.hash.slice(1)))?.scrollIntoView();
  return () => {
    removeEventListener('hashchange', follow);
    render(null, element);
  };
}

/** Whether an address ends in the name of a place on the page rather than in what its controls say. */
const namesPlace = (hash: string) => hash !== '' && !hash.includes('=');
