import type { Table } from '../table.ts';
import { roots } from './carriers.ts';
import { Covariances } from './covariances.ts';
import { LinearForms, type ValuedForm } from './linearForms.ts';
import type { Node } from './syntax.ts';

/** What is left of a variance after cancelling, as a share of what went in, below which it is rounding: taken as 0. */
const ROUNDING = 1e-12;

/**
 * The standard error of a formula's values, by first-order propagation from the standard errors of the measured cells.
 * Cells err independently of each other; a cell that is used twice counts once, be it by name, through a relation, or
 * as one of the group that a summary is of. Constants, dates, categories, tests, comparisons and counts have no error;
 * of a choice only the branch taken counts.
 * @param node a resolved tree over measured columns (see `inline`)
 * @returns one standard error a row, in the unit of the node's values; 0 for what is exact. `NaN` where the value is
 *   missing, where the error of a cell it rests on is, or where the formula has no slope there (the root of 0).
 *   `undefined` where it rests on a column that has no errors at all.
 * @source JCGM 100:2008 (GUM), 5.1.2 equation (10), and 5.2.2 equation (13) for what shares cells
 * @example errorOf(parse('a - b'), table) // 5 where the errors are 3 and 4
 */
export function errorOf(node: Node, table: Table): Float64Array | undefined {
  const columns = roots(node, table);
  const errors = columns.map((name) => {
    const column = table.column(name);
    return column.kind === 'text' ? undefined : column.error;
  });
  if (!errors.every((error) => error !== undefined)) return undefined;
  const form = new LinearForms(table, columns).of(node);
  const variances = errors.map((error) => error.map((one) => one * one));
  const plain = form.groups.length === 0 && form.cells.every(({ rows }) => rows === undefined);
  const variance = plain ? ofOwnCells(form, variances) : ofAll(form, variances);
  return variance.map((square) => (square < Number.POSITIVE_INFINITY ? Math.sqrt(square) : Number.NaN));
}

/** Each row of its own cells only, and each column once. */
function ofOwnCells({ values, cells }: ValuedForm, variances: readonly Float64Array[]): Float64Array {
  // Missing where the value is, else 0.
  const sum = values.map((value) => value - value);
  for (const { column, slopes } of cells) {
    const variance = variances[column];
    for (let row = 0; row < sum.length; row++) {
      const slope = slopes[row];
      if (slope !== 0) sum[row] += slope * slope * variance[row];
    }
  }
  return sum;
}

function ofAll({ values, cells, groups }: ValuedForm, variances: readonly Float64Array[]): Float64Array {
  const covariances = new Covariances(variances);
  const between = groups.map(({ forms }, i) =>
    groups.slice(0, i + 1).map((other) => covariances.of(forms, other.forms)),
  );
  const found = new Float64Array(cells.length);
  const weights = new Float64Array(cells.length);
  return values.map((value, row) => {
    // Where there is a value, there is a row behind every slope.
    if (Number.isNaN(value)) return value;
    let count = 0;
    for (const { column, rows: partners, slopes } of cells) {
      if (slopes[row] === 0) continue;
      const cell = (partners === undefined ? row : partners[row]) * variances.length + column;
      let at = 0;
      while (at < count && found[at] !== cell) at++;
      if (at === count) weights[count++] = 0;
      found[at] = cell;
      weights[at] += slopes[row];
    }

    // Variances of the parts, then twice the covariances of each two.
    let apart = 0;
    let together = 0;
    for (let j = 0; j < count; j++) if (weights[j] !== 0) apart += weights[j] ** 2 * covariances.ofCell(found[j]);
    for (let i = 0; i < groups.length; i++) {
      const { forms, codes, slopes } = groups[i];
      const slope = slopes[row];
      if (slope === 0) continue;
      apart += slope ** 2 * between[i][i](codes[row], codes[row]);
      for (let j = 0; j < count; j++)
        if (weights[j] !== 0) together += slope * weights[j] * covariances.withCell(forms, codes[row], found[j]);
      for (let j = 0; j < i; j++) {
        const other = groups[j];
        if (other.slopes[row] !== 0)
          together += slope * other.slopes[row] * between[i][j](codes[row], other.codes[row]);
      }
    }
    const variance = apart + 2 * together;
    return variance <= ROUNDING * apart ? 0 : variance;
  });
}
