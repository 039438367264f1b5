import * as Plot from '@observablehq/plot';
import { citation } from '../hoof/bibliography.ts';
import { type RangeShare, rangeShares as sharesOf } from '../hoof/rangeShares.ts';
import { builtInRanges, type Ranges } from '../hoof/ranges.ts';
import type { Table } from '../sheet/table.ts';
import { say } from '../words/say.ts';
import { axis, type ChartDescription, type ChartOptions, label, leftOut, nothingToDraw, sentences } from './chart.ts';
import { chartSizes, grounds, inks, roles, strokes } from './theme.ts';

/**
 * How many feet of this herd lie outside each range, beside how many lay outside in published herds: so that nobody is
 * alarmed by a rule that most sound horses break.
 * @param occasions  one row a foot, day and moment; each foot counts once, by its latest
 * @param options    `ranges`: those that count
 */
export function rangeShares(
  occasions: Table,
  options: Pick<ChartOptions, 'units'> & { readonly ranges?: Ranges } = {},
): ChartDescription {
  return shareChart(sharesOf(occasions, options.ranges ?? builtInRanges));
}

/** A share that may have been counted by the number alone. */
export type CountedShare = Omit<RangeShare, 'beyond'> & Partial<Pick<RangeShare, 'beyond'>>;

type Shown = RangeShare & { readonly name: string };

/**
 * The same chart from shares that were counted elsewhere, of feet or of readings.
 * @param counted  without `beyond` where the error of measuring was not looked at; then none has it
 */
export function shareChart(counted: readonly CountedShare[]): ChartDescription {
  const told = counted.every(({ beyond }) => beyond !== undefined);
  const shares = counted
    .filter(({ of }) => of > 0)
    .map((share) => ({ ...share, name: nameOf(share), beyond: share.beyond ?? 0 }))
    .map((share) => ({ ...share, unsure: share.outside - share.beyond, counts: told ? share.beyond : share.outside }))
    .sort((a, b) => b.counts / b.of - a.counts / a.of);
  const top = shares.find(({ range }) => range.publishedOutside !== undefined) ?? shares[0];
  if (top === undefined) return nothingToDraw('outside-ranges', say`No range holds for a measured foot`);
  const missing = shares.reduce((sum, share) => sum + share.missing, 0);
  const percent = (part: number, of: number) => (100 * part) / of;
  const published = shares.flatMap(({ name, range }) =>
    (range.publishedOutside ?? []).map((herd) => ({ name, ...herd })),
  );
  return {
    name: 'outside-ranges',
    title: titleOf(top, told),
    caption: sentences(
      told
        ? say`Solid: feet beyond the range by more than the error of measuring. Outlined: outside, but by no more than the error, so it can’t be told. Diamonds: published herds, counted by their own definitions, some by horse.`
        : say`Bars: readings outside the range by the number alone; what the error of measuring makes of each can’t be told. Diamonds: published herds, counted by their own definitions, some by horse.`,
      say`Ranges are conventions with thin evidence; most sound horses break one.`,
      leftOut(missing, 'values'),
    ),
    summary: `${shares
      .map(({ name, beyond, unsure, outside, of }) =>
        told
          ? say`${name}: ${beyond} of ${of} beyond, ${unsure} can’t be told`
          : say`${name}: ${outside} of ${of} readings outside`,
      )
      .join('. ')}.`,
    options: {
      width: chartSizes.width,
      height: 48 + 46 * shares.length,
      marginLeft: 12,
      marginRight: 24,
      marginTop: 6,
      marginBottom: 38,
      x: { domain: [0, 100] },
      y: { domain: shares.map(({ name }) => name), axis: null, padding: 0.1 },
      marks: [
        axis.gridX(),
        axis.x(say`Share outside the range (%)`),
        Plot.barX(shares, {
          x1: 0,
          x2: (d) => percent(d.beyond, d.of),
          y: 'name',
          fill: roles.measured,
          insetTop: 22,
          insetBottom: 6,
        }),
        Plot.barX(shares, {
          x1: (d) => percent(d.beyond, d.of),
          x2: (d) => percent(d.beyond + d.unsure, d.of),
          y: 'name',
          fill: grounds.card,
          stroke: roles.unsure,
          strokeWidth: strokes.thin,
          insetTop: 22,
          insetBottom: 6,
        }),
        Plot.dot(published, {
          x: (d) => percent(d.outside, d.of),
          y: 'name',
          symbol: 'diamond',
          r: 5,
          dy: 8,
          fill: grounds.card,
          stroke: inks.ink,
          strokeWidth: strokes.line,
          title: (d) => say`${d.outside} of ${d.of} in a published herd (${citation(d.source)})`,
        }),
        Plot.text(shares, {
          x: 0,
          y: 'name',
          text: (d) => say`${d.name}: ${d.counts} of ${d.of}`,
          textAnchor: 'start',
          dx: 2,
          dy: -11,
          ...label,
        }),
      ],
    },
  };
}

/** The measure, and which feet where the range is for one end only. */
function nameOf({ measure, range }: CountedShare): string {
  const end = range.when?.end;
  return end === undefined ? measure.title : `${measure.title} (${end === 'front' ? say`front` : say`hind`})`;
}

function titleOf({ name, beyond, outside, of, range }: Shown, told: boolean): string {
  const here = told
    ? say`${name}: ${beyond} of ${of} feet beyond the range here`
    : say`${name}: ${outside} of ${of} readings outside the range here`;
  const shares = (range.publishedOutside ?? []).map((herd) => Math.round((100 * herd.outside) / herd.of));
  if (shares.length === 0) return here;
  const [low, high] = [Math.min(...shares), Math.max(...shares)];
  return say`${here}; in published herds ${low === high ? low : say`${low} to ${high}`} percent`;
}
