const QUOTE = 34;
const LF = 10;
const CR = 13;

/**
 * Finds where one cell ends, whatever it holds: quoted or not, with line breaks or doubled quotes inside, or with quotes
 * that don't add up. After `scan` the cell's text lies in `source` from `start` to `end`.
 */
export class CellScanner {
  source: Uint8Array;
  start = 0;
  end = 0;
  quoted = false;
  /** Quotes that don't add up: text after the closing one, or no closing one. The text is kept as it stands. */
  broken = false;

  readonly #decoder = new TextDecoder('utf-8', { ignoreBOM: true });

  constructor(
    readonly bytes: Uint8Array,
    readonly delimiter: number,
  ) {
    this.source = bytes;
  }

  /** Reads the cell that begins at `from`; returns where its delimiter or line end stands. `bytes` end with a line end. */
  scan(from: number): number {
    this.broken = false;
    let p = from;
    while (this.#blank(p)) p++;
    if (this.bytes[p] === QUOTE) {
      const after = this.#quotedCell(p + 1);
      if (after >= 0) return after;
      this.broken = true;
    }
    return this.#plainCell(from);
  }

  /** The text of the cell last scanned. */
  text(): string {
    return this.#decoder.decode(this.source.subarray(this.start, this.end));
  }

  #plainCell(from: number): number {
    const to = this.#terminator(from);
    this.source = this.bytes;
    this.quoted = false;
    this.start = from;
    this.end = to;
    while (this.start < to && this.#blank(this.start)) this.start += this.bytes[this.start] === 0xc2 ? 2 : 1;
    while (this.end > this.start && this.#blankBefore(this.end)) this.end -= this.bytes[this.end - 1] === 0xa0 ? 2 : 1;
    return to;
  }

  /** After the opening quote. -1 where no quote closes it before the end of the file. */
  #quotedCell(from: number): number {
    const bytes = this.bytes;
    let doubled = 0;
    let p = from;
    for (;;) {
      const quote = bytes.indexOf(QUOTE, p);
      if (quote < 0) return -1;
      p = quote + 1;
      if (bytes[p] !== QUOTE) break;
      doubled++;
      p++;
    }
    const close = p - 1;
    while (this.#blank(p)) p++;
    const to = this.#terminator(p);
    this.quoted = true;
    this.broken = to > p;
    this.source = bytes;
    this.start = from;
    this.end = close;
    if (doubled > 0 || this.broken) this.#unescape(from, close, this.broken ? to : close);
    return to;
  }

  /** Copies the cell with its doubled quotes made single, and what follows the closing quote (if anything) after it. */
  #unescape(from: number, close: number, to: number): void {
    const bytes = this.bytes;
    const copy = new Uint8Array(to - from);
    let length = 0;
    for (let i = from; i < close; i++) {
      copy[length++] = bytes[i];
      if (bytes[i] === QUOTE) i++;
    }
    for (let i = close + 1; i < to; i++) copy[length++] = bytes[i];
    this.source = copy;
    this.start = 0;
    this.end = length;
  }

  #terminator(from: number): number {
    const { bytes, delimiter } = this;
    let p = from;
    while (bytes[p] !== delimiter && bytes[p] !== LF && bytes[p] !== CR) p++;
    return p;
  }

  /** A space, a tab that is no delimiter, or a space that does not break. */
  #blank(p: number): boolean {
    const byte = this.bytes[p];
    return byte === 32 || (byte === 9 && this.delimiter !== 9) || (byte === 0xc2 && this.bytes[p + 1] === 0xa0);
  }

  #blankBefore(p: number): boolean {
    const byte = this.bytes[p - 1];
    return byte === 32 || (byte === 9 && this.delimiter !== 9) || (byte === 0xa0 && this.bytes[p - 2] === 0xc2);
  }
}
