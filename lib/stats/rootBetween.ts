/**
 * Where a function that rises through zero is zero, by halving.
 * @param f below zero at `low`, above zero somewhere above it
 * @param high a first guess at an end above; it is doubled away from `low` until the function is above zero there
 * @returns to the last digits; NaN where the function is above zero at `low` or never rises to it
 * @example rootBetween((x) => x * x - 2, 0, 1) // 1.414213562373095
 */
export function rootBetween(f: (x: number) => number, low: number, high: number): number {
  if (!(f(low) <= 0)) return NaN;
  let [a, b] = [low, high];
  while (!(f(b) >= 0)) {
    if (b > 1e15 || b <= a) return NaN;
    [a, b] = [b, low + 2 * (b - low)];
  }
  for (;;) {
    const middle = (a + b) / 2;
    if (middle === a || middle === b) return middle;
    if (f(middle) < 0) a = middle;
    else b = middle;
  }
}
