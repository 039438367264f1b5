import { gammaKernel } from './kernels.ts';
import { normal } from './normal.ts';

/**
 * The share above t: the normal tail above t·s − ncp, averaged over the distribution of the estimated standard
 * deviation s. In v = ln s the integrand is smooth with one peak and falls off exponentially or faster on both
 * sides, so equal steps outwards from the peak converge to all digits.
 */
function upper(t: number, df: number, ncp: number): number {
  if (Number.isNaN(t) || Number.isNaN(ncp) || !(df > 0)) return NaN;
  if (df === Infinity) return normal.upper(t - ncp);
  if (Math.abs(t) === Infinity) return t > 0 ? 0 : 1;
  const integrand = (v: number) =>
    gammaKernel(df / 2, (df / 2) * Math.exp(2 * v)) * normal.upper(t * Math.exp(v) - ncp);
  const width = Math.min(1e-3, 0.1 / Math.sqrt(df));
  // The distribution of v peaks at 0; the tail draws the peak down where t is above zero, and up where it is below.
  const peak = t > 0 ? peakOf(integrand, 0, -800 / df - 1, width) : peakOf(integrand, 0, 4, width);
  // By the narrower of the density of v and the fall of the normal tail near t·s = ncp; neither has singularities
  // nearer than π/4, for which a tenth is enough.
  const step = Math.min(0.1, 1 / Math.sqrt(18 * df), 1 / (3 + 3 * Math.abs(ncp)));
  let total = integrand(peak);
  for (const side of [step, -step]) {
    for (let v = peak + side; ; v += side) {
      const part = integrand(v);
      total += part;
      if (part <= 1e-17 * total) break;
    }
  }
  return Math.min(1, 2 * step * total);
}

/** Where a function with one peak has it, to within `width`, by golden section; it may be zero far out, towards `far`. */
function peakOf(f: (v: number) => number, near: number, far: number, width: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [near, far];
  let [a, b] = [high - golden * (high - low), low + golden * (high - low)];
  let [fa, fb] = [f(a), f(b)];
  while (Math.abs(high - low) > width) {
    // Equal values are both zero, far out.
    if (fa >= fb) {
      [high, b, fb] = [b, a, fa];
      a = high - golden * (high - low);
      fa = f(a);
    } else {
      [low, a, fa] = [a, b, fb];
      b = low + golden * (high - low);
      fb = f(b);
    }
  }
  return (low + high) / 2;
}

/**
 * The noncentral t distribution with `df` degrees of freedom, above 0 or ∞, and noncentrality `ncp`: `cdf`, the
 * share below t, and `upper`, the share above, both exact in the far tail. NaN in, NaN out.
 * @source Johnson, Kotz & Balakrishnan 1995, Continuous Univariate Distributions 2, 31.5
 * @example noncentralT.cdf(2, 10, 1) // 0.8076115625303111
 */
export const noncentralT = {
  cdf: (t: number, df: number, ncp: number): number => upper(-t, df, -ncp),
  upper,
};
