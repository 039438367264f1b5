import { useRef } from 'preact/hooks';

/** Names a row for good. */
type KeyOf = (row: number) => string;

interface Known {
  readonly choice?: object;
  readonly at: number;
  readonly key?: string;
}

/**
 * Where a row that was chosen stands now: rows come and go, on other pages too, and none may be taken for another.
 * @param rows  of the sheet, in the order shown
 * @param choice  another object with every choice
 * @param at  the place chosen; -1 for none
 * @param keyOf  left out, the row stays where it stood last
 * @returns the place in `rows`; the same one as before where the row is gone
 */
export function useSameRow(rows: Uint32Array, choice: object, at: number, keyOf?: KeyOf): number {
  const known = useRef<Known>({ at: -1 });
  const before: Known = known.current.choice === choice ? known.current : { choice, at };
  const found = placeOf(rows, before.at, before.key, keyOf);
  const place = Math.min(found < 0 ? before.at : found, rows.length - 1);
  known.current = { choice, at: place, key: keyOf && place >= 0 ? keyOf(rows[place]) : before.key };
  return place;
}

/** Where the row of a key stands, most likely where it stood; -1 where it is gone. */
export function placeOf(rows: Uint32Array, at: number, key?: string, keyOf?: KeyOf): number {
  if (key === undefined || !keyOf || (at >= 0 && at < rows.length && keyOf(rows[at]) === key)) return at;
  return rows.findIndex((row) => keyOf(row) === key);
}
