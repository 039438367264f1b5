import { type Axes, type Ellipse, ellipseOf } from './ellipse.ts';
import { type FitFailure, tooFew } from './fitFailure.ts';
import { about, centreOf, type Point, type Points, presentPoints } from './points.ts';

/** Three numbers. */
type Vector = readonly number[];

/**
 * The ellipse nearest to a set of points, by direct least squares on the equation of the conic.
 * @param points five or more, not all on a line, in any one length unit; a missing one is left out and counted
 * @returns centre and semi-axes in the unit of the points and the longer axis's turn, or a `FitFailure` with the reason
 * @source Halir & Flusser 1998, WSCG, pp. 125–132, on points centred and scaled
 * @example fitEllipse([5, 0, 0, 3, -5, 0, 0, -3, 3, 2.4]).semiMajor // 5
 */
export function fitEllipse(points: Points): Ellipse | FitFailure {
  const { points: kept, missing } = presentPoints(points);
  const n = kept.length;
  if (n < 5) return tooFew(n, 5, missing);
  const middle = centreOf(kept);
  const away = about(middle, kept);
  const scale = Math.sqrt(away.reduce((sum, [x, y]) => sum + x * x + y * y, 0) / n);
  const conic = directConic(away.map(([x, y]) => [x / scale, y / scale]));
  const axes = conic && axesOf(conic);
  if (!axes)
    return { failure: 'The points settle no ellipse; place some further round the outline, off one line', n, missing };
  const placed = {
    x: middle[0] + scale * axes.x,
    y: middle[1] + scale * axes.y,
    a: scale * axes.a,
    b: scale * axes.b,
    turn: axes.turn,
  };
  return ellipseOf(placed, kept, missing);
}

interface Conic {
  /** The coefficients of x², xy and y², then of x, y and 1. */
  readonly quadratic: Vector;
  readonly linear: Vector;
}

/** The conic with 4ac − b² = 1 and the least sum of squares, for centred points. The names are those of the paper. */
function directConic(points: readonly Point[]): Conic | undefined {
  const n = points.length;
  let [xx, xy, yy] = [0, 0, 0];
  const S1 = [0, 1, 2].map(() => [0, 0, 0]);
  const S2 = [0, 1, 2].map(() => [0, 0, 0]);
  for (const [x, y] of points) {
    xx += x * x;
    xy += x * y;
    yy += y * y;
    const square = [x * x, x * y, y * y];
    const plain = [x, y, 1];
    for (let r = 0; r < 3; r++)
      for (let c = 0; c < 3; c++) {
        S1[r][c] += square[r] * square[c];
        S2[r][c] += square[r] * plain[c];
      }
  }
  const determinant = xx * yy - xy * xy;
  if (!(determinant > 1e-14 * xx * yy)) return undefined;
  // T = −S3⁻¹ S2ᵀ; the points are centred, so S3 is two by two and n.
  const T = S2.map(
    ([x, y, one]): Vector => [(xy * y - yy * x) / determinant, (xy * x - xx * y) / determinant, -one / n],
  );
  const M = S1.map((row, r) => row.map((value, c) => value + dot(S2[r], T[c])));
  const reduced = [M[2].map((v) => v / 2), M[1].map((v) => -v), M[0].map((v) => v / 2)];
  const quadratic = eigenvector(reduced, largestEigenvalue(reduced));
  if (!quadratic) return undefined;
  const linear = [0, 1, 2].map((c) => T.reduce((sum, row, r) => sum + row[c] * quadratic[r], 0));
  return { quadratic, linear };
}

/** The only eigenvalue that is not negative, by Newton steps on the characteristic polynomial from above. */
function largestEigenvalue([a, b, c]: readonly Vector[]): number {
  const trace = a[0] + b[1] + c[2];
  const minors = a[0] * b[1] - a[1] * b[0] + a[0] * c[2] - a[2] * c[0] + b[1] * c[2] - b[2] * c[1];
  const determinant = dot(a, cross(b, c));
  let root = Math.hypot(...a, ...b, ...c);
  for (let turn = 0; turn < 200; turn++) {
    const value = ((root - trace) * root + minors) * root - determinant;
    const next = root - value / ((3 * root - 2 * trace) * root + minors);
    if (!(next < root)) break;
    root = next;
  }
  return root;
}

/** What all rows less the eigenvalue are at right angles to; undefined where there is more than one such direction. */
function eigenvector(rows: readonly Vector[], eigenvalue: number): Vector | undefined {
  const less = rows.map((row, r) => row.map((value, c) => value - (r === c ? eigenvalue : 0)));
  const candidates = [cross(less[0], less[1]), cross(less[0], less[2]), cross(less[1], less[2])];
  const [best] = candidates.sort((a, b) => Math.hypot(...b) - Math.hypot(...a));
  const size = Math.hypot(...rows.flat());
  return Math.hypot(...best) > 1e-13 * size * size ? best : undefined;
}

/** Centre and axes of a conic; undefined where it is no ellipse. */
function axesOf({ quadratic: [a, b, c], linear: [d, e, f] }: Conic): Axes | undefined {
  const q = 4 * a * c - b * b;
  const x = (b * e - 2 * c * d) / q;
  const y = (b * d - 2 * a * e) / q;
  const level = -(a * x * x + b * x * y + c * y * y + d * x + e * y + f);
  const half = Math.sign(a) * Math.hypot(a - c, b);
  const turn = Math.atan2(Math.sign(a) * b, Math.sign(a) * (a - c)) / 2;
  // The steeper direction of the conic is the shorter axis.
  const shorter = Math.sqrt((2 * level) / (a + c + half));
  const longer = Math.sqrt((2 * level) / (a + c - half));
  return q > 0 && longer > 0 && shorter > 0 && Number.isFinite(longer)
    ? { x, y, a: longer, b: shorter, turn: turn + Math.PI / 2 }
    : undefined;
}

function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
