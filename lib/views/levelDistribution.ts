import * as Plot from '@observablehq/plot';
import { endOf, isLimb, type Limb, limbName, limbs } from '../hoof/limbs.ts';
import { errorsBeyond } from '../hoof/verdict.ts';
import { formatQuantity } from '../sheet/display.ts';
import { median, quantile } from '../stats/index.ts';
import { say } from '../words/say.ts';
import { shownNumber } from '../words/shownNumber.ts';
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
import { numbersOf, textOf } from './footMeans.ts';
import type { Readable } from './footShape.ts';
import { chartSizes, roles, strokes, tissues } from './theme.ts';

const moments = ['before', 'after', 'between'] as const;
const momentWords = { before: say`before the work`, after: say`after the work`, between: say`between visits` } as const;
type Moment = (typeof moments)[number];

/** What of a column is drawn: small however many rows it was made from. */
export interface LevelSummary {
  readonly unit: string;
  readonly groups: readonly LevelGroup[];
  /** The largest size of any value; 0 of none. */
  readonly reach: number;
  /** Of all values together; it may be `NaN` where their errors are known. */
  readonly median: number;
  /** The middle one of the values' standard errors, `NaN` where they are not known. */
  readonly usualError: number;
  readonly missing: number;
}

/** The measurements of one limb at one moment. */
export interface LevelGroup {
  readonly limb: Limb;
  readonly moment: Moment;
  readonly count: number;
  /** How many of them pass zero by more than 1.96 standard errors. */
  readonly beyond: number;
  /** Their quartiles. */
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  /** Values that stand for those about them, so that lines which would fall on one another are drawn once. */
  readonly lines: readonly number[];
}

/** Into how many places from zero to the largest value the lines of a group fall. */
export const linePlaces = 400;

/**
 * Inside minus outside, limb by limb, before and after the farrier's work: every measurement a short line, the middle
 * half and the median of each group, and round zero the band that the error of measuring alone would fill.
 * @param feet     with `limb`, `moment` and the column
 * @param options  `column`: `wall_level_mm` for the front view, `heel_level_mm` for the view from behind, or another difference
 */
export function levelDistribution(
  feet: Readable,
  options: ChartOptions & { readonly column?: string } = {},
): ChartDescription {
  const { column = 'wall_level_mm', units, rows } = options;
  return levelChart(levelSummary(feet, column, rows), column, units);
}

/** The chart of `levelDistribution` from a summary, wherever it was made. */
export function levelChart(
  { unit, groups, reach: largest, median: middle, usualError, missing }: LevelSummary,
  column: string,
  units = millimetres,
): ChartDescription {
  const title = columnTitle(column);
  const name = column.replaceAll('_', '-');
  if (groups.length === 0) return nothingToDraw(name, say`${title}: nothing measured`, leftOut(missing, 'rows'));
  const { times, label: labelled } = shownIn(unit, units);
  const said = (value: number, signed = false) => formatQuantity(value, unit, units, { signed });
  const present = moments.filter((moment) => groups.some((group) => group.moment === moment));
  // Zero in the middle, so that inside and outside weigh alike to the eye.
  const reach = largest || 1;
  const lines = groups.flatMap(({ limb, moment, lines }) => lines.map((value) => ({ limb, moment, value })));
  const band = errorsBeyond * usualError;
  const bandKnown = Number.isFinite(band);
  const shares = present.map((moment) => {
    const of = groups.filter((group) => group.moment === moment);
    const total = (part: 'beyond' | 'count') => of.reduce((sum, group) => sum + group[part], 0);
    return say`${total('beyond')} of ${total('count')} ${momentWords[moment]}`;
  });
  return {
    name,
    title: bandKnown
      ? say`${title}: beyond the error of measuring in ${shares.join(', ')}`
      : say`${title}: the middle of all measurements is ${said(middle, true)}`,
    caption: sentences(
      say`Inside minus outside: to the right of zero the inside is higher. Thin lines are single measurements, the bar holds the middle half, the thick line is the median.`,
      bandKnown
        ? say`The band is what the error of measuring alone gives 95 times in 100: ${said(band)} either way.`
        : say`The error of measuring is not known.`,
      leftOut(missing, 'rows'),
    ),
    summary: say`Medians: ${groups.map(({ limb, moment, middle }) => `${limbName(limb)} ${momentWords[moment]} ${said(middle, true)}`).join(', ')}.`,
    options: {
      width: chartSizes.width,
      height: 62 + groups.length * 24 + limbs.length * 8,
      marginLeft: 128,
      marginRight: 16,
      marginTop: 8,
      marginBottom: 38,
      x: { nice: true, domain: [-reach * times, reach * times] },
      y: { domain: present, label: null },
      fy: {
        domain: limbs.filter((limb) => groups.some((group) => group.limb === limb)),
        label: null,
        padding: 0.12,
        axis: null,
      },
      marks: [
        ...(bandKnown ? [Plot.rectX([band * times], { x1: (d) => -d, x2: (d) => d, fill: tissues.sole })] : []),
        axis.gridX(),
        axis.x(labelled(say`${title}, inside minus outside`), { tickFormat: signedTick }),
        axis.names({ tickFormat: (moment: Moment) => momentWords[moment], fontSize: label.fontSize }),
        Plot.text(
          groups,
          Plot.selectFirst({
            fy: 'limb',
            z: 'limb',
            text: 'limb',
            frameAnchor: 'left',
            dx: -122,
            textAnchor: 'start',
            fontWeight: 600,
            ...label,
          }),
        ),
        Plot.tickX(lines, {
          x: (d) => d.value * times,
          y: 'moment',
          fy: 'limb',
          stroke: (d) => roles[endOf(d.limb as Limb)],
          strokeOpacity: 0.4,
          strokeWidth: strokes.thin,
          insetTop: 2,
          insetBottom: 2,
        }),
        Plot.barX(groups, {
          x1: (d) => d.low * times,
          x2: (d) => d.high * times,
          y: 'moment',
          fy: 'limb',
          fill: (d) => roles[endOf(d.limb as Limb)],
          fillOpacity: 0.35,
          insetTop: 5,
          insetBottom: 5,
        }),
        Plot.tickX(groups, {
          x: (d) => d.middle * times,
          y: 'moment',
          fy: 'limb',
          stroke: roles.beyond,
          strokeWidth: 3,
        }),
        Plot.ruleX([0], reference),
      ],
    },
  };
}

function levelSummary(feet: Readable, column: string, rows: Iterable<number> | undefined): LevelSummary {
  const limb = textOf(feet, 'limb');
  const moment = feet.names.includes('moment') ? textOf(feet, 'moment') : undefined;
  const { unit, values, error } = numbersOf(feet, column);
  const found = new Map<string, { limb: Limb; moment: Moment; values: number[]; beyond: number }>();
  const errors: number[] = [];
  let missing = 0;
  for (const row of rows ?? Array(feet.rows).keys()) {
    const code = limb.at(row);
    if (!isLimb(code)) continue;
    const value = values[row];
    if (Number.isNaN(value)) {
      missing++;
      continue;
    }
    const word = moment?.at(row);
    const known = word === 'before' || word === 'after' ? word : 'between';
    const own = error?.[row] ?? Number.NaN;
    errors.push(own);
    const key = `${code} ${known}`;
    const group = found.get(key) ?? { limb: code, moment: known, values: [], beyond: 0 };
    group.values.push(value);
    if (Math.abs(value) > errorsBeyond * own) group.beyond++;
    found.set(key, group);
  }
  const all = [...found.values()].flatMap((group) => group.values);
  const reach = all.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const groups = limbs.flatMap((of) =>
    moments.flatMap((at) => {
      const group = found.get(`${of} ${at}`);
      if (group === undefined) return [];
      const [low, middle, high] = quantile(group.values, [0.25, 0.5, 0.75]);
      const { values: own, ...rest } = group;
      return [{ ...rest, ...{ count: own.length, low, middle, high }, lines: distinct(own, reach || 1) }];
    }),
  );
  return { unit, groups, reach, median: median(all), usualError: median(errors), missing };
}

function distinct(values: readonly number[], reach: number): number[] {
  return [...new Map(values.map((value) => [Math.round((linePlaces * value) / reach), value])).values()];
}

function signedTick(value: number): string {
  return `${value > 0 ? '+' : ''}${shownNumber(value)}`;
}
