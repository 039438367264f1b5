import { alike, Contents } from './contents.ts';
import type { JournalEdit } from './journal.ts';
import { placesOf } from './rowIds.ts';
import type { KeptTable, TableName } from './tables.ts';

/** The edits that make one state of a table out of another: rows are the same where their ids are. */
export function difference(name: TableName, from: KeptTable, to: KeptTable): JournalEdit[] {
  const [before, after] = [new Contents(name, from), new Contents(name, to)];
  const idsOf = (contents: Contents) => Array.from({ length: contents.rows }, (_, row) => contents.idAt(row));
  const [old, wanted] = [idsOf(before), idsOf(after)];
  const placesNow = placesOf(before.ids, wanted);
  const placesThen = placesOf(after.ids, old);
  const gone = before.removal(placesThen.flatMap((place, row) => (place < 0 ? row : [])));
  const come = after.removal(placesNow.flatMap((place, row) => (place < 0 ? row : [])));
  const edits: JournalEdit[] = [];
  if (gone.rows.length > 0) edits.push(gone);
  if (come.rows.length > 0) edits.push({ ...come, how: 'add' });
  const shared = wanted.flatMap((_, row) => (placesNow[row] < 0 ? [] : row));
  for (const column of new Set([...after.names, ...before.names])) {
    const then = (row: number) => (after.has(column) ? after.entered(column, row) : null);
    const now = (row: number) => (before.has(column) ? before.entered(column, placesNow[row]) : null);
    const changed = shared.filter((row) => !alike(now(row), then(row)));
    if (changed.length === 0) continue;
    const { kind: holds, unit } = (after.has(column) ? after : before).column(column);
    const rows = changed.map((row) => wanted[row]);
    edits.push({ kind: 'cells', column, holds, unit, rows, before: changed.map(now), after: changed.map(then) });
  }
  const own = (contents: Contents) => new Map(contents.own.map((one, place) => [one.name, { one, place }]));
  const [hadOwn, hasOwn] = [own(before), own(after)];
  for (const [column, { one, place }] of hadOwn)
    if (!hasOwn.has(column)) edits.push({ kind: 'own column', column, place, before: one, after: null });
  for (const [column, { one, place }] of hasOwn) {
    const had = hadOwn.get(column)?.one ?? null;
    if (had?.formula !== one.formula || had?.unit !== one.unit)
      edits.push({ kind: 'own column', column, place, before: had, after: one });
  }
  return edits;
}
