import { fDistribution } from './distributions/fDistribution.ts';
import { isMissing, type Numbers } from './numbers.ts';

/** One form of the intraclass correlation, with the F that it is zero. */
export interface IccForm {
  readonly value: number;
  readonly lower: number;
  readonly upper: number;
  readonly F: number;
  readonly df1: number;
  readonly df2: number;
  readonly p: number;
}

export interface Icc {
  /** How many subjects and how many readings each. */
  readonly n: number;
  readonly k: number;
  /** Subjects left out because a reading is missing. */
  readonly missing: number;
  readonly level: number;
  /** Each subject read by other observers: one reading, and the mean of k. */
  readonly ICC1: IccForm;
  readonly ICC1k: IccForm;
  /** The same observers, drawn from many: absolute agreement. */
  readonly ICC2: IccForm;
  readonly ICC2k: IccForm;
  /** The same observers, these and no others: consistency. */
  readonly ICC3: IccForm;
  readonly ICC3k: IccForm;
  readonly meanSquares: {
    readonly subjects: number;
    readonly observers: number;
    readonly residual: number;
    readonly within: number;
  };
  /** The standard error of one reading, with and without the observers' own differences, in the unit of the readings. */
  readonly semAgreement: number;
  readonly semConsistency: number;
}

/**
 * The six intraclass correlations.
 * @param matrix one row a subject, one column an observer or repeat, all in one unit; a row with anything missing is
 *   left out and counted
 * @param level the level of the limits, 0.95 where not given
 * @returns each form for one reading from −1/(k − 1) to 1, those for a mean from −∞; NaN of fewer than two subjects or two columns, or where nothing varies
 * @throws TypeError where rows differ in length
 * @source Shrout & Fleiss 1979, Psychological Bulletin 86:420–428; limits of the second form as in McGraw & Wong 1996,
 *   Psychological Methods 1:30–46
 * @example icc([[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]]).ICC2.value // 0.2897…
 */
export function icc(matrix: readonly Numbers[], level = 0.95): Icc {
  const k = matrix.length === 0 ? 0 : matrix[0].length;
  for (const row of matrix)
    if (row.length !== k) throw new TypeError(`Rows of ${k} readings were expected, found one of ${row.length}`);
  const rows = matrix.filter((row) => !Array.from(row).some(isMissing));
  const n = rows.length;
  const { subjects, observers, residual, within } = meanSquares(rows, n, k);

  const alpha = 1 - level;
  const dfSubjects = n - 1;
  const dfResidual = (n - 1) * (k - 1);
  const dfWithin = n * (k - 1);
  const single = (F: number, df2: number) => {
    const form = (f: number) => (f === Infinity ? 1 : (f - 1) / (f + k - 1));
    const mean = (f: number) => 1 - 1 / f;
    const low = F / fDistribution.quantile(1 - alpha / 2, dfSubjects, df2);
    const high = F * fDistribution.quantile(1 - alpha / 2, df2, dfSubjects);
    const test = { F, df1: dfSubjects, df2, p: fDistribution.upper(F, dfSubjects, df2) };
    return {
      one: { value: form(F), lower: form(low), upper: form(high), ...test },
      many: { value: mean(F), lower: mean(low), upper: mean(high), ...test },
    };
  };
  const oneWay = single(subjects / within, dfWithin);
  const consistency = single(subjects / residual, dfResidual);

  const ICC2 = (subjects - residual) / (subjects + (k - 1) * residual + (k * (observers - residual)) / n);
  // Satterthwaite's degrees of freedom of what the subjects are compared with.
  const a = k * ICC2 * observers;
  const b = (n * (1 + (k - 1) * ICC2) - k * ICC2) * residual;
  const df = a + b === 0 ? dfResidual : (a + b) ** 2 / (a ** 2 / (k - 1) + b ** 2 / dfResidual);
  const rest = k * observers + (k * n - k - n) * residual;
  const lowF = fDistribution.quantile(1 - alpha / 2, dfSubjects, df);
  const highF = fDistribution.quantile(1 - alpha / 2, df, dfSubjects);
  const test = { F: consistency.one.F, df1: dfSubjects, df2: dfResidual, p: consistency.one.p };
  const agreement: IccForm = {
    value: ICC2,
    lower: (n * (subjects - lowF * residual)) / (lowF * rest + n * subjects),
    upper: (n * (highF * subjects - residual)) / (rest + n * highF * subjects),
    ...test,
  };
  const ofMean = (value: number) => (value * k) / (1 + value * (k - 1));
  return {
    n,
    k,
    missing: matrix.length - n,
    level,
    ICC1: oneWay.one,
    ICC1k: oneWay.many,
    ICC2: agreement,
    ICC2k: {
      value: (subjects - residual) / (subjects + (observers - residual) / n),
      lower: ofMean(agreement.lower),
      upper: ofMean(agreement.upper),
      ...test,
    },
    ICC3: consistency.one,
    ICC3k: consistency.many,
    meanSquares: { subjects, observers, residual, within },
    semAgreement: Math.sqrt(Math.max(0, (observers - residual) / n) + residual),
    semConsistency: Math.sqrt(residual),
  };
}

/** The two-way analysis of variance of one reading a cell. */
function meanSquares(rows: readonly Numbers[], n: number, k: number): Icc['meanSquares'] {
  const mean = (count: number, at: (i: number) => number) => {
    let sum = 0;
    for (let i = 0; i < count; i++) sum += at(i);
    return sum / count;
  };
  const origin = n > 0 ? rows[0][0] : NaN;
  const cell = (i: number, j: number) => rows[i][j] - origin;
  const ofRow = Array.from(rows, (_, i) => mean(k, (j) => cell(i, j)));
  const ofColumn = Array.from({ length: k }, (_, j) => mean(n, (i) => cell(i, j)));
  const centre = mean(n, (i) => ofRow[i]);
  let [subjects, observers, residual] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    subjects += k * (ofRow[i] - centre) ** 2;
    for (let j = 0; j < k; j++) residual += (cell(i, j) - ofRow[i] - ofColumn[j] + centre) ** 2;
  }
  for (let j = 0; j < k; j++) observers += n * (ofColumn[j] - centre) ** 2;
  return {
    subjects: subjects / (n - 1),
    observers: observers / (k - 1),
    residual: residual / ((n - 1) * (k - 1)),
    within: (observers + residual) / (n * (k - 1)),
  };
}
