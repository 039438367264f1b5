import type { Data } from './design.ts';
import { type MixedModelSpec, mixedModel } from './mixedModel.ts';

/** The fixed effects of a model without the rows of one group. */
export interface LeftOut {
  readonly group: string;
  /** How many rows the model then has. */
  readonly n: number;
  /** As far as the model still has the term. */
  readonly fixed: readonly { readonly term: string; readonly estimate: number; readonly se: number }[];
}

/**
 * The model fitted again and again, each time without one group: how much does any one of them matter?
 * @param columns as for `mixedModel`
 * @param by the column whose values are left out in turn
 * @param onProgress called after each; `false` stops, and what was done so far is returned
 * @returns one entry a group with rows in the model, in the order in which they appear; a group without which too few
 *   rows are left is passed over
 * @source Cook & Weisberg 1982, Residuals and Influence in Regression, ch. 3
 */
export function leaveOneOut(
  columns: Readonly<Record<string, Data>>,
  spec: MixedModelSpec,
  by: string,
  onProgress?: (done: number, total: number) => boolean | undefined,
): LeftOut[] {
  if (!Object.hasOwn(columns, by))
    throw new TypeError(`There is no column ${by} to leave out by; there are ${Object.keys(columns).join(', ')}`);
  const { rows, terms } = mixedModel(columns, spec).fit.design;
  const groups = new Map<number | string, number>();
  for (const row of rows) groups.set(columns[by][row], (groups.get(columns[by][row]) ?? 0) + 1);
  const response = columns[spec.response] as Float64Array;
  const found: LeftOut[] = [];
  let done = 0;
  for (const [group, count] of groups) {
    if (rows.length - count > terms.length) {
      const without = response.map((value, row) => (columns[by][row] === group ? NaN : value));
      const { n, fixed } = mixedModel({ ...columns, [spec.response]: without }, spec);
      found.push({ group: String(group), n, fixed: fixed.map(({ term, estimate, se }) => ({ term, estimate, se })) });
    }
    if (onProgress?.(++done, groups.size) === false) break;
  }
  return found;
}
