import type { PlotOptions } from '@observablehq/plot';
import * as Plot from '@observablehq/plot';
import { measured } from '../hoof/measured.ts';
import { measures } from '../hoof/measures/index.ts';
import { dayMs } from '../sheet/days.ts';
import { type DisplayUnits, displayUnit, symbolOf, toDisplay } from '../sheet/display.ts';
import { counted } from '../words/counted.ts';
import { say } from '../words/say.ts';
import { grounds, inks, sizes, strokes } from './theme.ts';
import { tickText } from './tickText.ts';

/** A chart, ready for a page: its title states the finding, its summary says the picture in words. */
export interface ChartDescription {
  readonly name: string;
  readonly title: string;
  readonly caption: string;
  readonly summary: string;
  readonly options: PlotOptions;
  /** The same on paper, at its own width, where it is drawn differently there. */
  readonly onPaper?: PlotOptions & { readonly width: number };
}

/** In place of a chart where there is nothing to draw: the title says why. */
export function nothingToDraw(name: string, title: string, caption = ''): ChartDescription {
  return { name, title, caption, summary: `${title}.`, options: { height: 20, marks: [] } };
}

/** What every chart may be told. */
export interface ChartOptions {
  readonly units?: DisplayUnits;
  /** Which rows of the table count; all where left out. */
  readonly rows?: Iterable<number>;
}

export const millimetres: DisplayUnits = { length: 'mm', mass: 'kg' };

/** How values of a unit are shown: what to multiply them by, and what stands behind the name on an axis. */
export function shownIn(
  unit: string,
  units: DisplayUnits,
): { readonly times: number; readonly label: (name: string) => string } {
  const symbol = symbolOf(displayUnit(unit, units));
  return { times: toDisplay(1, unit, units).value, label: (name) => (symbol === '' ? name : `${name} (${symbol})`) };
}

/**
 * What people call a column of the feet.
 * @param name  the column's name, as in a file
 * @returns its title; the name itself where the column isn't one of ours
 * @example columnTitle('toe_angle_deg') // 'Toe angle'
 */
export function columnTitle(name: string): string {
  return [...measures, ...measured].find((row) => row.name === name)?.title ?? name;
}

/** A day number as the moment Plot's UTC scales understand. */
export function utc(days: number): Date {
  return new Date(days * dayMs);
}

const text = { fontSize: sizes.mark, fill: inks.ink } as const;

/** Axes and grid lines in one look; numbers stay readable on paper. */
export const axis = {
  x: (label: string | null, options: Plot.AxisXOptions = {}) =>
    Plot.axisX({
      label,
      ...text,
      stroke: inks.edge,
      tickSize: 4,
      labelArrow: 'none',
      tickFormat: tickText,
      ...options,
    }),
  y: (label: string | null, options: Plot.AxisYOptions = {}) =>
    Plot.axisY({
      label,
      ...text,
      stroke: inks.edge,
      tickSize: 4,
      labelArrow: 'none',
      tickFormat: tickText,
      ...options,
    }),
  /** Names down the side, without ticks. */
  names: (options: Plot.AxisYOptions = {}) =>
    Plot.axisY({
      label: null,
      ...text,
      tickSize: 0,
      tickFormat: (name: unknown) => shortened(String(name)),
      ...options,
    }),
  gridX: (options: Plot.GridXOptions = {}) => Plot.gridX({ stroke: inks.rule, strokeOpacity: 1, ...options }),
  gridY: (options: Plot.GridYOptions = {}) => Plot.gridY({ stroke: inks.rule, strokeOpacity: 1, ...options }),
} as const;

/** The looks of words in a chart. */
export const label = {
  fontSize: sizes.mark,
  fill: inks.ink,
  stroke: grounds.card,
  strokeWidth: 3,
} as const;

/** A reference to hold against: zero, a limit, equal. */
export const reference = { stroke: inks.soft, strokeWidth: strokes.thin, strokeDasharray: '7 4' } as const;

/** What stands beside the pointer. */
export const tip = { fill: grounds.card, stroke: inks.edge, fontSize: sizes.mark } as const;

/** Smallest and largest of some numbers, with room round a single one; `[-1, 1]` round nothing. */
export function extent(values: readonly number[]): [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) [low, high] = [Math.min(low, value), Math.max(high, value)];
  if (low > high) return [-1, 1];
  return low < high ? [low, high] : [low - 1, high + 1];
}

/** A name that fits beside a chart. */
export function shortened(name: string, most = 18): string {
  const signs = [...name];
  return signs.length > most ? `${signs.slice(0, most - 1).join('')}…` : name;
}

/** Room for the longest of some names, in px. */
export function nameRoom(names: Iterable<string>): number {
  let longest = 4;
  for (const name of names) longest = Math.max(longest, [...shortened(name)].length);
  return Math.ceil(longest * sizes.mark * 0.58) + 12;
}

const unmeasured = {
  rows: (count: number) =>
    counted(count, {
      one: say`${count} row without a measurement left out.`,
      other: say`${count} rows without a measurement left out.`,
    }),
  feet: (count: number) =>
    counted(count, {
      one: say`${count} foot without a measurement left out.`,
      other: say`${count} feet without a measurement left out.`,
    }),
  intervals: (count: number) =>
    counted(count, {
      one: say`${count} interval without a measurement left out.`,
      other: say`${count} intervals without a measurement left out.`,
    }),
  values: (count: number) =>
    counted(count, {
      one: say`${count} value without a measurement left out.`,
      other: say`${count} values without a measurement left out.`,
    }),
};

/** What was left out, as a sentence; nothing where nothing was. */
export function leftOut(count: number, what: keyof typeof unmeasured): string {
  return count === 0 ? '' : unmeasured[what](count);
}

/** Sentences that have something to say, in a row. */
export function sentences(...parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(' ');
}
