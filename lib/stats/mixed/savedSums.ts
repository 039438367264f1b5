import { ExactSums } from '../exactSums.ts';
import { type ModelSumsSpec, sumSpecOf } from './sumSpec.ts';
import { SumStore } from './sumStore.ts';

/** What stands before the numbers of saved sums. */
interface Head {
  readonly format: string;
  readonly spec: ModelSumsSpec;
  readonly store?: {
    readonly missing: number;
    readonly kinds: readonly (readonly [string, 'number' | 'text'])[];
    readonly values: readonly (readonly [string, readonly (number | string)[]])[];
    /** How many levels each grouping has. */
    readonly levels: readonly number[];
    /** For each column of sums its length, its lowest digit and the number of its digits. */
    readonly sums: readonly (readonly [number, number, number])[];
  };
}

const format = 'evenhoof model sums 1';

/**
 * Sums as bytes: the length of a head of JSON as 32 bits, the head, spaces up to a multiple of 8, then doubles, all with the
 * lowest byte first: for each grouping its levels' outer levels and codes, then each column of sums digit by digit.
 */
export function writeSums(spec: ModelSumsSpec, store: SumStore | undefined): Uint8Array {
  store?.settle();
  const sums = store ? [...store.allSums()] : [];
  const head: Head = {
    ...{ format, spec },
    store: store && {
      missing: store.missing,
      kinds: [...store.kinds],
      values: Array.from(store.values, ([name, { met }]) => [name, met]),
      levels: store.levels.map(({ size }) => size),
      sums: sums.map(({ length, lowest, digits }) => [length, lowest, digits.length]),
    },
  };
  const parts = [
    ...(store?.levels ?? []).flatMap(({ outer, codes }) => [Float64Array.from(outer), Float64Array.from(codes)]),
    ...sums.flatMap(({ digits, length }) => digits.map((digit) => digit.subarray(0, length))),
  ];
  const text = new TextEncoder().encode(JSON.stringify(head));
  const start = 8 * Math.ceil((4 + text.length) / 8);
  const bytes = new Uint8Array(start + 8 * parts.reduce((sum, { length }) => sum + length, 0)).fill(32, 0, start);
  new DataView(bytes.buffer).setUint32(0, start - 4, true);
  bytes.set(text, 4);
  let at = start;
  for (const part of parts) {
    bytes.set(lowestFirst(new Uint8Array(part.slice().buffer)), at);
    at += part.byteLength;
  }
  return bytes;
}

/** What saved sums are of, and the sums. */
export function readSums(bytes: Uint8Array): { spec: ModelSumsSpec; store?: SumStore } {
  const { head, start } = headOf(bytes);
  const { spec, store } = head;
  return { spec, store: store && filled(new SumStore(sumSpecOf(spec), new Map(store.kinds)), store, bytes, start) };
}

function headOf(bytes: Uint8Array): { head: Head; start: number } {
  const broken = (what: string) =>
    new TypeError(`These are no saved sums: ${what}. Load the bytes that save() gave, all of them`);
  if (bytes.length < 4) throw broken('they are too short');
  const start = 4 + new DataView(bytes.buffer, bytes.byteOffset).getUint32(0, true);
  if (start > bytes.length) throw broken('they end too early');
  let head: Head;
  try {
    head = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(4, start)));
  } catch {
    throw broken('they don’t begin with a head');
  }
  if (head?.format !== format) throw broken(`their format is ${head?.format} and not ${format}`);
  const { levels = [], sums = [] } = head.store ?? {};
  const numbers =
    levels.reduce((sum, size) => sum + 2 * size, 0) +
    sums.reduce((sum, [length, , digits]) => sum + length * digits, 0);
  if (bytes.length !== start + 8 * numbers)
    throw broken(`there are ${bytes.length} bytes and not ${start + 8 * numbers}`);
  return { head, start };
}

function filled(store: SumStore, head: NonNullable<Head['store']>, bytes: Uint8Array, start: number): SumStore {
  let at = start;
  const next = (count: number) => {
    const part = bytes.slice(at, at + 8 * count);
    at += 8 * count;
    return new Float64Array(lowestFirst(part).buffer);
  };
  store.missing = head.missing;
  for (const [name, met] of head.values) for (const value of met) store.values.get(name)!.code(value);
  for (const [i, levels] of store.levels.entries()) {
    const [outer, codes] = [next(head.levels[i]), next(head.levels[i])];
    for (let level = 0; level < outer.length; level++) levels.level(outer[level], codes[level]);
  }
  const sums = head.sums.map(([length, lowest, digits]) =>
    ExactSums.of(
      length,
      lowest,
      Array.from({ length: digits }, () => next(length)),
    ),
  );
  store.fill(sums.values());
  return store;
}

/** The bytes of doubles with each one's lowest first, from or to the order of this machine, in place. */
function lowestFirst(bytes: Uint8Array): Uint8Array {
  const machine = new Uint8Array(new Uint32Array([1]).buffer)[0] === 1;
  if (!machine) for (let at = 0; at < bytes.length; at += 8) bytes.subarray(at, at + 8).reverse();
  return bytes;
}
