import { type ColumnInput, type Columns, type Kind, TextColumn } from '../sheet/column.ts';
import { dialects } from '../sheet/formula/dialects.ts';
import { type Engine, identifier } from './engine.ts';
import type { Source } from './source.ts';
import { storedKind, storedValue } from './storedKind.ts';

/** The words of a type of the engine, in order. */
export async function levelsOf(engine: Engine, type: string): Promise<string[]> {
  const rows = await engine.rows(`SELECT UNNEST(ENUM_RANGE(NULL::${identifier(type)})) AS level`);
  return rows.map(({ level }) => String(level));
}

/** Stored columns read as doubles: texts as places in a list of them. */
export class StoredColumns {
  readonly statement: string;
  readonly kinds: readonly { readonly name: string; readonly kind: Kind; readonly levels: readonly string[] }[];
  readonly horseAt: number;
  readonly #engine: Engine;

  private constructor(engine: Engine, statement: string, kinds: StoredColumns['kinds']) {
    this.#engine = engine;
    this.statement = statement;
    this.kinds = kinds;
    this.horseAt = kinds.findIndex(({ name }) => name === 'horse_id');
  }

  /**
   * @param table  a name for the types of the engine that are made
   * @param horses  such a type for the names of horses, whose words aren't listed again; left out, they are texts like others
   */
  static async of(engine: Engine, table: string, { from, columns }: Source, horses?: string): Promise<StoredColumns> {
    const read: string[] = [];
    const kinds: StoredColumns['kinds'][number][] = [];
    for (const column of columns) {
      const kind = column.name === 'horse_id' ? 'text' : storedKind(column);
      if (kind === undefined) continue;
      const value = storedValue(column, 's');
      if (kind !== 'text') {
        const number = kind === 'date' ? dialects.duckdb.days(value) : `CAST(${value} AS DOUBLE)`;
        read.push(`COALESCE(${number}, 'NaN'::DOUBLE) AS ${identifier(column.name)}`);
        kinds.push({ name: column.name, kind, levels: [] });
        continue;
      }
      const given = column.name === 'horse_id' ? horses : undefined;
      const type = given ?? `${table}_${kinds.length}`;
      const word = `COALESCE(CAST(s.${identifier(column.name)} AS VARCHAR), '')`;
      if (given === undefined)
        await engine.run(`CREATE TYPE ${type} AS ENUM (SELECT DISTINCT ${word} FROM ${from} AS s)`);
      // What nobody of the herd is called belongs to nobody.
      read.push(`COALESCE(ENUM_CODE(TRY_CAST(${word} AS ${type}))::DOUBLE, -1) AS ${identifier(column.name)}`);
      kinds.push({ name: column.name, kind, levels: given === undefined ? await levelsOf(engine, type) : [] });
    }
    return new StoredColumns(engine, `SELECT ${read.join(', ')} FROM ${from} AS s`, kinds);
  }

  async all(): Promise<Columns> {
    const blocks: (readonly Float64Array[])[] = [this.kinds.map(() => new Float64Array(0))];
    for await (const block of this.#engine.doubles(this.statement)) blocks.push(block);
    return this.columns(together(blocks));
  }

  columns(read: readonly Float64Array[]): Columns {
    const columns: Columns = Object.create(null);
    for (const [at, { name, kind, levels }] of this.kinds.entries()) columns[name] = columnOf(read[at], kind, levels);
    return columns;
  }
}

function columnOf(values: Float64Array, kind: Kind, levels: readonly string[]): ColumnInput {
  if (kind !== 'text') return { kind, ...(kind === 'number' ? {} : { unit: kind === 'date' ? 'd' : '1' }), values };
  const empty = levels.indexOf('');
  const codes = new Int32Array(values.length);
  for (let row = 0; row < codes.length; row++) codes[row] = values[row] === empty ? -1 : values[row];
  return new TextColumn(codes, levels);
}

/** Blocks of rows as one. */
export function together(blocks: readonly (readonly Float64Array[])[]): Float64Array[] {
  const rows = blocks.reduce((sum, block) => sum + block[0].length, 0);
  return blocks[0].map((_, at) => {
    const all = new Float64Array(rows);
    let from = 0;
    for (const block of blocks) {
      all.set(block[at], from);
      from += block[at].length;
    }
    return all;
  });
}
