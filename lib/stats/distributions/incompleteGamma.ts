import { gammaKernel } from './kernels.ts';
import type { Tails } from './tails.ts';

/**
 * The regularised incomplete gamma functions P(a, x) and Q(a, x), by the series below a + 1 and the continued
 * fraction above.
 * @param a shape, above 0
 * @param x 0 or more
 * @returns `lower` P and `upper` Q, from 0 to 1, each right to about 14 digits however small
 * @source DLMF 8.11.4 and 8.9.2, https://dlmf.nist.gov/8
 * @example incompleteGamma(1, 2).upper // 0.1353352832366127; e⁻²
 */
export function incompleteGamma(a: number, x: number): Tails {
  const kernel = gammaKernel(a, x);
  if (x < a + 1) {
    let term = 1 / a;
    let total = term;
    for (let n = 1; term > total * Number.EPSILON; n++) {
      term *= x / (a + n);
      total += term;
    }
    const lower = kernel * total;
    return { lower, upper: 1 - lower };
  }
  let b = x + 1 - a;
  let c = Infinity;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1, change = 0; Math.abs(change - 1) > Number.EPSILON; n++) {
    const step = n * (a - n);
    b += 2;
    d = 1 / (step * d + b);
    c = b + step / c;
    change = c * d;
    fraction *= change;
  }
  const upper = kernel * fraction;
  return { lower: 1 - upper, upper };
}
