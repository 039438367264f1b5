import { type Correlation, type Deviation, deviations } from './deviations.ts';
import type { Fit } from './fit.ts';
import { type Estimate, satterthwaite, withDegrees } from './inference.ts';
import { fixedEffects } from './solution.ts';

/** A fitted mixed model, whatever it was fitted to. */
export interface FittedModel {
  readonly method: 'REML' | 'ML';
  /** With Satterthwaite's degrees of freedom. */
  readonly fixed: readonly (Estimate & { readonly term: string })[];
  readonly random: readonly Deviation[];
  readonly correlations: readonly Correlation[];
  readonly residualSd: number;
  /** -2 log likelihood at its least: restricted under REML, the deviance under ML. */
  readonly criterion: number;
  readonly logLik: number;
  readonly aic: number;
  readonly bic: number;
  /** Fixed effects, variances, covariances and the residual variance. */
  readonly parameters: number;
  /** A variance, or a combination of the variances of one group, is zero. An answer, not a failure. */
  readonly singular: boolean;
  /** Rows used, rows left out for a missing cell, and levels of each grouping factor. */
  readonly n: number;
  readonly missing: number;
  readonly groups: readonly { readonly by: string; readonly levels: number }[];
  /** Terms that are combinations of those before them, and so were left out. */
  readonly dropped: readonly string[];
  /** Covariance of the fixed effects, row after row. */
  readonly covariance: Float64Array;
  readonly converged: boolean;
  readonly fit: Fit;
}

/** Linear combinations of a fit's fixed effects, by their weights. */
export function estimator(fitted: Fit): (weights: Float64Array) => Estimate {
  const { beta, covariance, toBasis } = fixedEffects(fitted);
  const degrees = satterthwaite(fitted);
  const p = beta.length;
  return (weights) => {
    let estimate = 0;
    let variance = 0;
    for (let i = 0; i < p; i++) {
      estimate += weights[i] * beta[i];
      for (let j = 0; j < p; j++) variance += weights[i] * covariance[i * p + j] * weights[j];
    }
    return withDegrees(estimate, Math.sqrt(variance), degrees(toBasis(weights)));
  };
}

/** A fit in the words of its data. */
export function describe<F extends Fit>(fitted: F): FittedModel & { readonly fit: F } {
  const { design, blocks, method, theta, variance, criterion, converged } = fitted;
  const estimate = estimator(fitted);
  const names = blocks.kept.map((index) => design.terms[index].name);
  const { random, correlations, singular } = deviations(fitted);
  const parameters = names.length + theta.length + 1;
  return {
    method,
    fixed: names.map((term, i) => ({ term, ...estimate(Float64Array.from(names, (_, j) => (i === j ? 1 : 0))) })),
    random,
    correlations,
    residualSd: Math.sqrt(variance),
    criterion,
    logLik: -criterion / 2,
    aic: criterion + 2 * parameters,
    bic: criterion + Math.log(design.n) * parameters,
    parameters,
    singular,
    n: design.n,
    missing: design.missing,
    groups: design.random.map(({ by, levels }) => ({ by, levels: levels.length })),
    dropped: blocks.dropped.map((index) => design.terms[index].name),
    covariance: fixedEffects(fitted).covariance,
    converged,
    fit: fitted,
  };
}
