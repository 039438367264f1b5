import type { Data, ModelSpec } from './design.ts';
import { fitRows, type RowFit, refit } from './fit.ts';
import { describe, estimator, type FittedModel } from './fittedModel.ts';
import { type Estimate, kenwardRoger, withDegrees } from './inference.ts';
import { fixedEffects } from './solution.ts';

export interface MixedModelSpec extends ModelSpec {
  /** Restricted maximum likelihood where left out. */
  readonly method?: 'REML' | 'ML';
}

/** A mixed model that was fitted to rows, which are still there to be asked about. */
export interface MixedModel extends FittedModel {
  readonly fit: RowFit;
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
export function contrast({ fit: fitted }: FittedModel, weights: readonly number[] | Float64Array): Estimate {
  return estimator(fitted)(Float64Array.from(weights));
}

/** The fixed effects with Kenward and Roger's standard errors and degrees of freedom. REML only. */
export function kenwardRogerEffects({ fit: fitted, fixed }: FittedModel): (Estimate & { term: string })[] {
  if (fitted.method !== 'REML') throw new TypeError('Kenward and Roger adjust a REML fit; fit with method REML');
  const { variance, df } = kenwardRoger(fitted);
  const { toBasis } = fixedEffects(fitted);
  return fixed.map(({ term, estimate }, i) => {
    const basis = toBasis(Float64Array.from(fixed, (_, j) => (i === j ? 1 : 0)));
    return { term, ...withDegrees(estimate, Math.sqrt(variance(basis)), df(basis)) };
  });
}
