import * as Plot from '@observablehq/plot';
import { endOf, type Limb, limbName, limbs } from '../hoof/limbs.ts';
import { beyond, builtInRanges, type Ranges } from '../hoof/ranges.ts';
import { formatQuantity } from '../sheet/display.ts';
import { median } from '../stats/index.ts';
import { counted } from '../words/counted.ts';
import { say } from '../words/say.ts';
import {
  axis,
  type ChartDescription,
  type ChartOptions,
  columnTitle,
  label,
  leftOut,
  millimetres,
  nothingToDraw,
  reference,
  sentences,
  shownIn,
} from './chart.ts';
import { footMeans } from './footMeans.ts';
import type { Readable } from './footShape.ts';
import { chartSizes, grounds, roles, strokes } from './theme.ts';

/**
 * How a ratio is spread over the herd's feet, limb under limb, with each limb's median and the limits of its range.
 * @param feet     with `horse_id`, `limb` and the column
 * @param options  `column`: any column; `ranges`: those that count
 */
export function shapeDistributions(
  feet: Readable,
  options: ChartOptions & { readonly column?: string; readonly ranges?: Ranges } = {},
): ChartDescription {
  const { column = 'width_to_length', units = millimetres, rows, ranges = builtInRanges } = options;
  const title = columnTitle(column);
  const { unit } = feet.column(column);
  const { times, label: labelled } = shownIn(unit, units);
  const { means, missing } = footMeans(feet, column, rows);
  const name = `spread-of-${column.replaceAll('_', '-')}`;
  if (means.length === 0) return nothingToDraw(name, say`${title}: nothing measured`, leftOut(missing, 'feet'));
  const feetShown = means.map(({ horse, limb, value }) => ({ horse, limb, value: value * times }));
  const said = (value: number) => formatQuantity(value, unit, units);
  const middleOf = (wanted: (limb: Limb) => boolean) =>
    median(means.filter(({ limb }) => wanted(limb)).map(({ value }) => value));
  const middles = limbs
    .map((limb) => ({ limb, value: middleOf((one) => one === limb) }))
    .filter(({ value }) => !Number.isNaN(value));
  const range = ranges.get(column)?.find(({ when }) => when === undefined);
  const limits = [range?.atLeast, range?.atMost].filter((limit) => limit !== undefined);
  const outside = range === undefined ? 0 : means.filter(({ value }) => beyond(range, value) !== 0).length;
  const [front, hind] = (['front', 'hind'] as const).map((end) => said(middleOf((limb) => endOf(limb) === end)));
  return {
    name,
    title: say`${title}: half of the front feet are below ${front}, half of the hind feet below ${hind}`,
    caption: sentences(
      say`Bars count feet, each by the mean of its measurements (${means.reduce((sum, { readings }) => sum + readings, 0)} in all); the line is the limb’s median.`,
      range === undefined ? '' : outsideWords(outside, means.length, limits.map(said).join(say` to `)),
      leftOut(missing, 'feet'),
    ),
    summary: say`${title}, number of feet: ${means.length}. Medians: ${middles.map(({ limb, value }) => `${limbName(limb)} ${said(value)}`).join(', ')}.`,
    options: {
      width: chartSizes.width,
      height: 60 + 62 * middles.length,
      marginTop: 22,
      marginLeft: 40,
      marginRight: 12,
      marginBottom: 38,
      x: { nice: true },
      y: { axis: null, insetTop: 14 },
      fy: { domain: middles.map(({ limb }) => limb), axis: null },
      marks: [
        axis.gridX(),
        axis.x(labelled(title)),
        Plot.ruleY([0], { stroke: roles.steady }),
        Plot.rectY(
          feetShown,
          Plot.binX<Plot.RectYOptions>(
            { y: 'count' },
            {
              x: { value: 'value', thresholds: 24 },
              fy: 'limb',
              fill: (d: { limb: Limb }) => (endOf(d.limb) === 'front' ? roles.front : grounds.card),
              stroke: (d: { limb: Limb }) => roles[endOf(d.limb)],
              strokeWidth: strokes.thin,
              inset: 1,
            },
          ),
        ),
        Plot.ruleX(
          limits.map((limit) => limit * times),
          reference,
        ),
        Plot.text(limits.slice(0, 1), {
          x: (limit) => limit * times,
          fy: middles[0]?.limb ? [middles[0].limb] : [],
          text: (limit) => say`limit ${said(limit)}`,
          frameAnchor: 'top',
          dy: -18,
          ...label,
        }),
        Plot.ruleX(middles, {
          x: (d) => d.value * times,
          fy: 'limb',
          stroke: roles.beyond,
          strokeWidth: strokes.strong,
        }),
        Plot.text(middles, {
          x: (d) => d.value * times,
          fy: 'limb',
          text: (d) => said(d.value),
          frameAnchor: 'top',
          textAnchor: 'start',
          dx: 5,
          dy: 2,
          ...label,
        }),
        Plot.text(middles, {
          fy: 'limb',
          text: 'limb',
          frameAnchor: 'left',
          dx: -34,
          textAnchor: 'start',
          fontWeight: 600,
          ...label,
        }),
      ],
    },
  };
}

const outsideWords = (outside: number, all: number, limits: string) =>
  counted(outside, {
    one: say`${outside} foot of ${all} lies outside ${limits}.`,
    other: say`${outside} feet of ${all} lie outside ${limits}.`,
  });
