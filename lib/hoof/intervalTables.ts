import type { Columns } from '../sheet/column.ts';
import { type DisplayUnits, formatQuantity } from '../sheet/display.ts';
import { fixed as decimals } from '../words/fixed.ts';
import { say } from '../words/say.ts';
import type { IntervalData } from './intervalData.ts';
import type { IntervalEffects, IntervalFit } from './intervalModel.ts';
import { groupName, limitsInWords, pWords, quantity, termWords } from './intervalWords.ts';
import { unitSuffix } from './partName.ts';

/**
 * The model's table: one row a term, fixed effects first, then what varies between groups. What it gives for single farriers
 * is left out: their horses differ too, so it is no score.
 * @returns estimates in the outcome's unit, for one week more where the term is an interval's length
 */
export function termTable(
  { outcome, unit }: Pick<IntervalData, 'outcome' | 'unit'>,
  { terms, random, residualSd }: IntervalEffects,
): Columns {
  const end = unitSuffix(outcome);
  const fixed = terms.filter(({ term }) => !term.startsWith('farrier'));
  const numbers = (of: (term: (typeof fixed)[number]) => number) =>
    Float64Array.from([...fixed.map(of), ...random.map(() => Number.NaN), Number.NaN]);
  return {
    term: { values: [...fixed.map(({ term }) => term), ...random.map(({ by, term }) => `${by} ${term}`), 'residual'] },
    meaning: {
      values: [
        ...fixed.map(({ term }) => termWords(term)),
        ...random.map(({ by, term }) => say`variation between ${groupName(by, term)}`),
        say`variation that is left over`,
      ],
    },
    [`estimate${end}`]: { unit, values: numbers(({ estimate }) => estimate) },
    [`standard_error${end}`]: { unit, values: numbers(({ se }) => se) },
    [`lower${end}`]: { unit, values: numbers(({ lower }) => lower) },
    [`upper${end}`]: { unit, values: numbers(({ upper }) => upper) },
    degrees_of_freedom: { values: numbers(({ df }) => df) },
    t: { values: numbers(({ t }) => t) },
    p: { values: numbers(({ p }) => p) },
    [`standard_deviation${end}`]: {
      unit,
      values: Float64Array.from([...fixed.map(() => Number.NaN), ...random.map(({ sd }) => sd), residualSd]),
    },
  };
}

/** The model's table in words, for reading: numbers with as many decimals as their errors deserve. */
export function termWordsTable(data: Pick<IntervalData, 'unit'>, fit: IntervalEffects, units: DisplayUnits): Columns {
  const fixed = fit.terms.filter(({ term }) => !term.startsWith('farrier'));
  const varied = [...fit.random, { by: '', term: '', sd: fit.residualSd }];
  const blank = varied.map(() => '');
  return {
    [say`term`]: {
      values: [
        ...fixed.map(({ term }) => termWords(term)),
        ...varied.map(({ by, term }) => (by === '' ? say`left over` : say`between ${groupName(by, term)}`)),
      ],
    },
    [say`estimate`]: {
      values: [
        ...fixed.map(({ estimate, se }) => formatQuantity(estimate, data.unit, units, { error: se, signed: true })),
        ...varied.map((each) => say`standard deviation ${quantity(each.sd, fit.within.se, data.unit, units)}`),
      ],
    },
    [say`interval (95%)`]: {
      values: [...fixed.map((term) => limitsInWords(term, data.unit, units)), ...blank],
    },
    [say`degrees of freedom`]: { values: [...fixed.map(({ df }) => decimals(df, 1)), ...blank] },
    p: { values: [...fixed.map(({ p }) => pWords(p)), ...blank] },
  };
}

/** One row a horse: how often it was seen, and the effect of a week without it. */
export function horseTable(data: IntervalData, { rows, weeksWithin, weeksMean, checks }: IntervalFit): Columns {
  const end = unitSuffix(data.outcome);
  const horses = new Map<
    string,
    { feet: Set<string>; visits: Set<number>; count: number; squares: number; mean: number }
  >();
  for (const [i, row] of rows.entries()) {
    const name = data.horse[row];
    const horse = horses.get(name) ?? { feet: new Set(), visits: new Set(), count: 0, squares: 0, mean: weeksMean[i] };
    horse.feet.add(data.limb[row]);
    horse.visits.add(data.start[row]);
    horse.count++;
    horse.squares += weeksWithin[i] ** 2;
    horses.set(name, horse);
  }
  const list = [...horses];
  const without = new Map(checks.without.map((each) => [each.horse, each]));
  const numbers = (of: (name: string, horse: (typeof list)[number][1]) => number) =>
    Float64Array.from(list, ([name, horse]) => of(name, horse));
  return {
    horse_id: { values: list.map(([name]) => name) },
    feet: { values: numbers((_, { feet }) => feet.size) },
    intervals: { values: numbers((_, { visits }) => visits.size) },
    rows: { values: numbers((_, { count }) => count) },
    usual_interval_weeks: { unit: 'wk', values: numbers((_, { mean }) => mean) },
    spread_of_intervals_weeks: {
      unit: 'wk',
      // Of one row there is none: 0 / 0.
      values: numbers((_, { squares, count }) => Math.sqrt(squares / (count - 1))),
    },
    [`effect_without_this_horse${end}`]: {
      unit: data.unit,
      values: numbers((name) => without.get(name)?.estimate ?? Number.NaN),
      error: numbers((name) => without.get(name)?.se ?? Number.NaN),
    },
    [`its_standard_error${end}`]: { unit: data.unit, values: numbers((name) => without.get(name)?.se ?? Number.NaN) },
  };
}

/** One row an interval of one foot, as it went into the model, with what the model made of it. */
export function intervalTable(
  data: IntervalData,
  { rows, weeksWithin, weeksMean, fitted, residuals }: IntervalFit,
): Columns {
  const end = unitSuffix(data.outcome);
  const picked = (values: Float64Array) => Float64Array.from(rows, (row) => values[row]);
  const words = (values: readonly string[]) => Array.from(rows, (row) => values[row]);
  const { unit } = data;
  return {
    horse_id: { values: words(data.horse) },
    limb: { values: words(data.limb) },
    start_date: { kind: 'date', values: picked(data.start) },
    end_date: { kind: 'date', values: picked(data.end) },
    interval_within_weeks: { unit: 'wk', values: weeksWithin },
    interval_mean_weeks: { unit: 'wk', values: weeksMean },
    [`change${end}`]: { unit, values: picked(data.change), error: picked(data.changeError) },
    season: { values: words(data.season) },
    shod: { values: words(data.shod) },
    farrier: { values: words(data.farrier) },
    [`fitted${end}`]: { unit, values: fitted },
    [`left_over${end}`]: { unit, values: residuals },
  };
}
