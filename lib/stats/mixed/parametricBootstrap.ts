import { quantileSorted } from '../quantile.ts';
import { random } from '../random.ts';
import { deviations } from './deviations.ts';
import { type Fit, refit } from './fit.ts';
import type { MixedModel } from './mixedModel.ts';
import { simulator } from './simulate.ts';
import { fixedEffects } from './solution.ts';

export interface BootstrapOptions {
  readonly replicates?: number;
  readonly seed: number;
  /** Called after each replicate; `false` stops, and what was drawn so far is used. */
  readonly onProgress?: (done: number, of: number) => boolean | undefined;
}

export interface BootstrapInterval {
  readonly term: string;
  readonly estimate: number;
  /** Standard deviation of the replicates, and their 2.5 and 97.5 percent quantiles. */
  readonly se: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * What would have been estimated had the model been true: new responses are drawn from it and fitted again.
 * @returns a percentile interval for each fixed effect and each deviation, the residual one last, and how many replicates
 *   were used
 * @source Efron & Tibshirani 1993, An Introduction to the Bootstrap, ch. 6 and 13
 */
export function parametricBootstrap(
  model: MixedModel,
  { replicates = 999, seed, onProgress }: BootstrapOptions,
): {
  fixed: BootstrapInterval[];
  random: (BootstrapInterval & { by: string })[];
  residualSd: BootstrapInterval;
  n: number;
} {
  const stream = random(seed);
  const draw = simulator(model, () => stream.normal());
  const read = (fit: Fit): number[] => [
    ...fixedEffects(fit).beta,
    ...deviations(fit).random.map(({ sd }) => sd),
    Math.sqrt(fit.variance),
  ];
  const estimates = read(model.fit);
  const drawn = estimates.map(() => [] as number[]);
  for (let done = 1; done <= replicates; done++) {
    for (const [i, value] of read(refit(model.fit, draw())).entries()) drawn[i].push(value);
    if (onProgress?.(done, replicates) === false) break;
  }
  const interval = (term: string, i: number): BootstrapInterval => {
    const sorted = Float64Array.from(drawn[i]).sort();
    const mean = sorted.reduce((sum, value) => sum + value, 0) / sorted.length;
    const squares = sorted.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    return {
      term,
      estimate: estimates[i],
      se: Math.sqrt(squares / (sorted.length - 1)),
      lower: quantileSorted(sorted, 0.025),
      upper: quantileSorted(sorted, 0.975),
    };
  };
  const p = model.fixed.length;
  return {
    fixed: model.fixed.map(({ term }, i) => interval(term, i)),
    random: model.random.map(({ by, term }, i) => ({ by, ...interval(term, p + i) })),
    residualSd: interval('', estimates.length - 1),
    n: drawn[0].length,
  };
}
