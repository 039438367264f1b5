/**
 * Where a function that rises through zero is zero, by bisection sharpened with secants (regula falsi, Illinois).
 * @param f below zero at `low`, above zero somewhere above it
 * @param high a first guess at an end above; it is doubled until the function is above zero there
 * @returns to about the last digit; NaN where the function is not below zero at `low` or never rises above it
 * @source Dowell & Jarratt 1971, BIT 11:168–174
 */
export function rootBetween(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  if (!(fa <= 0)) return NaN;
  for (let doubled = 0; fb < 0; doubled++) {
    if (doubled > 60 || Number.isNaN(fb)) return NaN;
    [a, fa] = [b, fb];
    b = low + 2 * (b - low);
    fb = f(b);
  }
  if (fa === 0) return a;
  if (fb === 0) return b;
  for (let turn = 0; turn < 200 && b - a > 4 * Number.EPSILON * Math.abs(b); turn++) {
    // Every third step halves, so that a flat function can't stall it.
    let x = turn % 3 === 2 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
    if (!(x > a && x < b)) x = (a + b) / 2;
    const fx = f(x);
    if (fx === 0) return x;
    if (fx < 0) {
      [a, fa] = [x, fx];
      fb /= 2;
    } else {
      [b, fb] = [x, fx];
      fa /= 2;
    }
  }
  return (a + b) / 2;
}
