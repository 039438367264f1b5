import { betaKernel } from './kernels.ts';
import type { Tails } from './tails.ts';

/**
 * The regularised incomplete beta function Iₓ(a, b) and what it leaves, by the continued fraction on the side
 * where it converges.
 * @param x from 0 to 1
 * @param y 1 − x, given apart because the smaller of the two holds the digits
 * @param a above 0
 * @param b above 0
 * @returns `lower` Iₓ(a, b) and `upper` 1 − Iₓ(a, b), each right to about 13 digits however small
 * @source DLMF 8.17.22, https://dlmf.nist.gov/8.17, its even part as in Didonato & Morris 1992, ACM Transactions
 *   on Mathematical Software 18:360–373, evaluated as in Lentz 1976, Applied Optics 15:668–671
 * @example incompleteBeta(0.5, 0.5, 2, 3).lower // 0.6875
 */
export function incompleteBeta(x: number, y: number, a: number, b: number): Tails {
  const kernel = betaKernel(x, y, a, b);
  const slack = a * y - b * x;
  if (slack > 0) {
    const lower = kernel / fraction(x, y, a, b, slack);
    return { lower, upper: 1 - lower };
  }
  const upper = kernel / fraction(y, x, b, a, -slack);
  return { lower: 1 - upper, upper };
}

/** The even part of the fraction, with every denominator written as a sum of positive terms around `slack`, ay − bx. */
function fraction(x: number, y: number, a: number, b: number, slack: number): number {
  let value = (a * (1 + slack)) / (a + 1);
  let c = value;
  let d = 0;
  for (let n = 1, change = 0; Math.abs(change - 1) > Number.EPSILON && n < 1e6; n++) {
    const s = a + 2 * n - 1;
    const w = n * (b - n) * x;
    const numerator = (((a + n - 1) / s) * (a + b + n - 1) * w * x) / s;
    const denominator = n + w / s + ((a + n) * (1 + slack + n * (1 + y))) / (s + 2);
    d = 1 / (denominator + numerator * d);
    c = denominator + numerator / c;
    change = c * d;
    value *= change;
  }
  return value;
}
