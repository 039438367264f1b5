import { arrowSchemaKey, arrowSchemaText } from '../files/columnar/arrowSchema.ts';
import { TextColumn } from '../sheet/column.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { sqlOf } from '../sheet/sqlOf.ts';
import { type Engine, identifier, text } from './engine.ts';

/**
 * A table that comes piece by piece and ends as one Parquet file. Until then it lies with the engine, which works out the
 * computed columns at the end, from the formulas' own statement.
 */
export class TableWriter {
  readonly #engine: Engine;
  readonly #name: string;
  /** The first piece, which says what the columns are. */
  #like: Sheet | undefined;
  /** The words of each column of text, and where they stand. */
  readonly #words = new Map<string, Map<string, number>>();
  #rows = 0;

  /** @param name  that nothing has at the engine yet */
  constructor(engine: Engine, name: string) {
    this.#engine = engine;
    this.#name = name;
  }

  get rows(): number {
    return this.#rows;
  }

  /** @param piece  some rows, with the same columns each time */
  async add(piece: Sheet): Promise<void> {
    const names = storedIn(piece);
    if (this.#like === undefined) {
      this.#like = piece;
      const columns = names.map((name) => `${identifier(name)} DOUBLE`);
      await this.#engine.run(`CREATE TABLE ${this.#name}_pieces (${columns.join(', ')})`);
    }
    this.#rows += piece.rows;
    const values = names.map((name) => {
      const column = piece.column(name);
      return column instanceof TextColumn ? this.#codes(name, column) : column.values;
    });
    await this.#engine.append(`${this.#name}_pieces`, values);
  }

  /** @param out  the file; nothing is written where there was no piece */
  async write(out: string): Promise<void> {
    const like = this.#like;
    if (like === undefined) return;
    const stored = storedIn(like);
    const joins: string[] = [];
    const columns: string[] = [];
    for (const name of stored) {
      const { kind } = like.column(name);
      const value = `p.${identifier(name)}`;
      if (kind === 'text') {
        const words = await this.#writeWords(name, joins.length);
        joins.push(`LEFT JOIN ${words} ON ${words}.code = ${value}`);
        columns.push(`${words}.word AS ${identifier(name)}`);
      } else columns.push(`${asStored[kind](value)} AS ${identifier(name)}`);
    }
    const pieces = `${this.#name}_pieces AS p ${joins.join(' ')}`;
    await this.#engine.run(`CREATE VIEW ${this.#name} AS SELECT ${columns.join(', ')} FROM ${pieces}`);
    const dates = stored.filter((name) => like.column(name).kind === 'date');
    const statement = sqlOf(like, this.#name, { dialect: 'duckdb', dates });
    const schema = `{${text(arrowSchemaKey)}: ${text(await arrowSchemaText(like))}}`;
    await this.#engine.run(`COPY (${statement}) TO ${text(out)} (FORMAT parquet, KV_METADATA ${schema})`);
  }

  async #writeWords(name: string, nth: number): Promise<string> {
    const table = `${this.#name}_words_${nth}`;
    await this.#engine.run(`CREATE TABLE ${table} (code DOUBLE, word VARCHAR)`);
    const words = this.#words.get(name)!;
    await this.#engine.append(table, [Float64Array.from(words.values()), [...words.keys()]]);
    return table;
  }

  #codes(name: string, { codes, levels }: TextColumn): Float64Array {
    const known = this.#words.get(name) ?? new Map<string, number>();
    this.#words.set(name, known);
    const places = levels.map((level) => {
      const place = known.get(level) ?? known.size;
      known.set(level, place);
      return place;
    });
    const values = new Float64Array(codes.length);
    for (let row = 0; row < values.length; row++) values[row] = codes[row] < 0 ? Number.NaN : places[codes[row]];
    return values;
  }
}

function storedIn(sheet: Sheet): string[] {
  return sheet.names.filter((name) => sheet.checkedFormula(name) === undefined);
}

const asStored = {
  number: (value: string) => `NULLIF(${value}, 'NaN'::DOUBLE)`,
  date: (value: string) => `DATE '1970-01-01' + CAST(NULLIF(${value}, 'NaN'::DOUBLE) AS INTEGER)`,
  boolean: (value: string) => `CASE ${value} WHEN 1 THEN TRUE WHEN 0 THEN FALSE END`,
};
