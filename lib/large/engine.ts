import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { DuckDBConnection, DuckDBInstance } from '@duckdb/node-api';
import { dialects } from '../sheet/formula/dialects.ts';
import { LargeTableError } from './largeTableError.ts';

/** What an engine may use. */
export interface EngineOptions {
  /** How much memory it may take for its work, as `3GB`; beyond that it writes to `scratch`. The process takes some more. */
  readonly memory?: string;
  /** A folder for what does not fit; left out, the system's for temporary files. */
  readonly scratch?: string;
}

/** A column as the engine finds it in a file. */
export interface FoundColumn {
  readonly name: string;
  /** The engine's name for its type. */
  readonly type: string;
}

export const { identifier, text } = dialects.duckdb;

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

  static async open({ memory = '3GB', scratch = tmpdir() }: EngineOptions = {}): Promise<Engine> {
    const duckdb = await import('@duckdb/node-api').catch(() => {
      throw new LargeTableError(
        'Large tables need DuckDB. Install it beside this package: npm install @duckdb/node-api',
      );
    });
    const folder = await mkdtemp(join(scratch, 'evenhoof-large-'));
    const settings = { memory_limit: memory, temp_directory: folder, preserve_insertion_order: 'false' };
    const instance = await duckdb.DuckDBInstance.create(':memory:', settings);
    return new Engine(instance, await instance.connect(), folder);
  }

  async run(statement: string): Promise<void> {
    await this.#connection.run(statement);
  }

  /** The rows of an answer; whole numbers as numbers. */
  async rows(statement: string): Promise<Record<string, unknown>[]> {
    const reader = await this.#connection.runAndReadAll(statement);
    return reader
      .getRowObjectsJS()
      .map((row) =>
        Object.fromEntries(
          Object.entries(row).map(([name, value]) => [name, typeof value === 'bigint' ? Number(value) : value]),
        ),
      );
  }

  /**
   * The columns of what a statement reads from.
   * @param file  its name, for messages
   */
  async columns(from: string, file: string): Promise<FoundColumn[]> {
    const rows = await this.rows(`DESCRIBE SELECT * FROM ${from}`).catch((error: Error) => {
      throw new LargeTableError(`${file} can't be read (${error.message})`);
    });
    return rows.map(({ column_name, column_type }) => ({ name: String(column_name), type: String(column_type) }));
  }

  async close(): Promise<void> {
    this.#connection.closeSync();
    this.#instance.closeSync();
    await rm(this.#scratch, { recursive: true, force: true });
  }
}
