import type { RowId } from './journal.ts';

/**
 * The ids of a table's rows, in their order: row `i` is `${origins[codes[i]]}/${numbers[i]}`. A million rows that came
 * together have one origin.
 */
export interface RowIds {
  readonly origins: readonly string[];
  readonly codes: Int32Array;
  readonly numbers: Int32Array;
}

/** Rows that came together, numbered from 0. */
export function newRowIds(origin: string, rows: number): RowIds {
  return { origins: [origin], codes: new Int32Array(rows), numbers: Int32Array.from({ length: rows }, (_, i) => i) };
}

export function rowIdAt({ origins, codes, numbers }: RowIds, row: number): RowId {
  return `${origins[codes[row]]}/${numbers[row]}`;
}

/** Where rows stand now, counted from 0; -1 for one that isn't there. */
export function placesOf({ origins, codes, numbers }: RowIds, wanted: readonly (RowId | null)[]): number[] {
  const places: number[] = wanted.map(() => -1);
  const codeOf = new Map(origins.map((origin, code) => [origin, code]));
  /** By origin and number, which of the wanted it is. */
  const sought = new Map<number, Map<number, number[]>>();
  wanted.forEach((id, i) => {
    const slash = id?.lastIndexOf('/') ?? -1;
    const code = id === null ? undefined : codeOf.get(id.slice(0, slash));
    if (code === undefined) return;
    const byNumber = sought.get(code) ?? new Map<number, number[]>();
    sought.set(code, byNumber);
    const number = Number(id!.slice(slash + 1));
    byNumber.set(number, [...(byNumber.get(number) ?? []), i]);
  });
  if (sought.size === 0) return places;
  for (let row = 0; row < codes.length; row++)
    for (const i of sought.get(codes[row])?.get(numbers[row]) ?? []) places[i] = row;
  return places;
}
