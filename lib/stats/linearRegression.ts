import { fDistribution } from './distributions/fDistribution.ts';
import { studentT } from './distributions/studentT.ts';
import { householder } from './householder.ts';
import { mean } from './mean.ts';
import { type Numbers, presentRows } from './numbers.ts';

export interface Coefficient {
  readonly term: string;
  readonly estimate: number;
  readonly se: number;
  readonly t: number;
  /** Two-sided, that the coefficient is zero. */
  readonly p: number;
  readonly lower: number;
  readonly upper: number;
}

export interface LinearRegression {
  readonly n: number;
  readonly missing: number;
  /** One a term, in order; all NaN for a term that was dropped. */
  readonly coefficients: readonly Coefficient[];
  /** Terms that depend on the terms before them. */
  readonly dropped: readonly string[];
  readonly residualSd: number;
  /** About the mean; about zero where there is no intercept. */
  readonly rSquared: number;
  readonly regression: { readonly df: number; readonly ss: number };
  readonly residual: { readonly df: number; readonly ss: number };
  /** Whether all terms but the intercept are zero. */
  readonly F: number;
  readonly p: number;
  /** For the rows where nothing is missing, in order. */
  readonly fitted: Float64Array;
  readonly residuals: Float64Array;
}

export interface LinearRegressionOptions {
  /** Whether a constant is in, as the first term; true where not given. */
  readonly intercept?: boolean;
  /** What the columns of x are called; `x`, or `x1`, `x2`, … where not given. */
  readonly names?: readonly string[];
  /** The level of the intervals, 0.95 where not given. */
  readonly level?: number;
}

/**
 * Linear regression by least squares, by an orthogonal decomposition with one round of refinement.
 * @param x one column of numbers or several of one length, each in any unit
 * @param y the outcome, as many numbers; a row with anything missing is left out and counted
 * @returns the coefficients, each in units of y a unit of its column, with standard errors and intervals
 * @source Golub & Van Loan 2013, Matrix Computations, 4th edition, 5.3.8; Draper & Smith 1998, Applied Regression
 *   Analysis, 3rd edition
 * @example linearRegression([1, 2, 3, 4], [3, 5, 7, 9]).coefficients[1].estimate // 2
 */
export function linearRegression(
  x: Numbers | readonly Numbers[],
  y: Numbers,
  { intercept = true, names, level = 0.95 }: LinearRegressionOptions = {},
): LinearRegression {
  const given = severalColumns(x);
  const { columns, missing } = presentRows([...given, y]);
  const outcome = columns.pop() as Float64Array;
  const n = outcome.length;
  if (intercept) columns.unshift(new Float64Array(n).fill(1));
  const terms = names ? [...names] : given.map((_, i) => (given.length === 1 ? 'x' : `x${i + 1}`));
  if (intercept) terms.unshift('intercept');

  const decomposition = householder(columns, 1e-12);
  const { kept, dropped } = decomposition;
  const used = kept.map((c) => columns[c]);
  const estimates = decomposition.solve(outcome);
  // The residuals are known to more digits than the coefficients, so solving for them mends the last digits.
  decomposition.solve(remainder(outcome, used, estimates)).forEach((change, c) => {
    estimates[c] += change;
  });
  const residuals = remainder(outcome, used, estimates);

  const residual = { df: n - kept.length, ss: squares(residuals) };
  const centre = intercept ? mean(outcome) : 0;
  const total = squares(outcome.map((value) => value - centre));
  const regression = { df: kept.length - (intercept ? 1 : 0), ss: total - residual.ss };
  const residualVariance = residual.df > 0 ? residual.ss / residual.df : NaN;
  const F = regression.df > 0 ? regression.ss / regression.df / residualVariance : NaN;

  const inverse = decomposition.inverseCrossProduct();
  const reach = studentT.quantile((1 + level) / 2, residual.df);
  const coefficients = terms.map((term, c): Coefficient => {
    const place = kept.indexOf(c);
    const estimate = place < 0 ? NaN : estimates[place];
    const se = place < 0 ? NaN : Math.sqrt(residualVariance * inverse[place][place]);
    const t = estimate / se;
    const p = studentT.twoSided(t, residual.df);
    return { term, estimate, se, t, p, lower: estimate - reach * se, upper: estimate + reach * se };
  });
  return {
    n,
    missing,
    coefficients,
    dropped: dropped.map((c) => terms[c]),
    residualSd: Math.sqrt(residualVariance),
    rSquared: 1 - residual.ss / total,
    regression,
    residual,
    F,
    p: fDistribution.upper(F, regression.df, residual.df),
    fitted: outcome.map((value, row) => value - residuals[row]),
    residuals,
  };
}

function severalColumns(x: Numbers | readonly Numbers[]): readonly Numbers[] {
  return x.length > 0 && typeof x[0] === 'object' && x[0] !== null ? (x as readonly Numbers[]) : [x as Numbers];
}

/** y − Xb, every product and sum with the digits that double precision would cut off (Dekker 1971). */
function remainder(y: Float64Array, columns: readonly Float64Array[], b: Float64Array): Float64Array {
  return y.map((value, row) => {
    let total = value;
    let lost = 0;
    columns.forEach((column, c) => {
      const product = -column[row] * b[c];
      const [ah, al] = halves(-column[row]);
      const [bh, bl] = halves(b[c]);
      const next = total + product;
      const added = next - total;
      lost += total - (next - added) + (product - added);
      lost += al * bl - (product - ah * bh - al * bh - ah * bl);
      total = next;
    });
    return total + lost;
  });
}

/** A number as the sum of two with half the digits each, whose products are exact. */
function halves(value: number): [number, number] {
  const shifted = value * (2 ** 27 + 1);
  const high = shifted - (shifted - value);
  return [high, value - high];
}

function squares(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}
