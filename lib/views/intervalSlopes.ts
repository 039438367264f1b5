import * as Plot from '@observablehq/plot';
import { extent } from 'd3-array';
import { limbName, limbs } from '../hoof/limbs.ts';
import { formatQuantity } from '../sheet/display.ts';
import { median } from '../stats/index.ts';
import { counted } from '../words/counted.ts';
import { midSentence } from '../words/midSentence.ts';
import { say } from '../words/say.ts';
import {
  axis,
  type ChartDescription,
  type ChartOptions,
  label,
  leftOut,
  millimetres,
  nothingToDraw,
  reference,
  sentences,
  shortened,
  shownIn,
  tip,
} from './chart.ts';
import type { Readable } from './footShape.ts';
import { intervalChanges } from './intervalChange.ts';
import { limbMark } from './limbMark.ts';
import { chartSizes, roles, strokes } from './theme.ts';

/**
 * How fast a column changed in each interval, from after the work to before the next, against how long the interval was.
 * @param intervals  as the herd makes them
 * @param options    `column`: the name it has in the feet, `toe_angle_deg` where left out
 */
export function intervalSlopes(
  intervals: Readable,
  options: ChartOptions & { readonly column?: string } = {},
): ChartDescription {
  const { column = 'toe_angle_deg', units = millimetres, rows } = options;
  const { changes, missing, unit, title } = intervalChanges(intervals, column, rows);
  const rate = `${unit}/wk`;
  const { times, label: labelled } = shownIn(rate, units);
  const said = (slope: number) => formatQuantity(slope, rate, units, { signed: true });
  const points = changes
    .filter(({ undisturbed }) => undisturbed)
    .map((change) => ({ ...change, days: change.to - change.from }));
  const disturbed = changes.length - points.length;
  const name = `slopes-of-${column.replaceAll('_', '-')}`;
  const without = sentences(
    disturbed === 0
      ? ''
      : counted(disturbed, {
          one: say`${disturbed} interval measured only at like moments, with work between them, left out.`,
          other: say`${disturbed} intervals measured only at like moments, with work between them, left out.`,
        }),
    leftOut(missing, 'intervals'),
  );
  if (points.length === 0)
    return nothingToDraw(name, say`${title}: no interval measured from after the work to before the next`, without);
  const usual = median(points.map(({ days }) => days));
  const halves = [points.filter(({ days }) => days <= usual), points.filter(({ days }) => days > usual)].filter(
    (half) => half.length > 0,
  );
  const middles = halves.map((half) => {
    const [from = Number.NaN, to = Number.NaN] = extent(half, ({ days }) => days);
    return { from, to, slope: median(half.map(({ slope }) => slope)) };
  });
  const [short, long] = middles;
  return {
    name,
    title: say`${title}: ${said(short.slope)} at the median in intervals of ${span(short)}${long === undefined ? '' : say`, ${said(long.slope)} in those of ${span(long)}`}`,
    caption: sentences(
      say`One mark an interval of one foot (${points.length}); marks point to the foot’s side, front filled, hind hollow. Thick lines are the medians of the shorter and the longer half. A picture, not a test: horses and seasons differ too.`,
      without,
    ),
    summary: counted(points.length, {
      one: say`Change of ${midSentence(title)} a week against the length of the interval, ${points.length} interval of ${span({ from: short.from, to: (long ?? short).to })}.`,
      other: say`Change of ${midSentence(title)} a week against the length of the interval, ${points.length} intervals of ${span({ from: short.from, to: (long ?? short).to })}.`,
    }),
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
        axis.x(say`Length of the interval (days)`),
        axis.y(labelled(say`${title}, change`)),
        Plot.ruleY([0], reference),
        ...limbs.map((limb) => {
          const mark = limbMark(limb);
          return Plot.dot(
            points.filter((point) => point.limb === limb),
            {
              x: 'days',
              y: (d) => d.slope * times,
              symbol: mark.symbol as Plot.DotOptions['symbol'],
              fill: mark.fill,
              stroke: mark.stroke,
              strokeOpacity: 0.8,
              fillOpacity: 0.6,
              r: 4,
              title: (d) => say`${shortened(d.horse, 40)}, ${limbName(limb)}, ${d.days} days: ${said(d.slope)}`,
              tip,
            },
          );
        }),
        Plot.link(middles, {
          x1: 'from',
          x2: 'to',
          y1: (d) => d.slope * times,
          y2: (d) => d.slope * times,
          stroke: roles.beyond,
          strokeWidth: 3,
        }),
        Plot.text(middles, {
          x: 'to',
          y: (d) => d.slope * times,
          text: (d) => said(d.slope),
          textAnchor: 'end',
          dy: -10,
          fontWeight: 600,
          ...label,
          strokeWidth: strokes.strong * 2,
        }),
      ],
    },
  };
}

function span({ from, to }: { readonly from: number; readonly to: number }): string {
  return from === to ? say`${from} days` : say`${from} to ${to} days`;
}
