import * as Plot from '@observablehq/plot';
import { group, extent as minMax } from 'd3-array';
import type { IntervalData } from '../hoof/intervalData.ts';
import type { IntervalFit } from '../hoof/intervalModel.ts';
import { effectSentence, quantity } from '../hoof/intervalWords.ts';
import { isLimb, limbs } from '../hoof/limbs.ts';
import { formatQuantity } from '../sheet/display.ts';
import { studentT } from '../stats/index.ts';
import { counted } from '../words/counted.ts';
import { fixed } from '../words/fixed.ts';
import { say } from '../words/say.ts';
import type { ChartOptions } from './chart.ts';
import {
  axis,
  type ChartDescription,
  extent,
  label,
  millimetres,
  reference,
  sentences,
  shortened,
  shownIn,
  tip,
} from './chart.ts';
import { limbMark } from './limbMark.ts';
import { chartSizes, inks, roles, strokes } from './theme.ts';

/** With more marks than this, those that would fall on one another are drawn once. */
const manyMarks = 1500;

/**
 * Every interval of every foot by its length, a line for each horse through its own intervals, and the effect within a horse
 * as the model has it, with its 95% band.
 * @param data  the intervals
 * @param fit   what the model made of them
 */
export function intervalEffect(
  data: IntervalData,
  fit: IntervalFit,
  { units = millimetres }: Pick<ChartOptions, 'units'> = {},
): ChartDescription {
  const { times, label: labelled } = shownIn(data.unit, units);
  const said = (value: number) => formatQuantity(value, data.unit, units, { signed: true });
  const points = Array.from(fit.rows, (row, i) => ({
    horse: data.horse[row],
    limb: data.limb[row],
    weeks: fit.weeksWithin[i] + fit.weeksMean[i],
    change: data.change[row],
  }));
  const [least = Number.NaN, most = Number.NaN] = minMax(points, ({ change }) => change);
  const horses = horseLines(points);
  const band = effectBand(points, fit);
  const intervals = counted(points.length, {
    one: say`${points.length} interval`,
    other: say`${points.length} intervals`,
  });
  return {
    name: `interval-effect-on-${data.outcome.replaceAll('_', '-')}`,
    title: effectSentence(fit, data, units),
    caption: sentences(
      counted(horses.length, {
        one: say`One mark an interval of one foot (${points.length}); marks point to the foot’s side, front filled, hind hollow. Thin lines: each horse’s own intervals, ${horses.length} horse with intervals of unlike length.`,
        other: say`One mark an interval of one foot (${points.length}); marks point to the foot’s side, front filled, hind hollow. Thin lines: each horse’s own intervals, ${horses.length} horses with intervals of unlike length.`,
      }),
      say`Thick line: the effect within a horse, all else held, drawn through the middle of all intervals; the band is its 95% interval.`,
    ),
    summary: say`${intervals} of ${span(points.map(({ weeks }) => weeks))} weeks; changes from ${said(least)} to ${said(most)}. The fitted line runs from ${said(band[0].middle)} to ${said(band[band.length - 1].middle)}.`,
    options: {
      width: chartSizes.width,
      height: chartSizes.height,
      marginLeft: 52,
      marginTop: 26,
      marginBottom: 40,
      inset: 8,
      x: { nice: true },
      y: { nice: true },
      marks: [
        axis.gridY(),
        axis.x(say`Length of the interval (weeks)`),
        axis.y(labelled(say`Change`)),
        Plot.ruleY([0], reference),
        ...limbs.map((limb) => {
          const mark = limbMark(limb);
          return Plot.dot(thinned(points.filter((point) => isLimb(point.limb) && point.limb === limb)), {
            x: 'weeks',
            y: (d) => d.change * times,
            symbol: mark.symbol as Plot.DotOptions['symbol'],
            fill: mark.fill,
            stroke: mark.stroke,
            strokeOpacity: 0.5,
            fillOpacity: 0.3,
            r: 3,
            title: (d) => say`${shortened(d.horse, 40)}, ${limb}, ${fixed(d.weeks, 1)} weeks: ${said(d.change)}`,
            tip,
          });
        }),
        Plot.link(horses, {
          x1: (d) => d.from,
          x2: (d) => d.to,
          y1: (d) => d.start * times,
          y2: (d) => d.end * times,
          stroke: inks.soft,
          strokeWidth: strokes.thin,
          strokeOpacity: 0.7,
        }),
        Plot.areaY(band, {
          x: 'weeks',
          y1: (d) => d.lower * times,
          y2: (d) => d.upper * times,
          fill: roles.beyond,
          fillOpacity: 0.2,
        }),
        Plot.line(band, { x: 'weeks', y: (d) => d.middle * times, stroke: roles.beyond, strokeWidth: 3 }),
        Plot.text(band.slice(-1), {
          x: 'weeks',
          y: (d) => d.middle * times,
          text: () => say`${quantity(fit.within.estimate, fit.within.se, data.unit, units, true)} a week`,
          textAnchor: 'end',
          dy: -12,
          fontWeight: 600,
          ...label,
          strokeWidth: strokes.strong * 2,
        }),
      ],
    },
  };
}

interface Point {
  readonly horse: string;
  readonly limb: string;
  readonly weeks: number;
  readonly change: number;
}

/** Least squares through each horse's own points, where its intervals differ in length. */
function horseLines(points: readonly Point[]) {
  return [...group(points, ({ horse }) => horse).values()].flatMap((own) => {
    const mean = (of: (point: Point) => number) => own.reduce((sum, point) => sum + of(point), 0) / own.length;
    const [x, y] = [mean(({ weeks }) => weeks), mean(({ change }) => change)];
    const spread = own.reduce((sum, { weeks }) => sum + (weeks - x) ** 2, 0);
    const [from = Number.NaN, to = Number.NaN] = minMax(own, ({ weeks }) => weeks);
    if (to - from < 0.1) return [];
    const slope = own.reduce((sum, { weeks, change }) => sum + (weeks - x) * (change - y), 0) / spread;
    return [{ from, to, start: y + slope * (from - x), end: y + slope * (to - x) }];
  });
}

/** The effect through the middle of all intervals, over the lengths that occur. */
function effectBand(points: readonly Point[], { within }: IntervalFit) {
  const middle = points.reduce((sum, { weeks }) => sum + weeks, 0) / points.length;
  const level = points.reduce((sum, { change }) => sum + change, 0) / points.length;
  const [from, to] = extent(points.map(({ weeks }) => weeks));
  const reach = studentT.quantile(0.975, within.df) * within.se;
  return [from, middle, to].map((weeks) => {
    const fitted = level + within.estimate * (weeks - middle);
    const half = reach * Math.abs(weeks - middle);
    return { weeks, middle: fitted, lower: fitted - half, upper: fitted + half };
  });
}

function thinned(points: readonly Point[]): Point[] {
  if (points.length <= manyMarks) return [...points];
  const [low, high] = extent(points.map(({ change }) => change));
  return [
    ...new Map(
      points.map((point) => [`${fixed(point.weeks, 1)} ${Math.round((150 * point.change) / (high - low))}`, point]),
    ).values(),
  ];
}

function span(weeks: readonly number[]): string {
  const [low, high] = extent(weeks);
  return say`${fixed(low, 1)} to ${fixed(high, 1)}`;
}
