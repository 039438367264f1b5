/**
 * What Stirling's formula leaves out: ln Γ(x + 1) − (x + ½) ln x + x − ½ ln 2π.
 * @param x above 0
 * @source Loader 2000, Fast and accurate computation of binomial probabilities
 */
function stirlingError(x: number): number {
  let climbed = 0;
  let at = x;
  for (; at < 16; at++) climbed += (at + 0.5) * Math.log1p(1 / at) - 1;
  const s = 1 / (at * at);
  return (
    climbed + (1 / 12 - s * (1 / 360 - s * (1 / 1260 - s * (1 / 1680 - s * (1 / 1188 - (s * 691) / 360360))))) / at
  );
}

/**
 * x ln(x / m) + m − x, by its series where x is near m and the parts would cancel (Loader 2000).
 * @param away x − m, whose own digits a subtraction might lose
 */
function deviance(x: number, m: number, away: number): number {
  const v = away / (x + m);
  if (!(Math.abs(v) < 0.1)) return x * Math.log(x / m) - away;
  let total = away * v;
  let power = 2 * x * v;
  for (let j = 1; ; j++) {
    power *= v * v;
    const next = total + power / (2 * j + 1);
    if (next === total) return total;
    total = next;
  }
}

/**
 * xᵃ e⁻ˣ / Γ(a), the density of ln X where X has the gamma distribution of shape `a`.
 * @param a above 0
 * @param x 0 or more
 */
export function gammaKernel(a: number, x: number): number {
  if (x === 0 || x === Infinity) return 0;
  return Math.sqrt(a / (2 * Math.PI)) * Math.exp(-stirlingError(a) - deviance(a, x, a - x));
}

/**
 * xᵃ yᵇ / B(a, b), the density of ln(x / y) where x has the beta distribution.
 * @param x from 0 to 1
 * @param y 1 − x, given apart because the smaller of the two holds the digits
 * @param a above 0
 * @param b above 0
 */
export function betaKernel(x: number, y: number, a: number, b: number): number {
  if (x === 0 || y === 0) return 0;
  const n = a + b;
  const away = a * y - b * x;
  const log =
    stirlingError(n) - stirlingError(a) - stirlingError(b) - deviance(a, n * x, away) - deviance(b, n * y, -away);
  return Math.sqrt((a * b) / (2 * Math.PI * n)) * Math.exp(log);
}
