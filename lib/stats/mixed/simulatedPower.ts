import { normal } from '../distributions/normal.ts';
import { random } from '../random.ts';
import { type Data, design } from './design.ts';
import { type MixedModelSpec, mixedModel, refitModel } from './mixedModel.ts';

/** What is taken to be true in a simulation. */
export interface SimulatedTruth {
  /** Each fixed effect by its term; a term left out is zero. */
  readonly fixed: Readonly<Record<string, number>>;
  /** Standard deviations in the order of the model's random terms, coefficient after coefficient; uncorrelated. */
  readonly random: readonly number[];
  readonly residualSd: number;
}

export interface SimulatedPowerOptions {
  /** The term that is to be told from zero. */
  readonly term: string;
  readonly truth: SimulatedTruth;
  /** The p below which it counts as seen, 0.05 where not given. */
  readonly level?: number;
  /** 500 where not given. */
  readonly replicates?: number;
  readonly seed: number;
  /** Called after each replicate; `false` stops, and what was drawn so far is used. */
  readonly onProgress?: (done: number, total: number) => boolean | undefined;
}

export interface SimulatedPower {
  /** The share of replicates that saw the effect, and where it may lie (95%, Wilson's interval). */
  readonly power: number;
  readonly lower: number;
  readonly upper: number;
  readonly replicates: number;
  /** The mean of the estimates, and their standard deviation. */
  readonly mean: number;
  readonly sd: number;
  /** How many fits had a variance at zero. */
  readonly singular: number;
}

/**
 * How often a mixed model will tell an effect from zero, by drawing outcomes for a design and fitting each.
 * @param columns the planned rows: predictors and groups; the response need not be there
 * @returns the power with the uncertainty that the number of replicates leaves
 * @throws TypeError where the term is not in the model, or the truth lacks a standard deviation
 * @source Wilson 1927, Journal of the American Statistical Association 22:209–212, for the interval
 */
export function simulatedPower(
  columns: Readonly<Record<string, Data>>,
  spec: MixedModelSpec,
  { term, truth, level = 0.05, replicates = 500, seed, onProgress }: SimulatedPowerOptions,
): SimulatedPower {
  const stream = random(seed);
  const total = Object.values(columns)[0]?.length ?? 0;
  const planned = { ...columns, [spec.response]: Float64Array.from({ length: total }, () => stream.normal()) };
  const draw = drawer(design(planned, spec), truth, () => stream.normal());
  const first = mixedModel(planned, spec);
  const place = first.fixed.findIndex((effect) => effect.term === term);
  if (place < 0)
    throw new TypeError(`The model has no term ${term}; it has ${first.fixed.map((each) => each.term).join(', ')}`);
  const estimates: number[] = [];
  let [seen, singular] = [0, 0];
  for (let done = 1; done <= replicates; done++) {
    const { fixed, singular: flat } = refitModel(first, draw());
    estimates.push(fixed[place].estimate);
    if (fixed[place].p < level) seen++;
    if (flat) singular++;
    if (onProgress?.(done, replicates) === false) break;
  }
  const n = estimates.length;
  const mean = estimates.reduce((sum, value) => sum + value, 0) / n;
  const sd = Math.sqrt(estimates.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1));
  return { ...shareOf(seen, n), replicates: n, mean, sd, singular };
}

function shareOf(seen: number, n: number): { power: number; lower: number; upper: number } {
  const z = normal.quantile(0.975);
  const share = seen / n;
  const middle = (share + z ** 2 / (2 * n)) / (1 + z ** 2 / n);
  const reach = (z / (1 + z ** 2 / n)) * Math.sqrt((share * (1 - share)) / n + z ** 2 / (4 * n ** 2));
  return { power: share, lower: Math.max(0, middle - reach), upper: Math.min(1, middle + reach) };
}

function drawer(
  { n, terms, random: groups }: ReturnType<typeof design>,
  { fixed, random: sds, residualSd }: SimulatedTruth,
  normal: () => number,
): () => Float64Array {
  const coefficients = groups.flatMap(({ codes, levels, coefficients }) =>
    coefficients.map(({ values, scale }) => ({ codes, levels, values, scale })),
  );
  if (coefficients.length !== sds.length)
    throw new TypeError(`The model has ${coefficients.length} random coefficients, the truth ${sds.length}`);
  const population = new Float64Array(n);
  for (const { name, values } of terms) {
    const effect = Object.hasOwn(fixed, name) ? fixed[name] : 0;
    for (let row = 0; row < n; row++) population[row] += effect * values[row];
  }
  return () => {
    const y = population.map((value) => value + residualSd * normal());
    for (const [k, { codes, levels, values, scale }] of coefficients.entries()) {
      const effects = Float64Array.from(levels, () => sds[k] * normal());
      for (let row = 0; row < n; row++) y[row] += effects[codes[row]] * (values ? values[row] * scale : 1);
    }
    return y;
  };
}
