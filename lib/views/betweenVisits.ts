import * as Plot from '@observablehq/plot';
import { group } from 'd3-array';
import { type Limb, limbName, limbs } from '../hoof/limbs.ts';
import { TextColumn } from '../sheet/column.ts';
import { formatQuantity } from '../sheet/display.ts';
import { median } from '../stats/index.ts';
import { counted } from '../words/counted.ts';
import { say } from '../words/say.ts';
import {
  axis,
  type ChartDescription,
  type ChartOptions,
  extent,
  label,
  leftOut,
  millimetres,
  sentences,
  shownIn,
  tip,
  utc,
} from './chart.ts';
import { numbersOf, textOf } from './footMeans.ts';
import type { Readable } from './footShape.ts';
import { type IntervalChange, intervalChanges } from './intervalChange.ts';
import { limbMark } from './limbMark.ts';
import { chartSizes, inks, sizes, strokes } from './theme.ts';

export interface BetweenVisitsOptions extends ChartOptions {
  /** The name it has in the feet: `toe_length_mm`. */
  readonly column?: string;
  /** The farrier's visits, with `horse_id`, `date` and, if known, `work`. */
  readonly visits?: Readable;
}

/**
 * From work to work, horse by horse: one line a foot and interval, the farrier's visits as upright lines. All horses
 * share both scales, so that the small charts compare.
 * @param intervals  as the herd makes them
 * @returns one chart a horse, in the order in which the horses come
 */
export function betweenVisits(intervals: Readable, options: BetweenVisitsOptions = {}): ChartDescription[] {
  const { column = 'toe_length_mm', units = millimetres, rows, visits } = options;
  const asked = rows === undefined ? undefined : [...rows];
  const { changes, unit, title } = intervalChanges(intervals, column, asked);
  const { times, label: labelled } = shownIn(unit, units);
  const values = changes.flatMap(({ start, end }) => [start * times, end * times]);
  const dates = changes.flatMap(({ from, to }) => [from, to]);
  const scales: Scales = { y: extent(values), x: extent(dates) };
  const horse = textOf(intervals, 'horse_id');
  const all = new Map<string, number>();
  for (const row of asked ?? Array(intervals.rows).keys())
    if (horse.codes[row] >= 0) all.set(horse.at(row), (all.get(horse.at(row)) ?? 0) + 1);
  const byHorse = group(changes, (change) => change.horse);
  const work = workDays(visits);
  return [...all].map(([name, count]): ChartDescription => {
    const own = byHorse.get(name) ?? [];
    const between = own.filter(({ undisturbed }) => undisturbed);
    const told = between.length > 0 ? between : own;
    const pace = formatQuantity(median(told.map(({ slope }) => slope)), `${unit}/wk`, units, { signed: true });
    const from = between.length > 0 ? '' : say` compared at like moments`;
    return {
      name: `between-visits-${column.replaceAll('_', '-')}`,
      title:
        own.length === 0
          ? say`${name}: no interval measured at both ends`
          : counted(told.length, {
              one: say`${name}: ${pace} at the median of ${told.length} interval${from}`,
              other: say`${name}: ${pace} at the median of ${told.length} intervals${from}`,
            }),
      caption: sentences(
        say`Filled front, hollow hind; the right side is dashed.`,
        between.length === own.length
          ? ''
          : say`Pale lines compare like moments, with the farrier’s work between them.`,
        leftOut(count - own.length, 'intervals'),
      ),
      summary: inWords(told, title, unit, units),
      options:
        own.length === 0
          ? { height: 20, marks: [] }
          : panel(own, scales, work.get(name) ?? [], {
              times,
              name: labelled(title),
              said: (value) => formatQuantity(value, unit, units),
              pace: (slope) => formatQuantity(slope, `${unit}/wk`, units, { signed: true }),
            }),
    };
  });
}

interface Scales {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

interface Words {
  readonly times: number;
  readonly name: string;
  readonly said: (value: number) => string;
  readonly pace: (slope: number) => string;
}

interface Work {
  readonly date: number;
  readonly words: string;
}

function panel(own: readonly IntervalChange[], scales: Scales, work: readonly Work[], words: Words) {
  const { times } = words;
  const ends = own.flatMap(({ limb, from, start, to, end }) => [
    { limb, date: from, value: start },
    { limb, date: to, value: end },
  ]);
  return {
    width: 360,
    height: chartSizes.panel,
    marginLeft: 44,
    marginRight: 34,
    marginTop: 24,
    marginBottom: 30,
    x: { type: 'utc', domain: scales.x.map(utc) },
    y: { domain: scales.y, nice: true },
    marks: [
      axis.gridY({ ticks: 4 }),
      axis.x(null, { ticks: 4 }),
      axis.y(words.name, { ticks: 4 }),
      Plot.ruleX(
        work.filter(({ date }) => date >= scales.x[0] && date <= scales.x[1]),
        { x: (d) => utc(d.date), stroke: inks.edge, strokeWidth: strokes.hair, title: (d) => d.words },
      ),
      ...limbs.flatMap((limb) => {
        const mark = limbMark(limb);
        return [
          Plot.link(
            own.filter((one) => one.limb === limb),
            {
              x1: (d) => utc(d.from),
              x2: (d) => utc(d.to),
              y1: (d) => d.start * times,
              y2: (d) => d.end * times,
              stroke: mark.stroke,
              strokeWidth: strokes.line,
              strokeDasharray: mark.dash,
              strokeOpacity: (d) => (d.undisturbed ? 1 : 0.4),
              title: (d) =>
                say`${limbName(limb)}, ${d.to - d.from} days, ${d.compared}: ${words.said(d.start)} to ${words.said(d.end)}, ${words.pace(d.slope)}`,
              tip,
            },
          ),
          Plot.dot(
            ends.filter((one) => one.limb === limb),
            {
              x: (d) => utc(d.date),
              y: (d) => d.value * times,
              symbol: mark.symbol as Plot.DotOptions['symbol'],
              fill: mark.fill,
              stroke: mark.stroke,
              r: 3,
            },
          ),
        ];
      }),
      Plot.text(lastOf(own, times, scales), {
        x: (d) => utc(d.date),
        y: 'value',
        text: 'limb',
        textAnchor: 'start',
        dx: 7,
        ...label,
      }),
    ],
  } satisfies Plot.PlotOptions;
}

/** Where each limb's name stands, behind its last point and far enough from its neighbours to be read. */
function lastOf(own: readonly IntervalChange[], times: number, { y: [low, high] }: Scales) {
  const line = ((high - low) * (sizes.mark + 1)) / (chartSizes.panel - 54);
  const labels = limbs.flatMap((limb) => {
    const last = own.filter((one) => one.limb === limb).toSorted((a, b) => b.to - a.to)[0];
    return last === undefined ? [] : [{ limb, date: last.to, value: last.end * times }];
  });
  labels.sort((a, b) => a.value - b.value);
  for (let i = 1; i < labels.length; i++) labels[i].value = Math.max(labels[i].value, labels[i - 1].value + line);
  return labels;
}

function workDays(visits: Readable | undefined): ReadonlyMap<string, readonly Work[]> {
  const days = new Map<string, Work[]>();
  if (visits === undefined) return days;
  const horse = textOf(visits, 'horse_id');
  const { values } = numbersOf(visits, 'date');
  const kind = visits.names.includes('work') ? visits.column('work') : undefined;
  for (let row = 0; row < visits.rows; row++) {
    const words = kind instanceof TextColumn ? kind.at(row) : '';
    if (horse.codes[row] < 0 || Number.isNaN(values[row]) || words === 'none') continue;
    const known = days.get(horse.at(row)) ?? [];
    days.set(horse.at(row), [...known, { date: values[row], words: words || say`the farrier’s visit` }]);
  }
  return days;
}

function inWords(
  own: readonly IntervalChange[],
  title: string,
  unit: string,
  units: NonNullable<ChartOptions['units']>,
): string {
  const parts = limbs.flatMap((limb: Limb) => {
    const slopes = own.filter((one) => one.limb === limb).map(({ slope }) => slope);
    if (slopes.length === 0) return [];
    return [
      say`${limbName(limb)} ${formatQuantity(median(slopes), `${unit}/wk`, units, { signed: true })} in ${slopes.length}`,
    ];
  });
  return say`${title} from one visit’s work to the next, median change and number of intervals: ${parts.join(', ') || say`none`}.`;
}
