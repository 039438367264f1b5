import type { Tails } from './tails.ts';

/**
 * The place where a distribution's tails reach given shares, by Newton steps on the logarithm of the smaller tail,
 * kept between the places known to lie below and above.
 * @param at the tails and the density at a place
 * @param target the shares wanted below and above, both above 0, their sum 1
 * @param start where to begin
 */
export function invert(at: (place: number) => Tails & { density: number }, target: Tails, start: number): number {
  const side = target.lower <= target.upper ? 'lower' : 'upper';
  const sign = side === 'lower' ? 1 : -1;
  let low = -Infinity;
  let high = Infinity;
  let place = start;
  for (let turn = 0; turn < 400; turn++) {
    const found = at(place);
    const excess = sign * Math.log(found[side] / target[side]);
    if (excess === 0) return place;
    if (excess < 0) low = place;
    else high = place;
    let next = place - (excess * found[side]) / found.density;
    if (!(next > low && next < high)) next = inside(low, high, turn);
    if (Math.abs(next - place) <= 2 * Number.EPSILON * Math.max(1, Math.abs(place))) return next;
    place = next;
  }
  return place;
}

/** Half-way between the bounds; where one is infinite, ever further out. */
function inside(low: number, high: number, turn: number): number {
  if (low === -Infinity) return high - 2 ** Math.min(turn, 9);
  if (high === Infinity) return low + 2 ** Math.min(turn, 9);
  return (low + high) / 2;
}
