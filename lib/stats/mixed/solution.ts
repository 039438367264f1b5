import { forwardSolve, inverseFromFactor } from './cholesky.ts';
import { block, multiply, transpose } from './dense.ts';
import { lambdaOf } from './factor.ts';
import type { Fit, RowFit } from './fit.ts';

/** Fixed effects in the model's own columns (those kept), and their covariance. */
export function fixedEffects({ blocks: model, factored, variance }: Fit): {
  beta: Float64Array;
  covariance: Float64Array;
  /** Weights on the model's columns turned into weights in the orthonormal basis. */
  toBasis: (weights: Float64Array) => Float64Array;
} {
  const { p, crossed, r, leastSquares } = model;
  const wide = crossed + p + 1;
  const whole = backSolve(factored.k, crossed + p, wide);
  const gamma = leastSquares.map((value, j) => value + whole[crossed + j]);
  const inverse = upperInverse(r, p);
  const q = block(inverseFromFactor(factored.k, crossed + p, wide), crossed + p, crossed, crossed, p, p);
  const covariance = multiply(multiply(inverse, q, p, p, p), transpose(inverse, p, p), p, p, p);
  return {
    beta: multiply(inverse, gamma, p, p, 1),
    covariance: covariance.map((value) => value * variance),
    toBasis: (weights) => multiply(transpose(inverse, p, p), weights, p, p, 1),
  };
}

export interface Modes {
  readonly by: string;
  readonly levels: readonly string[];
  readonly terms: readonly string[];
  /** For each level, one mode and one conditional standard deviation a term. */
  readonly modes: readonly Float64Array[];
  readonly sds: readonly Float64Array[];
}

/**
 * Conditional modes of the random effects (what each group differs by, shrunk towards none) and their conditional
 * standard deviations, given the variances and the fixed effects, in the order of the model's random terms.
 * @source Bates et al. 2015, J Stat Softw 67(1), eq. 56 to 58
 */
export function conditionalModes({ design, blocks: model, theta, factored, variance }: Fit): Modes[] {
  const { p, crossed: c, clusters, size, zzStart, zuStart, local, rest } = model;
  const wide = c + p + 1;
  const whole = backSolve(factored.k, c + p, wide);
  const q = inverseFromFactor(factored.k, c, wide);
  const out: Modes[] = design.random.map(({ by, levels, coefficients }) => ({
    by,
    levels,
    terms: coefficients.map(({ name }) => name),
    modes: levels.map(() => new Float64Array(coefficients.length)),
    sds: levels.map(() => new Float64Array(coefficients.length)),
  }));
  const put = (index: number, level: number, place: number, u: Float64Array, spread: Float64Array, stride: number) => {
    const { coefficients } = design.random[index];
    const width = coefficients.length;
    const lambda = lambdaOf(model, theta, index, width);
    const inner = block(spread, stride, place, place, width, width);
    const covariance = multiply(
      multiply(lambda, inner, width, width, width),
      transpose(lambda, width, width),
      width,
      width,
      width,
    );
    const mode = multiply(lambda, u.subarray(place, place + width), width, width, 1);
    for (let a = 0; a < width; a++) {
      out[index].modes[level][a] = mode[a] / coefficients[a].scale;
      out[index].sds[level][a] = Math.sqrt(variance * covariance[a * (width + 1)]) / coefficients[a].scale;
    }
  };
  // Crossed coefficients unscaled once more, since the clusters met them unscaled.
  const unscaled = whole.slice(0, c + p);
  for (const { index, width, start, levels } of rest) {
    const lambda = lambdaOf(model, theta, index, width);
    for (let level = 0; level < levels; level++) {
      const at = start + level * width;
      put(index, level, at, whole, q, c);
      unscaled.set(multiply(lambda, whole.subarray(at, at + width), width, width, 1), at);
    }
  }
  const levelsOf = local.map(({ clusterOf }) => {
    const lists: number[][] = Array.from({ length: clusters }, () => []);
    for (const [level, h] of clusterOf.entries()) lists[h].push(level);
    return lists;
  });
  for (let h = 0; h < clusters; h++) {
    const d = size[h];
    const l = factored.l.subarray(zzStart[h], zzStart[h] + d * d);
    const t = factored.t.subarray(zuStart[h], zuStart[h] + d * wide);
    const right = new Float64Array(d);
    for (let i = 0; i < d; i++) {
      right[i] = t[i * wide + c + p];
      for (let j = 0; j < c + p; j++) right[i] -= t[i * wide + j] * unscaled[j];
    }
    const inverse = new Float64Array(d * d);
    for (let i = 0; i < d; i++) inverse[i * (d + 1)] = 1;
    forwardSolve(l, d, 0, inverse, d, 0);
    const back = transpose(inverse, d, d);
    const u = multiply(back, right, d, d, 1);
    let spread = multiply(back, inverse, d, d, d);
    if (c > 0) {
      const through = multiply(back, block(t, wide, 0, 0, d, c), d, d, c);
      for (const { index, width, start, levels } of rest) {
        const lambda = lambdaOf(model, theta, index, width);
        for (let level = 0; level < levels; level++) {
          const at = start + level * width;
          const scaled = multiply(block(through, c, 0, at, d, width), lambda, d, width, width);
          for (let i = 0; i < d; i++) for (let a = 0; a < width; a++) through[i * c + at + a] = scaled[i * width + a];
        }
      }
      const more = multiply(multiply(through, q, d, c, c), transpose(through, d, c), d, c, d);
      spread = spread.map((value, at) => value + more[at]);
    }
    for (const [i, { index, placeOf }] of local.entries()) {
      for (const level of levelsOf[i][h]) put(index, level, placeOf[level], u, spread, d);
    }
  }
  return out;
}

/** What the model expects of each row used, with (`fitted`) and without (`population`) the groups' own differences. */
export function fittedValues(fit: RowFit): { fitted: Float64Array; population: Float64Array; residuals: Float64Array } {
  const { design, blocks: model } = fit;
  const { beta } = fixedEffects(fit);
  const population = new Float64Array(design.n);
  for (const [j, index] of model.kept.entries()) {
    const { values } = design.terms[index];
    for (let i = 0; i < population.length; i++) population[i] += beta[j] * values[i];
  }
  const fitted = population.slice();
  for (const [k, { modes }] of conditionalModes(fit).entries()) {
    const { codes, coefficients } = design.random[k];
    for (let i = 0; i < fitted.length; i++) {
      const mode = modes[codes[i]];
      for (const [a, { values, scale }] of coefficients.entries())
        fitted[i] += mode[a] * (values ? values[i] * scale : 1);
    }
  }
  return { fitted, population, residuals: design.y.map((y, i) => y - fitted[i]) };
}

/** x of the leading rows of L'x = b, where b is the last row of the factor. */
function backSolve(k: Float64Array, n: number, wide: number): Float64Array {
  const x = Float64Array.from({ length: n }, (_, i) => k[n * wide + i]);
  for (let i = n - 1; i >= 0; i--) {
    x[i] /= k[i * (wide + 1)];
    for (let j = 0; j < i; j++) x[j] -= k[i * wide + j] * x[i];
  }
  return x;
}

function upperInverse(r: Float64Array, p: number): Float64Array {
  const lower = transpose(r, p, p);
  const inverse = new Float64Array(p * p);
  for (let i = 0; i < p; i++) inverse[i * (p + 1)] = 1;
  forwardSolve(lower, p, 0, inverse, p, 0);
  return transpose(inverse, p, p);
}
