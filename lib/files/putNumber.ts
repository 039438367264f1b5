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
  const tenths = Math.round(value * 10);
  if (tenths > 0 && tenths < 10_000 && tenths / 10 === value) return putTenths(tenths, bytes, at);
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

/** Up to 999.9, with a digit after the point or none: what most measurements are. */
function putTenths(tenths: number, bytes: Uint8Array, at: number): number {
  const whole = (tenths / 10) | 0;
  const tens = (whole / 10) | 0;
  const hundreds = (tens / 10) | 0;
  let next = at;
  if (hundreds > 0) bytes[next++] = ZERO + hundreds;
  if (tens > 0) bytes[next++] = ZERO + tens - hundreds * 10;
  bytes[next++] = ZERO + whole - tens * 10;
  if (whole * 10 === tenths) return next;
  bytes[next++] = POINT;
  bytes[next++] = ZERO + tenths - whole * 10;
  return next;
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
