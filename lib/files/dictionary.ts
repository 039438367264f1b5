/** Text `code` as UTF-8 in `pool` from `ends[code]` to `ends[code + 1]`. */
export interface PackedTexts {
  readonly pool: Uint8Array;
  readonly ends: Int32Array;
}

/**
 * Texts by code, found by their UTF-8 bytes: a cell that was seen before costs no string.
 * An open-addressed hash table; each distinct text's bytes are kept once, one after the other.
 */
export class Dictionary {
  #slots = new Int32Array(16).fill(-1);
  #hashes = new Int32Array(8);
  /** Text `code` lies in `#pool` from `#ends[code]` to `#ends[code + 1]`. */
  #ends = new Int32Array(9);
  #pool = new Uint8Array(64);
  #size = 0;
  /** The code that was given last. */
  #last = -1;

  get size(): number {
    return this.#size;
  }

  /** The code of the text in `bytes` from `start` to `end`; a new one where it is new. */
  code(bytes: Uint8Array, start: number, end: number): number {
    // At each visit the horses come in the order that they had before.
    const next = this.#last + 1;
    this.#last = this.#is(next, bytes, start, end) ? next : this.#find(bytes, start, end);
    return this.#last;
  }

  #find(bytes: Uint8Array, start: number, end: number): number {
    const hash = hashOf(bytes, start, end);
    const slots = this.#slots;
    const mask = slots.length - 1;
    let slot = (hash ^ (hash >>> 15)) & mask;
    for (;;) {
      const code = slots[slot];
      if (code < 0) return this.#add(slot, bytes, start, end, hash);
      if (this.#hashes[code] === hash && this.#is(code, bytes, start, end)) return code;
      slot = (slot + 1) & mask;
    }
  }

  #is(code: number, bytes: Uint8Array, start: number, end: number): boolean {
    if (code >= this.#size) return false;
    const from = this.#ends[code];
    const length = end - start;
    if (this.#ends[code + 1] - from !== length) return false;
    const pool = this.#pool;
    let i = 0;
    while (i < length && pool[from + i] === bytes[start + i]) i++;
    return i === length;
  }

  #add(slot: number, bytes: Uint8Array, start: number, end: number, hash: number): number {
    const code = this.#size++;
    if (code === this.#hashes.length) {
      this.#hashes = longer(this.#hashes, code * 2);
      this.#ends = longer(this.#ends, code * 2 + 1);
    }
    const from = this.#ends[code];
    const to = from + end - start;
    if (to > this.#pool.length) {
      const pool = new Uint8Array(Math.max(to, this.#pool.length * 2));
      pool.set(this.#pool);
      this.#pool = pool;
    }
    for (let i = start; i < end; i++) this.#pool[from + i - start] = bytes[i];
    this.#hashes[code] = hash;
    this.#ends[code + 1] = to;
    this.#slots[slot] = code;
    if (this.#size * 2 > this.#slots.length) this.#spread();
    return code;
  }

  #spread(): void {
    const slots = new Int32Array(this.#slots.length * 4).fill(-1);
    const mask = slots.length - 1;
    for (let code = 0; code < this.#size; code++) {
      const hash = this.#hashes[code];
      let slot = (hash ^ (hash >>> 15)) & mask;
      while (slots[slot] >= 0) slot = (slot + 1) & mask;
      slots[slot] = code;
    }
    this.#slots = slots;
  }

  /** All texts, to hand them to another thread. */
  packed(): PackedTexts {
    const ends = this.#ends.slice(0, this.#size + 1);
    return { pool: this.#pool.slice(0, ends[this.#size]), ends };
  }

  /** For each text of another dictionary its code in this one. */
  codesOf({ pool, ends }: PackedTexts): Int32Array {
    return Int32Array.from({ length: ends.length - 1 }, (_, code) => this.code(pool, ends[code], ends[code + 1]));
  }

  /** All texts, in the order of their codes. */
  texts(): string[] {
    const used = this.#pool.subarray(0, this.#ends[this.#size]);
    const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
    const all = decoder.decode(used);
    const ends = this.#ends;
    // Where every character is one byte the offsets hold for the text too, and one decoding does for all.
    const ascii = all.length === used.length;
    return Array.from({ length: this.#size }, (_, code) =>
      ascii ? all.slice(ends[code], ends[code + 1]) : decoder.decode(used.subarray(ends[code], ends[code + 1])),
    );
  }
}

/** The FNV-1a hash of some bytes, as a 32-bit integer. */
function hashOf(bytes: Uint8Array, start: number, end: number): number {
  let hash = 0x811c9dc5 | 0;
  for (let i = start; i < end; i++) hash = Math.imul(hash ^ bytes[i], 0x01000193);
  return hash;
}

function longer(array: Int32Array<ArrayBuffer>, length: number): Int32Array<ArrayBuffer> {
  const copy = new Int32Array(length);
  copy.set(array);
  return copy;
}
