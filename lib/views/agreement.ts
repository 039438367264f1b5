import * as Plot from '@observablehq/plot';
import { extent as minMax } from 'd3-array';
import type { PairAgreement } from '../hoof/repeatAgreement.ts';
import { errorDigits, formatQuantity, toDisplay } from '../sheet/display.ts';
import { counted } from '../words/counted.ts';
import { say } from '../words/say.ts';
import {
  axis,
  type ChartDescription,
  type ChartOptions,
  columnTitle,
  extent,
  label,
  millimetres,
  reference,
  sentences,
  shortened,
  shownIn,
} from './chart.ts';
import { chartSizes, roles, strokes, tissues } from './theme.ts';

/**
 * How two readings of the same feet agree: their difference against their mean, with the bias and the limits between which
 * 95 of 100 differences lie, each with the band in which it may lie itself.
 * @param pair  of one column
 * @source Bland & Altman 1986, Lancet i:307–310
 */
export function agreement(
  pair: PairAgreement,
  { units = millimetres }: Pick<ChartOptions, 'units'> = {},
): ChartDescription {
  const { column, unit, first, second, a, b, mean, p, lower, upper } = pair;
  const { times, label: labelled } = shownIn(unit, units);
  const digits = errorDigits(Math.abs(toDisplay(pair.sd / 5, unit, units).value));
  const said = (value: number) => formatQuantity(value, unit, units, { digits, signed: true });
  const title = columnTitle(column);
  const points = Array.from(a, (value, i) => ({ mean: (value + b[i]) / 2, difference: value - b[i] }));
  const known = Number.isFinite(lower);
  const lines = known ? [lower, mean, upper] : [];
  const bands = known ? [pair.lowerInterval, pair.meanInterval, pair.upperInterval] : [];
  const [from, to] = extent(points.map((point) => point.mean));
  const [least = Number.NaN, most = Number.NaN] = minMax(points, ({ difference }) => difference);
  const names = [first, second].map((name) => shortened(name));
  return {
    name: `agreement-${column.replaceAll('_', '-')}`,
    title: known
      ? say`${title}: 95 of 100 differences between ${names[0]} and ${names[1]} lie between ${said(lower)} and ${said(upper)}`
      : say`${title}: one pair of readings says nothing about agreement`,
    caption: sentences(
      counted(points.length, {
        one: say`${names[0]} less ${names[1]}, ${points.length} foot read by both.`,
        other: say`${names[0]} less ${names[1]}, ${points.length} feet read by both.`,
      }),
      p < 0.05
        ? say`${names[0]} reads ${formatQuantity(Math.abs(mean), unit, units, { digits })} ${mean < 0 ? say`lower` : say`higher`} on the whole.`
        : say`Neither reads higher on the whole, as far as these pairs can tell.`,
      pair.trend.p < 0.05 ? say`The difference changes with the size of the reading.` : '',
    ),
    summary: say`Differences from ${said(least)} to ${said(most)}${known ? say`, mean ${said(mean)}` : ''}.`,
    options: {
      width: chartSizes.width,
      height: chartSizes.height * 0.85,
      marginLeft: 52,
      marginRight: 64,
      marginTop: 26,
      marginBottom: 40,
      inset: 6,
      x: { nice: true },
      y: { nice: true },
      marks: [
        Plot.rect(bands, {
          x1: from * times,
          x2: to * times,
          y1: (d) => d[0] * times,
          y2: (d) => d[1] * times,
          fill: tissues.sole,
        }),
        axis.gridY(),
        axis.x(labelled(say`Mean of the two readings`)),
        axis.y(labelled(say`Difference`)),
        Plot.ruleY([0], reference),
        Plot.ruleY(lines, {
          y: (d) => d * times,
          stroke: roles.beyond,
          strokeWidth: (_, i) => (i === 1 ? strokes.strong : strokes.thin),
        }),
        Plot.dot(points, {
          x: (d) => d.mean * times,
          y: (d) => d.difference * times,
          stroke: roles.measured,
          strokeOpacity: 0.7,
          r: 3,
        }),
        Plot.text(lines, {
          frameAnchor: 'right',
          y: (d) => d * times,
          text: (d) => said(d),
          textAnchor: 'start',
          dx: 6,
          ...label,
        }),
      ],
    },
  };
}
