/** A sum is kept as digits to this base, 2³². */
const BASE = 2 ** 32;
/** So many additions can't fill a digit: each adds at most 2³¹ to it, and a double holds whole numbers to 2⁵³. */
const ROOM = 2 ** 21;
/** The lowest and the highest digit that doubles can hold without losing part of it. */
const LOWEST = -29;
const HIGHEST = 19;

/** A number that, added and taken away again, rounds to a multiple of a digit's unit. */
const rounder = (place: number) => 1.5 * 2 ** 52 * BASE ** place;

/**
 * Many sums of doubles, none of which ever rounds: the same total to the last bit in whatever order, and whatever share of
 * it was added elsewhere. Each is a number to the base 2³²; digits that no sum needs take no room.
 * @source after Malcolm 1971, Communications of the ACM 14:731–736, and Demmel & Nguyen 2015, IEEE Transactions on Computers
 *   64:2060–2070: a summand is cut at fixed places, and the pieces at each place add up exactly
 */
export class ExactSums {
  /** One array a digit, lowest first; each entry is a multiple of its digit's unit. */
  #digits: Float64Array[] = [];
  #rounders: number[] = [];
  /** For each digit the unit of the next. */
  #units: number[] = [];
  #lowest = 0;
  /** Summands of this size and beyond need a higher digit. */
  #limit = 0;
  #length: number;
  #sinceCarried = 0;

  constructor(length = 0) {
    this.#length = length;
  }

  get length(): number {
    return this.#length;
  }

  /** Makes room for so many sums; new ones are zero. */
  grow(length: number): void {
    const room = this.#digits[0]?.length ?? 0;
    if (length > room) this.#digits = this.#digits.map((digit) => longer(digit, Math.max(length, 2 * room)));
    this.#length = Math.max(length, this.#length);
  }

  /**
   * Adds a number to one of the sums.
   * @throws RangeError where it is infinite, missing, or beyond what can be added without loss: 2⁶⁰⁷, or a part below 2⁻⁹²⁸
   */
  add(at: number, value: number): void {
    if (value === 0) return;
    if (!(Math.abs(value) < this.#limit)) this.#reachUpTo(value);
    let left = value;
    for (let k = this.#digits.length - 1; k >= 0; k--) {
      const part = left + this.#rounders[k] - this.#rounders[k];
      this.#digits[k][at] += part;
      left -= part;
      if (left === 0) break;
    }
    while (left !== 0) {
      this.#addDigit(this.#lowest - 1);
      const part = left + this.#rounders[0] - this.#rounders[0];
      this.#digits[0][at] += part;
      left -= part;
    }
    if (++this.#sinceCarried === ROOM) this.carry();
  }

  /** Adds a product as it is before it is rounded. */
  addProduct(at: number, a: number, b: number): void {
    const product = a * b;
    this.add(at, product);
    this.add(at, roundedOff(a, b, product));
  }

  /** Adds so many times another sum. */
  addTimes(at: number, factor: number, other: ExactSums, from: number): void {
    if (factor === 0) return;
    for (const digit of other.#digits) {
      if (factor === 1) this.add(at, digit[from]);
      else if (digit[from] !== 0) this.addProduct(at, factor, digit[from]);
    }
  }

  /** Adds each of the other sums to the one at its place in `to`. */
  addAll(other: ExactSums, to: Int32Array): void {
    // A digit that was carried is no larger than a summand's.
    other.carry();
    this.grow(to.reduce((most, at) => Math.max(most, at + 1), 0));
    for (const digit of other.#digits) for (let i = 0; i < to.length; i++) this.add(to[i], digit[i]);
  }

  /** Sets one of the sums back to zero. */
  clear(at: number): void {
    for (const digit of this.#digits) digit[at] = 0;
  }

  /** The sum, within a unit of its last digit; always the same for the same total where `carry` came before. */
  at(at: number): number {
    let total = 0;
    for (const digit of this.#digits) total += digit[at];
    return total;
  }

  /** The sum itself, in units of 2³² to the power `lowest`. */
  whole(at: number): bigint {
    return this.#digits.reduceRight((sum, digit, k) => {
      return (sum << 32n) + BigInt(digit[at] / BASE ** (this.#lowest + k));
    }, 0n);
  }

  get lowest(): number {
    return this.#lowest;
  }

  /** Brings the digits of every sum below 2³², all with the sign of the sum: the one way to write it. */
  carry(): void {
    this.#sinceCarried = 0;
    for (let at = 0; at < this.#length; at++) {
      this.#carryUp(at);
      if (!(this.#digits[this.#digits.length - 1]?.[at] < 0)) continue;
      // The lower digits of a negative sum are positive now: turned about and back they take its sign.
      this.#turn(at);
      this.#carryUp(at);
      this.#turn(at);
    }
  }

  /** The sums put in another order, each written in the one way, without digits that none needs. */
  settle(order: Int32Array): void {
    this.#digits = this.#digits.map((digit) => inOrder(digit, order));
    this.#length = order.length;
    this.carry();
    const needed = this.#digits.map((digit) => digit.some((each) => each !== 0));
    const [first, last] = [needed.indexOf(true), needed.lastIndexOf(true)];
    this.#place(first < 0 ? 0 : this.#lowest + first, first < 0 ? [] : this.#digits.slice(first, last + 1));
  }

  /** The digits, lowest first, for sums that have been settled. */
  get digits(): readonly Float64Array[] {
    return this.#digits;
  }

  /** Sums from their digits, lowest first. */
  static of(length: number, lowest: number, digits: readonly Float64Array[]): ExactSums {
    const sums = new ExactSums(length);
    sums.#place(lowest, [...digits]);
    return sums;
  }

  #carryUp(at: number): void {
    for (let k = 0; k < this.#digits.length; k++) {
      const unit = this.#units[k];
      const digit = this.#digits[k][at];
      const last = k === this.#digits.length - 1;
      if (last && Math.abs(digit) < unit) return;
      const above = Math.floor(digit / unit) * unit;
      if (above === 0) continue;
      if (last) this.#addDigit(this.#lowest + k + 1);
      this.#digits[k][at] -= above;
      this.#digits[k + 1][at] += above;
    }
  }

  #turn(at: number): void {
    for (const digit of this.#digits) digit[at] = 0 - digit[at];
  }

  #reachUpTo(value: number): void {
    if (!(Math.abs(value) < BASE ** HIGHEST / 2))
      throw new RangeError(`${value} can't be added without loss; numbers below 1e182 can`);
    if (this.#digits.length === 0) this.#lowest = Math.floor((Math.log2(Math.abs(value)) + 1) / 32);
    while (!(Math.abs(value) < this.#limit)) this.#addDigit(this.#lowest + this.#digits.length);
  }

  #addDigit(place: number): void {
    if (place < LOWEST) throw new RangeError('A number with digits below 1e-279 can’t be added without loss');
    const zeros = new Float64Array(this.#digits[0]?.length ?? this.#length);
    if (place < this.#lowest) this.#place(place, [zeros, ...this.#digits]);
    else this.#place(this.#lowest, [...this.#digits, zeros]);
  }

  #place(lowest: number, digits: Float64Array[]): void {
    this.#lowest = lowest;
    this.#digits = digits;
    this.#rounders = digits.map((_, k) => rounder(lowest + k));
    this.#units = digits.map((_, k) => BASE ** (lowest + k + 1));
    this.#limit = digits.length === 0 ? 0 : BASE ** (lowest + digits.length) / 2;
  }
}

/** What a product loses when it is rounded (Dekker 1971, Numerische Mathematik 18:224–242). */
function roundedOff(a: number, b: number, product: number): number {
  if (a === 1 || b === 1) return 0;
  const [aUpper, bUpper] = [upper(a), upper(b)];
  const [aLower, bLower] = [a - aUpper, b - bUpper];
  return aLower * bLower - (product - aUpper * bUpper - aLower * bUpper - aUpper * bLower);
}

/** The upper half of a number's digits (Veltkamp 1968). */
function upper(value: number): number {
  const large = (2 ** 27 + 1) * value;
  return large - (large - value);
}

function inOrder(digit: Float64Array, order: Int32Array): Float64Array {
  const moved = new Float64Array(order.length);
  for (let at = 0; at < order.length; at++) moved[at] = digit[order[at]];
  return moved;
}

function longer(digit: Float64Array, length: number): Float64Array {
  const copy = new Float64Array(length);
  copy.set(digit);
  return copy;
}
