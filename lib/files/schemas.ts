import { type Context, context, type TableName, understoodWord, yesAndNo } from '../hoof/context.ts';
import { limbs, parseLimb } from '../hoof/limbs.ts';
import { measured } from '../hoof/measured.ts';
import type { Kind } from '../sheet/column.ts';

/** What a column of a file is, and how its cells are read. */
export interface ColumnSchema {
  readonly name: string;
  readonly title: string;
  readonly kind: Kind;
  /** UCUM code; other units of the same dimension are converted. */
  readonly unit: string;
  /** Beyond these a value is marked and left out of computation; in `unit`, for a date in days since 1970-01-01. */
  readonly within?: readonly [number, number];
  /** The words that stand inside; for a boolean, yes and no. */
  readonly words?: readonly string[];
  /** The inside word for what someone wrote, `undefined` where it isn't understood. Left out: text stays as it is. */
  readonly understand?: (text: string) => string | undefined;
  /** Headings that people write for it, besides name and title. */
  readonly headings: readonly string[];
}

export interface TableSchema {
  readonly name: string;
  readonly columns: readonly ColumnSchema[];
  /** Columns without which the table is of no use. */
  readonly required: readonly string[];
  /** Columns that together name a row: no two rows may have the same. */
  readonly keys: readonly string[];
  /** A key that may be left out, because rows without it are numbered in order. */
  readonly numbered?: string;
}

const keys: Readonly<Record<TableName, readonly string[]>> = {
  feet: ['horse_id', 'date', 'limb', 'moment', 'repeat'],
  horses: ['horse_id'],
  visits: ['horse_id', 'date', 'limb'],
};

/** From 1900 to the end of 2099: outside is a slip of the pen. */
const believable: Readonly<Record<string, readonly [number, number]>> = {
  date: [-25_567, 47_481],
  birth_year: [1900, 2099],
};

function contextColumn(row: Context): ColumnSchema {
  const { name, title, kind, headings } = row;
  const said = row.words ?? (kind === 'boolean' ? yesAndNo : undefined);
  const words = name === 'limb' ? limbs : said && Object.keys(said);
  const understand = name === 'limb' ? parseLimb : words && ((text: string) => understoodWord(row, text));
  return {
    name,
    title,
    kind,
    unit: kind === 'date' ? 'd' : '1',
    within: believable[name],
    words,
    understand,
    headings,
  };
}

function schema(name: TableName): TableSchema {
  const rows = context.filter(({ tables }) => tables.includes(name));
  const measurements = measured.filter(({ table }) => table === name);
  return {
    name,
    columns: [
      ...rows.map(contextColumn),
      ...measurements.map(({ name, title, unit, anatomy: within, headings }) => {
        const kind: Kind = 'number';
        return { name, title, kind, unit, within, headings };
      }),
    ],
    required: rows.filter(({ requiredIn }) => requiredIn?.includes(name)).map((row) => row.name),
    keys: keys[name],
    numbered: name === 'feet' ? 'repeat' : undefined,
  };
}

/** The three tables that a herd is read from. */
export const schemas: Readonly<Record<TableName, TableSchema>> = {
  feet: schema('feet'),
  horses: schema('horses'),
  visits: schema('visits'),
};
