// Each operation's SQL, run on DuckDB (@duckdb/node-api), against its value.
import { type DuckDBConnection, DuckDBInstance } from '@duckdb/node-api';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { functions, type PlainFunction } from '../../lib/sheet/formula/functions.ts';
import { type Operation, operators, signs } from '../../lib/sheet/formula/operators.ts';

let duckdb: DuckDBConnection;
beforeAll(async () => {
  duckdb = await (await DuckDBInstance.create(':memory:')).connect();
});
afterAll(() => duckdb.closeSync());

// Nothing that overflows in a power: what becomes of that is the database's own affair.
const numbers = [Number.NaN, 0, 1, -1, 0.5, -0.25, 2, 3, -7.5, 12, 90];
const truths = [Number.NaN, 0, 1];
const plain = [...functions.values()].filter((row): row is PlainFunction => row.sort === 'plain');
const all: readonly (readonly [string, Operation])[] = [
  ...Object.entries(operators),
  ...Object.entries(signs).map(([name, operation]) => [`${name}x`, operation] as const),
  ...plain.map((row) => [row.name, row] as const),
];

describe('SQL of single operations', () => {
  test.each(all)('%s gives the same on DuckDB', async (name, operation) => {
    const logical = ['&&', '||', '!x'].includes(name);
    const written = (value: number) =>
      Number.isNaN(value) ? 'NULL' : logical ? String(value === 1) : `${value}::DOUBLE`;
    const pairs = (logical ? truths : numbers).flatMap((x) => (logical ? truths : numbers).map((y) => [x, y]));
    const type = logical ? 'BOOLEAN' : 'DOUBLE';
    await duckdb.run(`CREATE OR REPLACE TABLE pairs (nth INTEGER, p ${type}, q ${type})`);
    const rows = pairs.map(([x, y], at) => `(${at}, ${written(x)}, ${written(y)})`);
    await duckdb.run(`INSERT INTO pairs VALUES ${rows.join(', ')}`);
    const found = await duckdb.runAndReadAll(`SELECT ${operation.sql('p', 'q')} FROM pairs ORDER BY nth`);
    found.getRows().forEach(([value], at) => {
      const [x, y] = pairs[at];
      const expected = operation.of(x, y);
      const got = value === null ? Number.NaN : Number(value);
      const where = `${name} of ${x} and ${y}`;
      if (Number.isNaN(expected)) expect(got, where).toBeNaN();
      else expect(Math.abs(got - expected), where).toBeLessThanOrEqual(1e-12 * Math.abs(expected));
    });
  });
});
