import type { TableName } from '../../hoof/context.ts';
import { type FarHorse, farHorses } from '../../hoof/farHorses.ts';
import { measured } from '../../hoof/measured.ts';
import { type Standing, standingAlone } from '../../hoof/standingAlone.ts';
import { type Columns, type NumberColumn, type TextColumn, toColumn } from '../../sheet/column.ts';
import { horsesInWords, rowsByHorse } from './horsesInWords.ts';
import type { Pooled, PoolTables } from './pooled.ts';

/** A horse whose value in a column is far from those of the others. */
export interface FarValue extends FarHorse {
  readonly column: string;
  /** UCUM code. */
  readonly unit: string;
}

/** A column of pseudonyms of people or places. */
export interface NamedColumn {
  readonly table: TableName;
  readonly name: string;
  readonly names: number;
  /** Of how many it stands with one horse only. */
  readonly withOneHorse: number;
}

/** What in pooled tables still tells horses and people apart. */
export interface Remains {
  readonly horses: readonly string[];
  /** What people may know of each of them, by column. */
  readonly known: Readonly<Record<string, readonly string[]>>;
  readonly standings: readonly Standing[];
  readonly far: readonly FarValue[];
  /** Horses with at least one gap between two of their days, and how many have a sequence of gaps like no other. */
  readonly gaps: { readonly horses: number; readonly alone: number };
  readonly named: readonly NamedColumn[];
}

/**
 * What still identifies in tables that were prepared for a pool.
 * @example remains(await pooled({ feet, horses }, key)).standings[0].alone // rows of horses
 */
export function remains({ tables, columns }: Pooled): Remains {
  const { horses, known } = horsesInWords(tables);
  return {
    horses,
    known,
    standings: standingAlone(known),
    far: farValues(tables),
    gaps: gapsOf(tables),
    named: columns
      .filter(({ treatment, name }) => treatment === 'named' && name !== 'horse_id')
      .map(({ table, name }) => ({ table, name, ...shared(tables[table]!, name) })),
  };
}

function farValues({ feet, horses }: PoolTables): FarValue[] {
  return measured.flatMap(({ name, table }) => {
    const of = table === 'feet' || !horses ? feet : horses;
    if (!Object.hasOwn(of, name)) return [];
    const { values, unit } = toColumn(of[name]) as NumberColumn;
    const found = farHorses(toColumn(of.horse_id) as TextColumn, values);
    return found.map((one) => ({ ...one, column: name, unit }));
  });
}

function gapsOf({ feet, visits }: PoolTables): Remains['gaps'] {
  const days = new Map<string, Set<number>>();
  for (const table of [feet, visits])
    for (const [horse, rows] of table ? rowsByHorse(table) : []) {
      const known = days.get(horse) ?? new Set();
      for (const row of rows) known.add((table!.date.values as Float64Array)[row]);
      days.set(horse, known);
    }
  const counts = new Map<string, number>();
  for (const all of days.values()) {
    const sorted = [...all].filter((day) => !Number.isNaN(day)).sort((a, b) => a - b);
    const gaps = sorted.slice(1).map((day, i) => day - sorted[i]);
    if (gaps.length > 0) counts.set(gaps.join(' '), (counts.get(gaps.join(' ')) ?? 0) + 1);
  }
  const all = [...counts.values()];
  return { horses: all.reduce((sum, count) => sum + count, 0), alone: all.filter((count) => count === 1).length };
}

function shared(table: Columns, name: string): Pick<NamedColumn, 'names' | 'withOneHorse'> {
  const column = toColumn(table[name]) as TextColumn;
  const horses = toColumn(table.horse_id) as TextColumn;
  const by = new Map<number, Set<number>>();
  column.codes.forEach((code, row) => {
    if (code >= 0) by.set(code, (by.get(code) ?? new Set()).add(horses.codes[row]));
  });
  const sizes = [...by.values()].map(({ size }) => size);
  return { names: sizes.length, withOneHorse: sizes.filter((size) => size === 1).length };
}
