// Values as they are printed in papers, textbooks and trade journals: hoof-published.csv beside this file, one row a
// value with its source, where it was read, and whether it was read or is from memory. Facts and figures only.
import { readFileSync } from 'node:fs';
import { readTable } from '../../lib/files/readTable.ts';

const { columns } = readTable(readFileSync(new URL('./hoof-published.csv', import.meta.url)));
const rowOf = new Map(Array.from(columns.id.values as readonly string[], (id, row) => [id, row]));

/** A published value by its id: the number, its unit, standard deviation and n as far as printed. */
export function published(id: string): { value: number; unit: string; sd: number; n: number } {
  const row = rowOf.get(id);
  if (row === undefined) throw new TypeError(`hoof-published.csv has no row ${id}`);
  const number = (name: string): number => columns[name].values[row] as number;
  return { value: number('value'), unit: String(columns.unit.values[row]), sd: number('sd'), n: number('n') };
}
