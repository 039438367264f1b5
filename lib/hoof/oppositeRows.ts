import { relationNamed } from '../sheet/relationNamed.ts';
import type { Table } from '../sheet/table.ts';

/**
 * The other foot of the pair, measured at the same date and moment, for each row of a sheet of feet.
 * @param feet  readings or occasions, with the relation `opposite`
 * @returns the other foot's row; -1 where it was not measured
 * @throws TypeError where the table has no such relation
 * @example oppositeRows(herd(tables).occasions)
 */
export function oppositeRows(feet: Table): Int32Array {
  return feet.partners(relationNamed('opposite', feet.relations));
}
