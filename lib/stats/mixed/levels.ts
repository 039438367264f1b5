/** The values of a column that were met, each with a code. */
export class Values {
  readonly met: (number | string)[] = [];
  readonly #codes = new Map<number | string, number>();

  constructor(met: Iterable<number | string> = []) {
    for (const value of met) this.code(value);
  }

  code(value: number | string): number {
    let code = this.#codes.get(value);
    if (code === undefined) {
      code = this.met.push(value) - 1;
      this.#codes.set(value, code);
    }
    return code;
  }

  /** Their codes in the order of numbers, or of code points. */
  order(): Int32Array {
    const { met } = this;
    return Int32Array.from(met.keys()).sort((a, b) => (met[a] < met[b] ? -1 : 1));
  }
}

/** The combinations of some columns' values that were met: those of all but the last column, and codes of the last. */
export class Levels {
  #size = 0;
  #outer = new Int32Array(8);
  #codes = new Int32Array(8);
  /** An open-addressed hash table of the levels. */
  #slots = new Int32Array(16).fill(-1);

  /** @param within  the levels of all columns but the last; without, there is the one level that all rows are in */
  constructor(
    readonly columns: readonly string[],
    readonly within?: Levels,
  ) {
    if (!within) this.level(0, 0);
  }

  get size(): number {
    return this.#size;
  }

  /** For each level, the level of the outer columns that it is in. */
  get outer(): Int32Array {
    return this.#outer.subarray(0, this.#size);
  }

  /** For each level, the code of its value in the last column. */
  get codes(): Int32Array {
    return this.#codes.subarray(0, this.#size);
  }

  /** The level of a code in an outer level; a new one where it wasn't met before. */
  level(outer: number, code: number): number {
    const slot = this.#slot(outer, code);
    const known = this.#slots[slot];
    if (known >= 0) return known;
    const level = this.#size++;
    if (level === this.#codes.length) {
      this.#outer = longer(this.#outer);
      this.#codes = longer(this.#codes);
    }
    this.#outer[level] = outer;
    this.#codes[level] = code;
    this.#slots[slot] = level;
    if (2 * this.#size > this.#slots.length) this.#spread(2 * this.#slots.length);
    return level;
  }

  /** The code of each of a level's values, column by column. */
  codesOf(level: number): number[] {
    return this.within ? [...this.within.codesOf(this.#outer[level]), this.#codes[level]] : [];
  }

  /** For each level, the level of `other` that it is in; all columns of `other` are among these. */
  to(other: Levels): Int32Array {
    if (other === this) return this.codes.map((_, level) => level);
    if (this.within && other.columns.every((name) => this.within?.columns.includes(name))) {
      const through = this.within.to(other);
      return this.outer.map((outer) => through[outer]);
    }
    const places = other.columns.map((name) => this.columns.indexOf(name));
    return this.codes.map((_, level) => {
      const codes = this.codesOf(level);
      return other.find(places.map((place) => codes[place]))!;
    });
  }

  /** The level of these codes, where it was met. */
  find(codes: readonly number[]): number | undefined {
    if (!this.within) return 0;
    const outer = this.within.find(codes.slice(0, -1));
    const level = outer === undefined ? -1 : this.#slots[this.#slot(outer, codes[codes.length - 1])];
    return level < 0 ? undefined : level;
  }

  /**
   * Puts the levels in the order of the outer levels, then of the values.
   * @param outerOrder  for each new place of the outer levels, the old one; and `codeOrder` so of the codes
   * @returns for each new place of these levels, the old one
   */
  settle(outerOrder: Int32Array, codeOrder: Int32Array): Int32Array {
    const [outerRank, rank] = [ranks(outerOrder), ranks(codeOrder)];
    const width = codeOrder.length;
    const places = new Float64Array(this.#size);
    for (let level = 0; level < places.length; level++)
      places[level] = outerRank[this.#outer[level]] * width + rank[this.#codes[level]];
    // Numbers sort faster than levels that are compared; which level each was tells the hash table.
    places.sort();
    const order = new Int32Array(places.length);
    const [outers, codes] = [new Int32Array(places.length), new Int32Array(places.length)];
    for (let place = 0; place < order.length; place++) {
      outers[place] = Math.floor(places[place] / width);
      codes[place] = places[place] % width;
      order[place] = this.#slots[this.#slot(outerOrder[outers[place]], codeOrder[codes[place]])];
    }
    this.#outer = outers;
    this.#codes = codes;
    this.#spread(this.#slots.length);
    return order;
  }

  /** Where a pair lies in the hash table, or would. */
  #slot(outer: number, code: number): number {
    const mask = this.#slots.length - 1;
    const hash = Math.imul(outer ^ Math.imul(code, 0x9e3779b1), 0x85ebca6b);
    let slot = (hash ^ (hash >>> 15)) & mask;
    for (;;) {
      const level = this.#slots[slot];
      if (level < 0 || (this.#codes[level] === code && this.#outer[level] === outer)) return slot;
      slot = (slot + 1) & mask;
    }
  }

  #spread(slots: number): void {
    this.#slots = new Int32Array(slots).fill(-1);
    for (let level = 0; level < this.#size; level++)
      this.#slots[this.#slot(this.#outer[level], this.#codes[level])] = level;
  }
}

function longer(array: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> {
  const copy = new Int32Array(2 * array.length);
  copy.set(array);
  return copy;
}

/** Each old place's new one. */
function ranks(order: Int32Array): Int32Array {
  const rank = new Int32Array(order.length);
  for (let place = 0; place < order.length; place++) rank[order[place]] = place;
  return rank;
}
