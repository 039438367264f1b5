import * as Plot from '@observablehq/plot';
import { type FootFacts, footFacts } from '../hoof/footFacts.ts';
import { type Limb, limbs } from '../hoof/limbs.ts';
import type { Measure } from '../hoof/measure.ts';
import { measures } from '../hoof/measures/index.ts';
import { type Ranges, rangeFor } from '../hoof/ranges.ts';
import { rangeSentence } from '../hoof/sentences.ts';
import type { NumberColumn } from '../sheet/column.ts';
import { type DisplayUnits, formatQuantity, toDisplay } from '../sheet/display.ts';
import type { Table } from '../sheet/table.ts';
import { counted } from '../words/counted.ts';
import { say } from '../words/say.ts';
import { axis, type ChartDescription, extent, millimetres, reference, shownIn, utc } from './chart.ts';
import { limbMark } from './limbMark.ts';
import { strokes, tissues } from './theme.ts';

export interface MeasureLinesOptions {
  readonly ranges: Ranges;
  readonly units?: DisplayUnits;
  /** Of which moment; where a foot was not measured at it, none of its rows are drawn. Left out: every moment. */
  readonly moment?: string;
}

interface Reading {
  readonly limb: Limb;
  readonly foot: FootFacts;
  readonly date: number;
  readonly value: number;
  readonly error: number;
}

/**
 * Every computed column of one horse as a small line over time, one a foot, each value with the bar of its 95% error and
 * the range, where one range holds for all that is drawn.
 * @param occasions  one row a foot, day and moment, with the computed columns
 * @returns one chart a column that was ever known of this horse, in the order of the measures; titles tell the latest values
 */
export function measureLines(occasions: Table, horse: string, options: MeasureLinesOptions): ChartDescription[] {
  const { ranges, units = millimetres, moment } = options;
  const facts = footFacts(occasions);
  const names = occasions.column('horse_id').values;
  const rows = Array.from(names.keys()).filter((row) => names[row] === horse);
  const feet = rows.map((row) => ({ row, foot: facts(row) }));
  const asked = feet.filter(({ foot }) => moment === undefined || foot.moment === moment);
  return measures.flatMap((measure) => {
    if (measure.table !== 'feet' || !occasions.names.includes(measure.name)) return [];
    const { values, error } = occasions.column(measure.name) as NumberColumn;
    const readings = asked
      .filter(({ row, foot }) => !Number.isNaN(values[row]) && !(measure.view === 'pair' && foot.limb.startsWith('R')))
      .map(({ row, foot }) => ({
        ...{ limb: foot.limb, foot, date: foot.date },
        ...{ value: values[row], error: error?.[row] ?? Number.NaN },
      }))
      .sort((a, b) => a.date - b.date);
    return readings.length === 0 ? [] : [small(measure, readings, ranges, units)];
  });
}

/** A month in few letters with its year, in one line: the height on paper is for the lines. */
const month = new Intl.DateTimeFormat(say`en`, { month: 'short', year: '2-digit', timeZone: 'UTC' });

function small(measure: Measure, readings: readonly Reading[], ranges: Ranges, units: DisplayUnits): ChartDescription {
  const { times, label } = shownIn(measure.unit, units);
  const held = new Set(readings.map(({ foot }) => rangeFor(ranges.get(measure.name) ?? [], foot)));
  const range = held.size === 1 ? [...held][0] : undefined;
  const drawn = readings.map((one) => ({
    ...one,
    low: (one.value - 1.96 * (one.error || 0)) * times,
    high: (one.value + 1.96 * (one.error || 0)) * times,
  }));
  const [low, high] = extent(drawn.flatMap((one) => [one.low, one.high]));
  const limits = [range?.atLeast, range?.atMost].filter((limit) => limit !== undefined).map((limit) => limit * times);
  const shown = limits.filter((limit) => limit > low - (high - low) && limit < high + (high - low));
  const latest = limbs.flatMap((limb) => {
    const last = readings.findLast((one) => one.limb === limb);
    return last === undefined ? [] : [`${limb}\u00a0${formatQuantity(last.value, measure.unit, units)}`];
  });
  // The unit stands once, behind the last.
  const { symbol } = toDisplay(0, measure.unit, units);
  const values = latest
    .map((value, at) => (symbol && latest[at + 1] ? value.replace(` ${symbol}`, '') : value))
    .join(', ');
  const [first, last] = extent(readings.map(({ date }) => date));
  // A single day would stretch over hours.
  const days = last - first < 28 ? [first - 14, last + 14] : [first, last];
  const scales = {
    x: { type: 'utc', domain: days.map(utc) },
    y: { domain: extent([low, high, ...shown]), nice: true },
  } as const;
  const marks = (unit: string | null, time: Plot.AxisXOptions, r: number, strokeWidth: number) => [
    axis.gridY({ ticks: 3 }),
    axis.x(null, time),
    axis.y(unit, { ticks: 3 }),
    Plot.ruleY(shown, reference),
    ...limbs.flatMap((limb) => {
      const mark = limbMark(limb);
      const own = drawn.filter((one) => one.limb === limb);
      return [
        Plot.ruleX(own, { x: (d) => utc(d.date), y1: 'low', y2: 'high', stroke: tissues.line, strokeOpacity: 0.5 }),
        Plot.line(own, {
          x: (d) => utc(d.date),
          y: (d) => d.value * times,
          stroke: mark.stroke,
          strokeWidth,
          strokeDasharray: mark.dash,
        }),
        Plot.dot(own, {
          x: (d) => utc(d.date),
          y: (d) => d.value * times,
          symbol: mark.symbol as Plot.DotOptions['symbol'],
          fill: mark.fill,
          stroke: mark.stroke,
          r,
          strokeWidth,
        }),
      ];
    }),
  ];
  return {
    name: `over-time-${measure.name.replaceAll('_', '-')}`,
    title: `${measure.title}: ${values}`,
    caption: range === undefined ? '' : say`Range: ${rangeSentence(range, measure.unit, units)}.`,
    summary: counted(readings.length, {
      one: say`${measure.title} over time, latest values ${values}; ${readings.length} value.`,
      other: say`${measure.title} over time, latest values ${values}; ${readings.length} values.`,
    }),
    options: {
      ...{ width: 300, height: 98, marginLeft: 44, marginRight: 10, marginTop: 18, marginBottom: 20 },
      ...scales,
      marks: marks(label(''), { ticks: 3 }, 2.5, strokes.line),
    },
    // A fifth of the text's width: the unit stands in the title, and only the first and the last day are named.
    onPaper: {
      ...{ width: 133, height: 62, marginLeft: 32, marginRight: 18, marginTop: 5, marginBottom: 15 },
      ...scales,
      marks: marks(null, { ticks: days.map(utc), tickFormat: (day: Date) => month.format(day) }, 1.5, strokes.hair),
    },
  };
}
