import type { Blocks } from './blocks.ts';
import { cholesky } from './cholesky.ts';
import { fromEigen, multiply, pseudoInverse, symmetricEigen } from './dense.ts';
import { byCovariance } from './derivatives.ts';
import { factor } from './factor.ts';
import { parameterList, pieces } from './pieces.ts';

/**
 * The inverse of what the sums of squares of every random coefficient's own products with the least-squares residual, and of
 * that residual itself, are expected to be for each variance: of the design alone (MINQUE(0), Searle, Casella & McCulloch
 * 1992, section 11.3).
 */
export function momentEquations(model: Blocks): Float64Array {
  const m = model.parameters;
  const zero = new Float64Array(m);
  const { trace, traces } = byCovariance(model.p, pieces(model, zero, factor(model, zero)), 'REML');
  const expected = new Float64Array((m + 1) ** 2).fill(model.n - model.p);
  for (let i = 0; i < m; i++) {
    expected.set(traces.subarray(i * m, (i + 1) * m), i * (m + 1));
    expected[i * (m + 1) + m] = expected[m * (m + 1) + i] = trace[i];
  }
  return pseudoInverse(expected, m + 1);
}

/** Theta by the moments: exact where a design is balanced, near elsewhere, and never quite at zero. */
export function startingTheta(model: Blocks, moments: Float64Array): Float64Array {
  const list = parameterList(model);
  const m = list.length;
  const { crossed, p, zu, uu, local, rest, zuStart } = model;
  const wide = crossed + p + 1;
  const last = wide - 1;
  const squares = Float64Array.from(list, ({ local: at, rest: index, a, b }) => {
    const matrix = at >= 0 ? zu : uu;
    const rows =
      at >= 0
        ? local[at].clusterOf.map((h, level) => zuStart[h] / wide + local[at].placeOf[level])
        : Int32Array.from({ length: rest[index].levels }, (_, level) => rest[index].start + level * rest[index].width);
    const sum = rows.reduce(
      (total, row) => total + matrix[(row + a) * wide + last] * matrix[(row + b) * wide + last],
      0,
    );
    return a === b ? sum : 2 * sum;
  });
  const variances = multiply(moments, Float64Array.of(...squares, uu[wide * wide - 1]), m + 1, m + 1, 1);
  const theta = new Float64Array(m);
  for (const [index, start] of model.thetaStart.entries()) {
    const width = [...model.local, ...model.rest].find((term) => term.index === index)!.width;
    const psi = new Float64Array(width * width);
    for (let b = 0, i = start; b < width; b++) {
      for (let a = b; a < width; a++, i++) psi[a * width + b] = psi[b * width + a] = variances[i] / variances[m];
    }
    const { values, vectors } = symmetricEigen(psi, width);
    const definite = fromEigen(values, vectors, (value) => Math.max(value, 0.01));
    cholesky(definite, width);
    for (let b = 0, i = start; b < width; b++) for (let a = b; a < width; a++, i++) theta[i] = definite[a * width + b];
  }
  return theta.every(Number.isFinite) ? theta : theta.map((_, i) => (list[i].a === list[i].b ? 1 : 0));
}
