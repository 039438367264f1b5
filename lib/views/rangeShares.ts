import * as Plot from '@observablehq/plot';
import { isLimb } from '../hoof/limbs.ts';
import { measures } from '../hoof/measures/index.ts';
import { builtInRanges, type Foot, type Ranges, rangeFor } from '../hoof/ranges.ts';
import { verdict } from '../hoof/verdict.ts';
import { TextColumn } from '../sheet/column.ts';
import { axis, type ChartDescription, type ChartOptions, label, nothingToDraw, sentences } from './chart.ts';
import { numbersOf, textOf } from './footMeans.ts';
import type { Readable } from './footShape.ts';
import { chartSizes, grounds, inks, roles, strokes } from './theme.ts';

interface Share {
  readonly name: string;
  readonly title: string;
  /** Feet that a range holds for and that were measured. */
  readonly of: number;
  readonly beyond: number;
  readonly unsure: number;
  readonly published: readonly { readonly outside: number; readonly of: number; readonly source: string }[];
}

/**
 * How many feet of this herd lie outside each range, beside how many lay outside in published herds: so that nobody is
 * alarmed by a rule that most sound horses break.
 * @param feet     with `limb` and the measures' columns; `build`, `shod` and `body_weight_kg` where ranges depend on them
 * @param options  `ranges`: those that count; `rows`: the feet to count, each once
 */
export function rangeShares(
  feet: Readable,
  options: ChartOptions & { readonly ranges?: Ranges } = {},
): ChartDescription {
  const { ranges = builtInRanges, rows } = options;
  const shares = sharesOf(feet, ranges, rows).sort((a, b) => b.beyond / b.of - a.beyond / a.of);
  const top = shares.find(({ published }) => published.length > 0) ?? shares[0];
  if (top === undefined) return nothingToDraw('outside-ranges', 'No range holds for a measured foot');
  const percent = (part: number, of: number) => (100 * part) / of;
  const published = shares.flatMap(({ name, published }) => published.map((herd) => ({ name, ...herd })));
  return {
    name: 'outside-ranges',
    title: titleOf(top),
    caption: sentences(
      'Solid: feet beyond the range by more than the error of measuring. Outlined: outside, but by no more than the error, so it can’t be told. Diamonds: published herds, counted by their own definitions, some by horse.',
      'Ranges are conventions with thin evidence; most sound horses break one.',
    ),
    summary: `${shares.map(({ title, beyond, unsure, of }) => `${title}: ${beyond} of ${of} beyond, ${unsure} can’t be told`).join('. ')}.`,
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
        axis.x('Share outside the range (%)'),
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
          title: (d) => `${d.outside} of ${d.of} in a published herd (${d.source})`,
        }),
        Plot.text(shares, {
          x: 0,
          y: 'name',
          text: (d) => `${d.title}: ${d.beyond} of ${d.of}`,
          textAnchor: 'start',
          dx: 2,
          dy: -11,
          ...label,
        }),
      ],
    },
  };
}

function titleOf({ title, beyond, of, published }: Share): string {
  const here = `${title}: ${beyond} of ${of} feet beyond the range here`;
  if (published.length === 0) return here;
  const shares = published.map((herd) => Math.round((100 * herd.outside) / herd.of)).sort((a, b) => a - b);
  const [low, high] = [shares[0], shares[shares.length - 1]];
  return `${here}; in published herds ${low === high ? low : `${low} to ${high}`} percent`;
}

function sharesOf(feet: Readable, ranges: Ranges, rows: Iterable<number> | undefined): Share[] {
  const known = [...(rows ?? Array(feet.rows).keys())].map((row) => ({ row, foot: footOf(feet, row) }));
  return measures.flatMap(({ name, title }) => {
    const own = ranges.get(name);
    if (own === undefined || !feet.names.includes(name)) return [];
    const { values, error } = numbersOf(feet, name);
    const counts = { beyond: 0, unsure: 0, of: 0 };
    for (const { row, foot } of known) {
      const { state } = verdict(values[row], error?.[row] ?? Number.NaN, rangeFor(own, foot));
      if (state === 'missing' || state === 'no range') continue;
      counts.of++;
      if (state === 'beyond') counts.beyond++;
      if (state === "can't tell") counts.unsure++;
    }
    return counts.of === 0
      ? []
      : [{ name, title, ...counts, published: own.flatMap((range) => range.publishedOutside ?? []) }];
  });
}

function footOf(feet: Readable, row: number): Foot {
  const limb = textOf(feet, 'limb').at(row);
  const number = (name: string) => (feet.names.includes(name) ? numbersOf(feet, name).values[row] : Number.NaN);
  const build = feet.names.includes('build') ? feet.column('build') : undefined;
  const shod = number('shod');
  return {
    limb: isLimb(limb) ? limb : undefined,
    build: build instanceof TextColumn ? build.at(row) || undefined : undefined,
    shod: Number.isNaN(shod) ? undefined : shod === 1,
    weightKg: number('body_weight_kg'),
  };
}
