import * as Plot from '@observablehq/plot';
import { endOf } from '../hoof/limbs.ts';
import { errorsBeyond } from '../hoof/verdict.ts';
import { formatQuantity } from '../sheet/display.ts';
import { median } from '../stats/index.ts';
import { cellWord } from '../words/cellWord.ts';
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
  nameRoom,
  nothingToDraw,
  sentences,
  shortened,
  shownIn,
  tip,
} from './chart.ts';
import { type FootMean, footMeans } from './footMeans.ts';
import type { Readable } from './footShape.ts';
import { chartSizes, grounds, inks, roles, strokes } from './theme.ts';

/** Which end is expected to have the larger ratio, and how that is said; expectations are those of the measures' sources. */
const sayings: Readonly<Record<string, { readonly larger: 'front' | 'hind'; readonly words: string }>> = {
  width_to_length: { larger: 'front', words: say`Front feet are rounder than hind feet` },
  frog_ratio: { larger: 'front', words: say`The frog is wider for its length in front than behind` },
  heel_width_to_foot_width: { larger: 'hind', words: say`The heels are wider for their foot behind than in front` },
};

/** More horses than this make no picture; those with the largest differences are shown. */
const most = 60;

/**
 * Front against hind, horse by horse: two dots joined by a line, the horses in order of the difference.
 * @param feet     with `horse_id`, `limb` and the column
 * @param options  `column`: any column whose front and hind means are to be set side by side
 */
export function shapeRatios(
  feet: Readable,
  options: ChartOptions & { readonly column?: string } = {},
): ChartDescription {
  const { column = 'width_to_length', units = millimetres, rows } = options;
  const title = columnTitle(column);
  const { unit } = feet.column(column);
  const { times, label: labelled } = shownIn(unit, units);
  const { means, missing } = footMeans(feet, column, rows);
  const pairs = pairsOf(means);
  const name = `front-and-hind-${column.replaceAll('_', '-')}`;
  if (pairs.length === 0)
    return nothingToDraw(name, say`${title}: no horse has both ends measured`, leftOut(missing, 'feet'));
  const { larger, words } = Object.hasOwn(sayings, column)
    ? sayings[column]
    : { larger: 'front', words: say`${title} is larger in front than behind` };
  const sign = larger === 'front' ? 1 : -1;
  const holds = pairs.filter(({ difference }) => sign * difference > 0);
  const sure = holds.filter(({ difference, error }) => Math.abs(difference) > errorsBeyond * error);
  const errorsKnown = pairs.some(({ error }) => !Number.isNaN(error));
  const shown = pairs.toSorted((a, b) => Math.abs(b.difference) - Math.abs(a.difference)).slice(0, most);
  shown.sort((a, b) => b.difference - a.difference);
  const dots = shown.flatMap(({ horse, front, hind }) => [
    { horse, end: 'front', value: front * times },
    { horse, end: 'hind', value: hind * times },
  ]);
  const said = (value: number) => formatQuantity(value, unit, units);
  const [front, hind] = (['front', 'hind'] as const).map((end) =>
    said(median(Float64Array.from(pairs, (pair) => pair[end]))),
  );
  const surely = errorsKnown ? say`, in ${sure.length} by more than the error of measuring` : '';
  const first = dots.slice(0, 2).toSorted((a, b) => a.value - b.value);
  return {
    name,
    title: counted(pairs.length, {
      one: say`${words} in ${holds.length} of ${pairs.length} horse${surely}`,
      other: say`${words} in ${holds.length} of ${pairs.length} horses${surely}`,
    }),
    caption: sentences(
      say`Each dot is the mean of a horse’s two front (filled) or two hind feet (hollow).`,
      pairs.length > most ? say`The ${most} largest differences of ${pairs.length} horses.` : '',
      leftOut(missing, 'feet'),
    ),
    summary: say`${title}, one line a horse. The median is ${front} in front and ${hind} behind.`,
    options: {
      height: 58 + 20 * shown.length,
      marginLeft: nameRoom(shown.map(({ horse }) => horse)),
      marginTop: 26,
      marginRight: 24,
      marginBottom: 38,
      y: { domain: shown.map(({ horse }) => horse), label: null },
      x: { nice: true },
      marks: [
        axis.gridX(),
        axis.x(labelled(title)),
        axis.names(),
        Plot.link(shown, {
          x1: (d) => d.front * times,
          x2: (d) => d.hind * times,
          y1: 'horse',
          y2: 'horse',
          stroke: inks.edge,
          strokeWidth: strokes.line,
        }),
        Plot.dot(dots, {
          x: 'value',
          y: 'horse',
          r: 4.5,
          fill: (d) => (d.end === 'front' ? roles.front : grounds.card),
          stroke: (d) => (d.end === 'front' ? roles.front : roles.hind),
          strokeWidth: strokes.line,
          title: (d) => `${shortened(d.horse, 40)}, ${cellWord('end', d.end)}: ${said(d.value / times)}`,
          tip,
        }),
        Plot.text(first, {
          x: 'value',
          y: 'horse',
          text: (d) => cellWord('end', d.end),
          dy: -13,
          ...label,
        }),
      ],
      width: chartSizes.width,
    },
  };
}

interface Pair {
  readonly horse: string;
  readonly front: number;
  readonly hind: number;
  readonly difference: number;
  readonly error: number;
}

function pairsOf(means: readonly FootMean[]): Pair[] {
  const byHorse = new Map<string, Record<'front' | 'hind', FootMean[]>>();
  for (const mean of means) {
    const ends = byHorse.get(mean.horse) ?? { front: [], hind: [] };
    ends[endOf(mean.limb)].push(mean);
    byHorse.set(mean.horse, ends);
  }
  const average = (feet: readonly FootMean[]) => feet.reduce((sum, foot) => sum + foot.value, 0) / feet.length;
  const error = (feet: readonly FootMean[]) => Math.hypot(...feet.map((foot) => foot.error)) / feet.length;
  return [...byHorse]
    .filter(([, { front, hind }]) => front.length > 0 && hind.length > 0)
    .map(([horse, { front, hind }]) => ({
      horse,
      front: average(front),
      hind: average(hind),
      difference: average(front) - average(hind),
      error: Math.hypot(error(front), error(hind)),
    }));
}
