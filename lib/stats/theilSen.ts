import { normal } from './distributions/normal.ts';
import { kendallVariance, tieSums } from './kendallTau.ts';
import { mean } from './mean.ts';
import { median } from './median.ts';
import { type Numbers, presentRows } from './numbers.ts';
import { rowsByGroup } from './rowsByGroup.ts';
import { type Points, SlopeSelection } from './slopeSelection.ts';

export interface TheilSen {
  readonly n: number;
  readonly missing: number;
  /** How many pairs of rows have different x, so a slope. */
  readonly pairs: number;
  /** In units of y a unit of x, with its limits. */
  readonly slope: number;
  readonly lower: number;
  readonly upper: number;
  readonly level: number;
  /** The median of y − slope·x. */
  readonly intercept: number;
  /** The median of y minus slope times the median of x, as in Conover 1999. */
  readonly interceptOfMedians: number;
}

export interface TheilSenOptions {
  /** The level of the interval, 0.95 where not given. */
  readonly level?: number;
  /** Which group a row belongs to, any numbers: only rows of one group are paired, so the slope is one within groups. */
  readonly groups?: Numbers;
}

/**
 * The Theil–Sen slope: the median of the slopes between all pairs of points, which a quarter of wild points can't
 * carry away, with Sen's interval.
 * @param x numbers in any unit; a row with anything missing is left out and counted
 * @param y numbers in any unit, as many
 * @returns the slope with its limits and two usual intercepts; NaN where no two x differ
 * @source Sen 1968, Journal of the American Statistical Association 63:1379–1389; ties and groups as in Hirsch & Slack
 *   1984, Water Resources Research 20:727–732
 * @example theilSen([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78], { level: 0.93 }).slope // 4
 */
export function theilSen(x: Numbers, y: Numbers, { level = 0.95, groups }: TheilSenOptions = {}): TheilSen {
  const { columns, missing } = presentRows(groups ? [x, y, groups] : [x, y]);
  const [u, v, group] = columns;
  const n = u.length;
  const blocks = rowsByGroup(group ?? new Float64Array(n)).map((rows) => sortedPoints(u, v, rows));
  const slopes = new SlopeSelection(blocks);
  const pairs = slopes.count;
  const head = { n, missing, pairs, level };
  if (pairs === 0) return { ...head, slope: NaN, lower: NaN, upper: NaN, intercept: NaN, interceptOfMedians: NaN };

  let variance = 0;
  for (const block of blocks) variance += kendallVariance(block.x.length, tieSums(block.x), tieSums(block.y));
  const reach = normal.quantile((1 + level) / 2) * Math.sqrt(variance);
  const slope = (slopes.atRank(Math.floor((pairs - 1) / 2)) + slopes.atRank(Math.floor(pairs / 2))) / 2;
  return {
    ...head,
    slope,
    lower: slopes.atRank(Math.max(0, Math.round((pairs - reach) / 2) - 1)),
    upper: slopes.atRank(Math.min(pairs - 1, Math.round((pairs + reach) / 2))),
    intercept: median(v.map((value, row) => value - slope * u[row])),
    interceptOfMedians: median(v) - slope * median(u),
  };
}

/** The points of some rows by rising x, about their means so that rounding stays small. */
function sortedPoints(x: Float64Array, y: Float64Array, rows: Int32Array): Points {
  rows.sort((a, b) => x[a] - x[b]);
  const centred = (values: Float64Array) => {
    const centre = mean(Float64Array.from(rows, (row) => values[row]));
    return Float64Array.from(rows, (row) => values[row] - centre);
  };
  return { x: centred(x), y: centred(y) };
}
