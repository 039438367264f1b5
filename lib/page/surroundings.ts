import { createContext } from 'preact';
import type { DisplayUnits } from '../sheet/display.ts';
import type { Chart, Download, LinkedCharts, SheetBlock } from './blocks.ts';
import type { ControlValue } from './page.ts';
import type { Editing } from './sheet/editing.ts';
import type { RunTask } from './task.ts';

/** What the parts of a page need to know of where they are drawn. */
export interface Surroundings {
  readonly units: DisplayUnits;
  /** On paper and in a file nothing moves: controls become words, sheets whole tables. */
  readonly still: boolean;
  /** Told when the reader sets a control. */
  readonly set: (name: string, value: ControlValue) => void;
  /** The files that go with a table: its tidy CSV and the dictionary beside it. */
  readonly files: (block: SheetBlock) => readonly Download[];
  /** How a table is typed into; tables that nobody keeps are only shown. */
  readonly editing?: (table: string) => Editing | undefined;
  /** How tasks are run that take longer than a frame; on the page itself where left out. */
  readonly run?: RunTask;
  /** Where nothing moves: a chart as SVG, so wide in pixels. */
  readonly draw?: (chart: Chart, width: number) => string;
  /** Where there is no window: linked charts, drawn beforehand. */
  readonly linked?: ReadonlyMap<LinkedCharts, string>;
}

/** Hands the surroundings to every part of a page; without a provider a page is still and in millimetres. */
export const SurroundingsContext = createContext<Surroundings>({
  units: { length: 'mm', mass: 'kg' },
  still: true,
  set: () => {},
  files: () => [],
});
