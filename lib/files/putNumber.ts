const ZERO = 48;
const MINUS = 45;
const POINT = 46;

/** The longest number that `putNumber` writes: `-2.2250738585072014e-308`. */
export const longestNumber = 25;

const scales = [1, 10, 100, 1_000, 10_000, 100_000, 1_000_000];
const largest = 2 ** 31;

/**
 * Writes a finite number as the shortest decimal that reads back to the same bits, as ASCII.
 * @param at  where to begin in `bytes`, which has room for `longestNumber`
 * @returns where the next byte goes
 * @example putNumber(-52.5, new Uint8Array(25), 0) // 5
 */
export function putNumber(value: number, bytes: Uint8Array, at: number): number {
  const size = Math.abs(value);
  // A whole number over a power of ten is rounded once: where it gives the value, its digits are the value's decimal.
  for (let places = 0; places < scales.length; places++) {
    const whole = Math.round(size * scales[places]);
    if (!(whole < largest)) break;
    if (whole / scales[places] !== size) continue;
    let next = at;
    if (value < 0 || Object.is(value, -0)) bytes[next++] = MINUS;
    return putDigits(whole, places, bytes, next);
  }
  const text = String(value);
  for (let i = 0; i < text.length; i++) bytes[at + i] = text.charCodeAt(i);
  return at + text.length;
}

/** The digits of a whole number with a point before the last `places` of them. */
function putDigits(whole: number, places: number, bytes: Uint8Array, at: number): number {
  let length = places + 1;
  for (let limit = 10 * scales[places]; whole >= limit; limit *= 10) length++;
  const end = at + length + (places > 0 ? 1 : 0);
  let rest = whole | 0;
  let place = end;
  for (let digit = 0; digit < length; digit++) {
    if (digit === places && places > 0) bytes[--place] = POINT;
    const tenth = (rest / 10) | 0;
    bytes[--place] = ZERO + rest - tenth * 10;
    rest = tenth;
  }
  return end;
}
