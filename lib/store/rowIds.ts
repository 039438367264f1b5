/**
 * One row for good, wherever it comes to stand: what brought it (an entry, or the table's opening) and its number among the
 * rows that came with it, as in `k3f9x2-14/0`.
 */
export type RowId = string;

/**
 * The ids of a table's rows, in their order: row `i` is `${origins[codes[i]]}/${numbers[i]}`. A million rows that came
 * together have one origin.
 */
export interface RowIds {
  readonly origins: readonly string[];
  readonly codes: Int32Array;
  readonly numbers: Float64Array;
}

/** Rows that came together, numbered from 0. */
export function newRowIds(origin: string, rows: number): RowIds {
  const numbers = new Float64Array(rows);
  for (let row = 0; row < rows; row++) numbers[row] = row;
  return { origins: [origin], codes: new Int32Array(rows), numbers };
}

export function rowIdAt({ origins, codes, numbers }: RowIds, row: number): RowId {
  return `${origins[codes[row]]}/${numbers[row]}`;
}

/** The two halves of a row's id. */
export function idParts(id: RowId): { readonly origin: string; readonly number: number } {
  const slash = id.lastIndexOf('/');
  return { origin: id.slice(0, slash), number: Number(id.slice(slash + 1)) };
}

/** Where rows stand now, counted from 0; -1 for one that isn't there. */
export function placesOf({ origins, codes, numbers }: RowIds, wanted: readonly (RowId | null)[]): number[] {
  const codeOf = new Map(origins.map((origin, code) => [origin, code]));
  const parts = wanted.map((id) => (id === null ? undefined : idParts(id)));
  const codesOf = parts.map((part) => (part ? (codeOf.get(part.origin) ?? -1) : -1));
  // Most rows of a table still stand where they stood when they came.
  const places = parts.map((part, i) => {
    const number = part?.number ?? -1;
    return codesOf[i] >= 0 && codes[number] === codesOf[i] && numbers[number] === number ? number : -1;
  });
  const sought = places.flatMap((place, i) => (place < 0 && codesOf[i] >= 0 ? i : []));
  if (sought.length > FEW) findMany(sought);
  else for (const i of sought) places[i] = findOne(codesOf[i], parts[i]!.number);
  return places;

  function findOne(code: number, number: number): number {
    let row = numbers.indexOf(number);
    while (row >= 0 && codes[row] !== code) row = numbers.indexOf(number, row + 1);
    return row;
  }

  function findMany(sought: readonly number[]): void {
    const byNumber = new Map<number, number[]>();
    for (const i of sought) {
      const { number } = parts[i]!;
      const same = byNumber.get(number);
      if (same) same.push(i);
      else byNumber.set(number, [i]);
    }
    for (let row = 0; row < codes.length; row++)
      for (const i of byNumber.get(numbers[row]) ?? NONE) if (codesOf[i] === codes[row]) places[i] = row;
  }
}

/** So many rows are looked for one after another. */
const FEW = 32;
const NONE: readonly number[] = [];

/** New rows in the order in which they come to stand, and where, counted from 0 in the table that has them. */
export interface NewPlaces {
  /** Which of the new rows, by its number among them. */
  readonly order: readonly number[];
  readonly places: readonly number[];
}

/** Where rows come to stand, each directly below one of the table or below one before it. */
export function placesForNew(ids: RowIds, rows: readonly RowId[], below: readonly (RowId | null)[]): NewPlaces {
  const above = placesOf(ids, below);
  const known = new Map(rows.map((id, i) => [id, i]));
  /** By the row of the table that they stand below, -1 for the top, the new rows in order. */
  const stacks = new Map<number, number[]>();
  const stackOf = new Map<number, number[]>();
  rows.forEach((_, i) => {
    const anchor = below[i];
    const fellow = anchor === null ? undefined : known.get(anchor);
    const within = fellow !== undefined && fellow < i ? stackOf.get(fellow) : undefined;
    if (within) {
      const at = within.at(-1) === fellow ? within.length : within.indexOf(fellow!) + 1;
      within.splice(at, 0, i);
      stackOf.set(i, within);
      return;
    }
    const root = anchor !== null && above[i] < 0 ? ids.codes.length - 1 : above[i];
    const stack = stacks.get(root);
    if (stack) stack.unshift(i);
    else stacks.set(root, [i]);
    stackOf.set(i, stacks.get(root)!);
  });
  const roots = [...stacks.keys()].sort((a, b) => a - b);
  const order = roots.flatMap((root) => stacks.get(root)!);
  let before = 0;
  const places = roots.flatMap((root) => stacks.get(root)!.map(() => root + 1 + before++));
  return { order, places };
}
