import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { DuckDBConnection, DuckDBInstance } from '@duckdb/node-api';
import { dialects } from '../sheet/formula/dialects.ts';
import { LargeTableError } from './largeTableError.ts';
import { inOurWords } from './untidy.ts';

/** What an engine may use. */
export interface EngineOptions {
  /** How much memory it may take for its work, as `3GB`; beyond that it writes to `scratch`. The process takes some more. */
  readonly memory?: string;
  /** A folder for what does not fit; left out, the system's for temporary files. */
  readonly scratch?: string;
  /** How many threads it may use; left out, as many as there are cores. */
  readonly threads?: number;
}

/** A column as the engine finds it in a file. */
export interface FoundColumn {
  readonly name: string;
  /** The engine's name for its type. */
  readonly type: string;
}

export const { identifier, text } = dialects.duckdb;

/** As many rows as the engine takes in one piece. */
const chunkRows = 2048;

function duckdbItself() {
  return import('@duckdb/node-api').catch(() => {
    throw new LargeTableError('Large tables need DuckDB. Install it beside this package: npm install @duckdb/node-api');
  });
}

function refused(error: unknown): never {
  throw inOurWords(error);
}

/** DuckDB in this process, over files where they lie. It is fetched when first needed, and need not be installed otherwise. */
export class Engine {
  readonly #instance: DuckDBInstance;
  readonly #connection: DuckDBConnection;
  readonly #scratch: string;

  private constructor(instance: DuckDBInstance, connection: DuckDBConnection, scratch: string) {
    this.#instance = instance;
    this.#connection = connection;
    this.#scratch = scratch;
  }

  /** @param inOrder  whether rows come in the order of their file, which takes more memory */
  static async open(
    { memory = '3GB', scratch = tmpdir(), threads }: EngineOptions = {},
    inOrder = false,
  ): Promise<Engine> {
    const duckdb = await duckdbItself();
    const folder = await mkdtemp(join(scratch, 'evenhoof-large-'));
    const settings = {
      ...{ memory_limit: memory, temp_directory: folder, preserve_insertion_order: String(inOrder) },
      ...(threads && { threads: String(threads) }),
    };
    const instance = await duckdb.DuckDBInstance.create(':memory:', settings);
    return new Engine(instance, await instance.connect(), folder);
  }

  async run(statement: string): Promise<void> {
    await this.#connection.run(statement).catch(refused);
  }

  /** The rows of an answer; whole numbers as numbers. */
  async rows(statement: string): Promise<Record<string, unknown>[]> {
    const reader = await this.#connection.runAndReadAll(statement).catch(refused);
    return reader
      .getRowObjectsJS()
      .map((row) =>
        Object.fromEntries(
          Object.entries(row).map(([name, value]) => [name, typeof value === 'bigint' ? Number(value) : value]),
        ),
      );
  }

  /**
   * The rows of an answer that is nothing but doubles, `NaN` for missing: some thousand at a time, column by column.
   * Other statements may run meanwhile.
   */
  async *doubles(statement: string): AsyncGenerator<readonly Float64Array[]> {
    const connection = await this.#instance.connect();
    try {
      for await (const chunk of await connection.stream(statement).catch(refused)) {
        yield Array.from({ length: chunk.columnCount }, (_, at) => {
          const values = new Float64Array(chunk.rowCount);
          const vector = chunk.getColumnVector(at);
          for (let row = 0; row < values.length; row++) values[row] = vector.getItem(row) as number;
          return values;
        });
      }
    } finally {
      connection.closeSync();
    }
  }

  /** Adds rows to a table whose columns are doubles and texts, missing as `NaN` and `''`. */
  async append(table: string, columns: readonly (Float64Array | readonly string[])[]): Promise<void> {
    const { DOUBLE, DuckDBDataChunk, VARCHAR } = await duckdbItself();
    const types = columns.map((values) => (values instanceof Float64Array ? DOUBLE : VARCHAR));
    const appender = await this.#connection.createAppender(table);
    for (let from = 0; from < columns[0].length; from += chunkRows) {
      const parts = columns.map((values) => values.slice(from, from + chunkRows));
      const chunk = DuckDBDataChunk.create(types, parts[0].length);
      // Such an array is read from as a list is.
      for (const [at, part] of parts.entries()) chunk.setColumnValues(at, part as readonly string[]);
      appender.appendDataChunk(chunk);
    }
    appender.closeSync();
  }

  /**
   * The columns of what a statement reads from.
   * @param file  its name, for messages
   */
  async columns(from: string, file: string): Promise<FoundColumn[]> {
    const rows = await this.rows(`DESCRIBE SELECT * FROM ${from}`).catch((error) => {
      throw inOurWords(error, file);
    });
    return rows.map(({ column_name, column_type }) => ({ name: String(column_name), type: String(column_type) }));
  }

  async close(): Promise<void> {
    this.#connection.closeSync();
    this.#instance.closeSync();
    await rm(this.#scratch, { recursive: true, force: true });
  }
}
