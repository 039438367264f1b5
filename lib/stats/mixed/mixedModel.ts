import type { Data, ModelSpec } from './design.ts';
import { type Correlation, type Deviation, deviations } from './deviations.ts';
import { type Fit, fitRows, refit } from './fit.ts';
import { type Estimate, kenwardRoger, satterthwaite, withDegrees } from './inference.ts';
import { fixedEffects } from './solution.ts';

export interface MixedModelSpec extends ModelSpec {
  /** Restricted maximum likelihood where left out. */
  readonly method?: 'REML' | 'ML';
}

export interface MixedModel {
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

/**
 * A linear mixed model: fixed effects, and intercepts and slopes that vary between groups, nested or crossed.
 *
 * @param columns numbers (`NaN` for missing) and categories (`''` for missing), all of one length; rows with a missing
 *   cell in a column that the model uses are left out and counted in `missing`
 * @param spec `fixed` lists terms such as `'within'`, `'limb'`, `'time:diet'`; the intercept is always in; categories
 *   become treatment contrasts against their first level in code-point order, named `limbLH`. `random` lists grouping
 *   factors, `by: ['horse', 'limb']` for limb within horse, with `slopes` that vary between groups
 * @returns estimates with Satterthwaite degrees of freedom, standard deviations of the random effects in the units of the
 *   response (over the unit of the slope's column), and the criterion; `singular` where a variance is zero
 * @throws TypeError for unknown columns, text where numbers are needed, or fewer rows than terms
 * @source Bates, Mächler, Bolker & Walker 2015, J Stat Softw 67(1); derivatives: Searle, Casella & McCulloch 1992, ch. 6
 * @example mixedModel(sleepstudy, { response: 'Reaction', fixed: ['Days'], random: [{ by: ['Subject'] }] }).fixed[1].estimate // 10.467…
 */
export function mixedModel(
  columns: Readonly<Record<string, Data>>,
  { method = 'REML', ...spec }: MixedModelSpec,
): MixedModel {
  return describe(fitRows(columns, spec, method));
}

/** The same model of another response over the rows that were used: `response` has `n` values, none missing. */
export function refitModel({ fit: first }: MixedModel, response: Float64Array, method = first.method): MixedModel {
  return describe(refit(first, response, method));
}

/** A linear combination of fixed effects: `weights` one a term, in the order of `fixed`. */
export function contrast({ fit: fitted }: MixedModel, weights: readonly number[] | Float64Array): Estimate {
  return estimator(fitted)(Float64Array.from(weights));
}

/** The fixed effects with Kenward and Roger's standard errors and degrees of freedom. REML only. */
export function kenwardRogerEffects({ fit: fitted, fixed }: MixedModel): (Estimate & { term: string })[] {
  if (fitted.method !== 'REML') throw new TypeError('Kenward and Roger adjust a REML fit; fit with method REML');
  const { variance, df } = kenwardRoger(fitted);
  const { toBasis } = fixedEffects(fitted);
  return fixed.map(({ term, estimate }, i) => {
    const basis = toBasis(Float64Array.from(fixed, (_, j) => (i === j ? 1 : 0)));
    return { term, ...withDegrees(estimate, Math.sqrt(variance(basis)), df(basis)) };
  });
}

function estimator(fitted: Fit): (weights: Float64Array) => Estimate {
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

function describe(fitted: Fit): MixedModel {
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
