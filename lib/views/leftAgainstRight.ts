import * as Plot from '@observablehq/plot';
import { type End, endOf, sideOf } from '../hoof/limbs.ts';
import { errorsBeyond } from '../hoof/verdict.ts';
import { formatQuantity } from '../sheet/display.ts';
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
  nothingToDraw,
  reference,
  sentences,
  shortened,
  shownIn,
  tip,
} from './chart.ts';
import { type FootMean, footMeans } from './footMeans.ts';
import type { Readable } from './footShape.ts';
import { chartSizes, grounds, inks, roles, strokes } from './theme.ts';

interface Pair {
  readonly horse: string;
  readonly end: End;
  readonly left: FootMean;
  readonly right: FootMean;
  readonly beyond: boolean;
}

/**
 * The left foot against the right foot of each pair; on the dashed line both are equal, the thin cross is one pair's
 * error of measuring.
 * @param feet     with `horse_id`, `limb` and the column
 * @param options  `column`: any number column of the feet
 */
export function leftAgainstRight(
  feet: Readable,
  options: ChartOptions & { readonly column?: string } = {},
): ChartDescription {
  const { column = 'wall_level_mm', units = millimetres, rows } = options;
  const title = columnTitle(column);
  const { unit } = feet.column(column);
  const { times, label: labelled } = shownIn(unit, units);
  const { means } = footMeans(feet, column, rows);
  const { pairs, lone } = pairsOf(means);
  const name = `left-against-right-${column.replaceAll('_', '-')}`;
  const alone =
    lone === 0
      ? ''
      : counted(lone, {
          one: say`${lone} foot without its other one left out.`,
          other: say`${lone} feet without their other ones left out.`,
        });
  if (pairs.length === 0) return nothingToDraw(name, say`${title}: no pair of feet measured`, alone);
  const errorsKnown = pairs.some(({ left, right }) => !Number.isNaN(left.error + right.error));
  const larger = pairs.filter(({ left, right }) => left.value > right.value).length;
  const said = (foot: FootMean) => formatQuantity(foot.value, unit, units, { error: foot.error });
  const beyond = pairs.filter((pair) => pair.beyond);
  const domain = extent(pairs.flatMap(({ left, right }) => [left.value * times, right.value * times]));
  return {
    name,
    title: errorsKnown
      ? counted(pairs.length, {
          one: say`${title}: left and right differ by more than the error of measuring in ${beyond.length} of ${pairs.length} pair`,
          other: say`${title}: left and right differ by more than the error of measuring in ${beyond.length} of ${pairs.length} pairs`,
        })
      : counted(pairs.length, {
          one: say`${title}: the left foot has the larger value in ${larger} of ${pairs.length} pair`,
          other: say`${title}: the left foot has the larger value in ${larger} of ${pairs.length} pairs`,
        }),
    caption: sentences(
      say`One mark a pair: front feet filled, hind feet hollow. On the dashed line left and right are equal; the cross shows 1.96 standard errors.`,
      alone,
    ),
    summary: counted(pairs.length, {
      one: say`${title}, left foot up, right foot across. The left foot has the larger value in ${larger} of ${pairs.length} pair.`,
      other: say`${title}, left foot up, right foot across. The left foot has the larger value in ${larger} of ${pairs.length} pairs.`,
    }),
    options: {
      width: chartSizes.width,
      height: chartSizes.height,
      inset: 10,
      marginLeft: 52,
      marginBottom: 40,
      marginTop: 26,
      marginRight: 24,
      x: { nice: true, domain },
      y: { nice: true, domain },
      marks: [
        axis.gridX(),
        axis.gridY(),
        axis.x(labelled(say`Right foot`)),
        axis.y(labelled(say`Left foot`)),
        Plot.link([domain], { x1: (d) => d[0], y1: (d) => d[0], x2: (d) => d[1], y2: (d) => d[1], ...reference }),
        ...(errorsKnown ? crosses(pairs, times) : []),
        Plot.dot(pairs, {
          x: (d) => d.right.value * times,
          y: (d) => d.left.value * times,
          r: 4.5,
          fill: (d) => (d.end === 'front' ? roles.front : grounds.card),
          stroke: (d) => roles[d.end as End],
          strokeWidth: strokes.line,
          title: (d) =>
            say`${shortened(d.horse, 40)}, ${d.end === 'front' ? say`front` : say`hind`}: left ${said(d.left)}, right ${said(d.right)}`,
          tip,
        }),
        Plot.text(apart(beyond, (domain[1] - domain[0]) / times), {
          x: (d) => d.right.value * times,
          y: (d) => d.left.value * times,
          text: (d) => shortened(d.horse, 14),
          dy: -11,
          ...label,
        }),
      ],
    },
  };
}

function crosses(pairs: readonly Pair[], times: number): Plot.Markish[] {
  const known = pairs.filter(({ left, right }) => !Number.isNaN(left.error + right.error));
  const reach = (foot: FootMean, side: 1 | -1) => (foot.value + side * errorsBeyond * foot.error) * times;
  const look = { stroke: inks.edge, strokeWidth: strokes.hair, strokeOpacity: 0.7 };
  return [
    Plot.link(known, {
      x1: (d) => reach(d.right, -1),
      x2: (d) => reach(d.right, 1),
      y1: (d) => d.left.value * times,
      y2: (d) => d.left.value * times,
      ...look,
    }),
    Plot.link(known, {
      y1: (d) => reach(d.left, -1),
      y2: (d) => reach(d.left, 1),
      x1: (d) => d.right.value * times,
      x2: (d) => d.right.value * times,
      ...look,
    }),
  ];
}

function pairsOf(means: readonly FootMean[]): { pairs: Pair[]; lone: number } {
  const found = new Map<string, Partial<Record<'left' | 'right', FootMean>>>();
  for (const mean of means) {
    const key = `${endOf(mean.limb)} ${mean.horse}`;
    found.set(key, { ...found.get(key), [sideOf(mean.limb)]: mean });
  }
  const pairs: Pair[] = [];
  for (const { left, right } of found.values()) {
    if (left === undefined || right === undefined) continue;
    const beyond = Math.abs(left.value - right.value) > errorsBeyond * Math.hypot(left.error, right.error);
    pairs.push({ horse: left.horse, end: endOf(left.limb), left, right, beyond });
  }
  return { pairs, lone: means.length - 2 * pairs.length };
}

/** The pairs that differ most, as far as their names have room beside each other. */
function apart(pairs: readonly Pair[], reach: number): Pair[] {
  const named: Pair[] = [];
  for (const pair of pairs.toSorted((a, b) => gap(b) - gap(a))) {
    const clear = named.every(
      ({ left, right }) =>
        Math.abs(left.value - pair.left.value) > reach / 12 || Math.abs(right.value - pair.right.value) > reach / 5,
    );
    if (clear) named.push(pair);
    if (named.length === 4) break;
  }
  return named;
}

function gap({ left, right }: Pair): number {
  return Math.abs(left.value - right.value);
}
