import { ExactSums } from '../exactSums.ts';
import { beheaded, headed } from '../headed.ts';
import { type ModelSumsSpec, sumSpecOf } from './sumSpec.ts';
import { SumStore } from './sumStore.ts';

/** What stands before the numbers of saved sums. */
interface Head {
  readonly format: string;
  readonly spec: ModelSumsSpec;
  readonly store?: SavedStore;
}

interface SavedStore {
  readonly missing: number;
  readonly kinds: readonly (readonly [string, 'number' | 'text'])[];
  readonly values: readonly (readonly [string, readonly (number | string)[]])[];
  /** How many levels each grouping has. */
  readonly levels: readonly number[];
  /** For each column of sums its length, its lowest digit and the number of its digits. */
  readonly sums: readonly (readonly [number, number, number])[];
}

const format = 'model-sums-1';

/**
 * Sums as bytes: a head, then doubles with the lowest byte first: for each grouping its levels' outer levels and codes, then each
 * column of sums digit by digit.
 */
export function writeSums(spec: ModelSumsSpec, store: SumStore | undefined): Uint8Array {
  if (!store) return headed({ format, spec } as Head, []);
  store.settle();
  const sums = [...store.allSums()];
  const head: Head = {
    ...{ format, spec },
    store: {
      missing: store.missing,
      kinds: [...store.kinds],
      values: Array.from(store.values, ([name, { met }]) => [name, met]),
      levels: store.levels.map(({ size }) => size),
      sums: sums.map(({ length, lowest, digits }) => [length, lowest, digits.length]),
    },
  };
  const numbers = [
    ...store.levels.flatMap(({ outer, codes }) => [Float64Array.from(outer), Float64Array.from(codes)]),
    ...sums.flatMap(({ digits, length }) => digits.map((digit) => digit.slice(0, length))),
  ];
  return headed(
    head,
    numbers.map(({ buffer }) => lowestFirst(new Uint8Array(buffer))),
  );
}

/** What saved sums are of, and the sums. */
export function readSums(bytes: Uint8Array): { spec: ModelSumsSpec; store?: SumStore } {
  const { head, body } = beheaded<Head>(bytes, format, ({ store }) => 8 * (store ? numbersIn(store) : 0));
  return { spec: head.spec, store: head.store && filled(head.spec, head.store, body) };
}

function numbersIn({ levels, sums }: SavedStore): number {
  const ofLevels = levels.reduce((total, size) => total + 2 * size, 0);
  return sums.reduce((total, [length, , digits]) => total + length * digits, ofLevels);
}

function filled(spec: ModelSumsSpec, saved: SavedStore, body: Uint8Array): SumStore {
  const store = new SumStore(sumSpecOf(spec), new Map(saved.kinds));
  let at = 0;
  const next = (count: number) => {
    const part = body.slice(at, at + 8 * count);
    at += part.length;
    return new Float64Array(lowestFirst(part).buffer);
  };
  store.missing = saved.missing;
  for (const [name, met] of saved.values) for (const value of met) store.values.get(name)!.code(value);
  for (const [i, levels] of store.levels.entries()) {
    const [outer, codes] = [next(saved.levels[i]), next(saved.levels[i])];
    for (let level = 0; level < outer.length; level++) levels.level(outer[level], codes[level]);
  }
  const sums = saved.sums.map(([length, lowest, digits]) =>
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
