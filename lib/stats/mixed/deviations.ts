import { lambdaOf } from './factor.ts';
import type { Fit } from './fit.ts';

/** How far the coefficients of one random term differ between groups. */
export interface Deviation {
  readonly by: string;
  readonly term: string;
  readonly sd: number;
  readonly variance: number;
}

export interface Correlation {
  readonly by: string;
  readonly terms: readonly [string, string];
  readonly correlation: number;
}

/** Deviations and correlations of the random effects in the units of the data; `singular` where one is zero. */
export function deviations({ design, blocks, theta, variance }: Fit): {
  random: Deviation[];
  correlations: Correlation[];
  singular: boolean;
} {
  const random: Deviation[] = [];
  const correlations: Correlation[] = [];
  let singular = false;
  for (const [index, { by, coefficients }] of design.random.entries()) {
    const width = coefficients.length;
    const lambda = lambdaOf(blocks, theta, index, width);
    const sds = coefficients.map(({ scale }, a) => {
      let sum = 0;
      for (let b = 0; b <= a; b++) sum += lambda[a * width + b] ** 2;
      return Math.sqrt(sum * variance) / scale;
    });
    for (const [a, { name, scale }] of coefficients.entries()) {
      if (lambda[a * (width + 1)] < 1e-6) singular = true;
      random.push({ by, term: name, sd: sds[a], variance: sds[a] ** 2 });
      for (let b = 0; b < a; b++) {
        let covariance = 0;
        for (let k = 0; k <= b; k++) covariance += lambda[a * width + k] * lambda[b * width + k];
        const correlation = (covariance * variance) / (scale * coefficients[b].scale * sds[a] * sds[b]);
        correlations.push({ by, terms: [coefficients[b].name, name], correlation });
      }
    }
  }
  return { random, correlations, singular };
}
