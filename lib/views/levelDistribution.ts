import * as Plot from '@observablehq/plot';
import { endOf, isLimb, type Limb, limbName, limbs } from '../hoof/limbs.ts';
import { errorsBeyond } from '../hoof/verdict.ts';
import { formatQuantity } from '../sheet/display.ts';
import { median, quantile } from '../stats/index.ts';
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
import { numbersOf, textOf } from './footMeans.ts';
import type { Readable } from './footShape.ts';
import { chartSizes, roles, strokes, tissues } from './theme.ts';

const moments = ['before', 'after', 'between'] as const;
const momentWords = { before: say`before the work`, after: say`after the work`, between: say`between visits` } as const;
type Moment = (typeof moments)[number];

interface Reading {
  readonly limb: Limb;
  readonly moment: Moment;
  readonly value: number;
  readonly beyond: boolean;
}

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
  const { column = 'wall_level_mm', units = millimetres, rows } = options;
  const title = columnTitle(column);
  const { readings, missing, usualError, unit } = readingsOf(feet, column, rows);
  const name = column.replaceAll('_', '-');
  if (readings.length === 0)
    return nothingToDraw(name, say`${title}: nothing measured`, leftOut(missing, say`row`, say`rows`));
  const { times, label: labelled } = shownIn(unit, units);
  const said = (value: number, signed = false) => formatQuantity(value, unit, units, { signed });
  const present = moments.filter((moment) => readings.some((reading) => reading.moment === moment));
  const groups = limbs
    .flatMap((limb) =>
      present.map((moment) => {
        const values = readings.filter((one) => one.limb === limb && one.moment === moment).map((one) => one.value);
        const [low, middle, high] = quantile(values, [0.25, 0.5, 0.75]);
        return { limb, moment, count: values.length, low, middle, high };
      }),
    )
    .filter(({ count }) => count > 0);
  // Zero in the middle, so that inside and outside weigh alike to the eye.
  const reach = readings.reduce((most, { value }) => Math.max(most, Math.abs(value)), 0) || 1;
  const band = errorsBeyond * usualError;
  const bandKnown = Number.isFinite(band);
  const shares = present.map((moment) => {
    const of = readings.filter((one) => one.moment === moment);
    return say`${of.filter((one) => one.beyond).length} of ${of.length} ${momentWords[moment]}`;
  });
  return {
    name,
    title: bandKnown
      ? say`${title}: beyond the error of measuring in ${shares.join(', ')}`
      : say`${title}: the middle of all measurements is ${said(median(readings.map(({ value }) => value)), true)}`,
    caption: sentences(
      say`Inside minus outside: to the right of zero the inside is higher. Thin lines are single measurements, the bar holds the middle half, the thick line is the median.`,
      bandKnown
        ? say`The band is what the error of measuring alone gives 95 times in 100: ${said(band)} either way.`
        : say`The error of measuring is not known.`,
      leftOut(missing, say`row`, say`rows`),
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
        Plot.tickX(distinct(readings, reach), {
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

function readingsOf(feet: Readable, column: string, rows: Iterable<number> | undefined) {
  const limb = textOf(feet, 'limb');
  const moment = feet.names.includes('moment') ? textOf(feet, 'moment') : undefined;
  const { unit, values, error } = numbersOf(feet, column);
  const readings: Reading[] = [];
  const errors: number[] = [];
  let missing = 0;
  for (const row of rows ?? Array(feet.rows).keys()) {
    const code = limb.at(row);
    if (!isLimb(code)) continue;
    if (Number.isNaN(values[row])) {
      missing++;
      continue;
    }
    const word = moment?.at(row);
    const known = word === 'before' || word === 'after' ? word : 'between';
    const own = error?.[row] ?? Number.NaN;
    errors.push(own);
    readings.push({
      limb: code,
      moment: known,
      value: values[row],
      beyond: Math.abs(values[row]) > errorsBeyond * own,
    });
  }
  return { readings, missing, usualError: median(errors), unit };
}

/** Lines that would fall on one another are drawn once, so that a large herd stays light. */
function distinct(readings: readonly Reading[], reach: number): Reading[] {
  const places = new Map(
    readings.map((one) => [`${one.limb} ${one.moment} ${Math.round((400 * one.value) / reach)}`, one]),
  );
  return [...places.values()];
}

function signedTick(value: number): string {
  return value > 0 ? `+${value}` : `${value}`.replace('-', '−');
}
