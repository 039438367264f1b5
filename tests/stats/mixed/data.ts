import type { Data, RandomSpec } from '../../../lib/stats/mixed/design.ts';
import { random } from '../../../lib/stats/random.ts';

/** Rows of an invented yard: horses, limbs within them, visits across limbs, farriers across horses, some feet more often seen. */
export function yard(seed: number, { horses = 12, visits = 6, sds = [1, 0.7, 0.5, 0.6] } = {}) {
  const { normal, uniform, below } = random(seed);
  const rows = { horse: [] as string[], limb: [] as string[], visit: [] as string[], farrier: [] as string[] };
  const [x, y, group]: number[][] = [[], [], []];
  const farriers = Array.from({ length: 5 }, () => sds[3] * normal());
  for (let h = 0; h < horses; h++) {
    const own = sds[0] * normal();
    const feet = Array.from({ length: 4 }, () => sds[1] * normal());
    const seen = 2 + below(visits - 1);
    const usual = normal();
    for (let v = 0; v < seen; v++) {
      const day = sds[2] * normal();
      const at = usual + normal();
      const farrier = below(5);
      for (let limb = 0; limb < 4; limb++) {
        if (uniform() < 0.15) continue;
        rows.horse.push(`h${h}`);
        rows.limb.push(['LF', 'LH', 'RF', 'RH'][limb]);
        rows.visit.push(`v${v}`);
        rows.farrier.push(`f${farrier}`);
        x.push(at);
        group.push(h);
        y.push(1 + 0.4 * at + own + feet[limb] + day + farriers[farrier] + normal());
      }
    }
  }
  return { ...rows, x: Float64Array.from(x), y: Float64Array.from(y) } satisfies Record<string, Data>;
}

/** Everything that a dense reading of the model needs: slow, without a line of the engine's code. */
export interface Dense {
  readonly x: number[][];
  readonly y: number[];
  /** One indicator a random coefficient: rows by levels, and which parameter scales it. */
  readonly terms: { z: number[][]; slopes?: number[] }[];
}

/**
 * The restricted criterion from the covariance of all rows written out, as the textbook has it: −2 log likelihood of
 * n − p contrasts, the residual variance profiled out. Independent intercepts and slopes only.
 */
export function denseCriterion(
  data: Record<string, Data>,
  columns: readonly Float64Array[],
  random: readonly RandomSpec[],
  relative: readonly number[],
  method: 'REML' | 'ML' = 'REML',
): { criterion: number; beta: number[]; sigma2: number; inverse: number[][] } {
  const y = Array.from(data.y as Float64Array);
  const n = y.length;
  const p = columns.length;
  const v = Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => (i === j ? 1 : 0)));
  let k = 0;
  for (const { by, slopes = [] } of random) {
    const key = (i: number) => by.map((name) => String(data[name][i])).join('\u0000');
    for (const slope of [undefined, ...slopes]) {
      const share = relative[k++] ** 2;
      const at = (i: number) => (slope === undefined ? 1 : (data[slope][i] as number));
      for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) if (key(i) === key(j)) v[i][j] += share * at(i) * at(j);
    }
  }
  const rhs = Array.from({ length: n }, (_, i) => [...columns.map((column) => column[i]), y[i]]);
  const { solved, logDet } = solve(v, rhs);
  const cross = (a: number, b: number) => rhs.reduce((sum, row, i) => sum + row[a] * solved[i][b], 0);
  const xx = Array.from({ length: p }, (_, a) => Array.from({ length: p }, (_, b) => cross(a, b)));
  const xy = Array.from({ length: p }, (_, a) => [cross(a, p)]);
  const { solved: beta, logDet: logDetX } = solve(
    xx.map((row) => [...row]),
    xy,
  );
  const squares = cross(p, p) - xy.reduce((sum, [value], a) => sum + value * beta[a][0], 0);
  const degrees = method === 'REML' ? n - p : n;
  const sigma2 = squares / degrees;
  const criterion = degrees * (Math.log(2 * Math.PI * sigma2) + 1) + logDet + (method === 'REML' ? logDetX : 0);
  const unit = xx.map((_, i) => xx.map((_, j) => (i === j ? 1 : 0)));
  return {
    criterion,
    beta: beta.map(([value]) => value),
    sigma2,
    inverse: solve(
      xx.map((row) => [...row]),
      unit,
    ).solved,
  };
}

/** Gauss's elimination with the largest pivot; the matrix is used up. */
function solve(matrix: number[][], right: readonly (readonly number[])[]) {
  const n = matrix.length;
  const solved = right.map((row) => [...row]);
  let logDet = 0;
  for (let c = 0; c < n; c++) {
    let best = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(matrix[r][c]) > Math.abs(matrix[best][c])) best = r;
    [matrix[c], matrix[best]] = [matrix[best], matrix[c]];
    [solved[c], solved[best]] = [solved[best], solved[c]];
    logDet += Math.log(Math.abs(matrix[c][c]));
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const factor = matrix[r][c] / matrix[c][c];
      if (factor === 0) continue;
      for (let k = c; k < n; k++) matrix[r][k] -= factor * matrix[c][k];
      for (let k = 0; k < solved[r].length; k++) solved[r][k] -= factor * solved[c][k];
    }
  }
  return { solved: solved.map((row, i) => row.map((value) => value / matrix[i][i])), logDet };
}
