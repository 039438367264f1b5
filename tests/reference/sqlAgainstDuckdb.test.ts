// The SQL reading of formulas, run on DuckDB (@duckdb/node-api), against the values that the sheet computes.
import { type DuckDBConnection, DuckDBInstance } from '@duckdb/node-api';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ColumnInput, TextColumn } from '../../lib/sheet/column.ts';
import { children } from '../../lib/sheet/formula/children.ts';
import { parse } from '../../lib/sheet/formula/parse.ts';
import { resolve } from '../../lib/sheet/formula/resolve.ts';
import { sql } from '../../lib/sheet/formula/sql.ts';
import type { Node } from '../../lib/sheet/formula/syntax.ts';
import { values } from '../../lib/sheet/formula/values.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';
import type { Relation } from '../../lib/sheet/relation.ts';
import { relations as footRelations, smallHerd } from '../sheet/formula/smallHerd.ts';

const relations: readonly Relation[] = [
  ...footRelations,
  {
    name: 'twin',
    words: 'the twin’s',
    match: ['horse_id'],
    swap: { limb: { LF: 'RF', RF: 'LF' }, moment: { before: 'after', after: 'before' } },
  },
  { name: 'only', words: 'the only one’s', match: ['horse_id', 'limb'], optional: ['moment', 'no_such_column'] },
];

let duckdb: DuckDBConnection;
beforeAll(async () => {
  duckdb = await (await DuckDBInstance.create(':memory:')).connect();
});
afterAll(() => duckdb.closeSync());

/** How a table holds its dates. */
type Dates = 'as days' | 'as dates';

function quoted(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}

function literal(value: number | string, kind: string, dates: Dates): string {
  if (value === '' || Number.isNaN(value)) return 'NULL';
  if (kind === 'date' && dates === 'as dates') return `DATE '1970-01-01' + ${value}::INTEGER`;
  if (typeof value === 'string') return `'${value.replaceAll("'", "''")}'`;
  return kind === 'boolean' ? String(value === 1) : `${value}::DOUBLE`;
}

/** Puts the columns into a fresh table with a row number, and hands back what each computed column holds there. */
async function byDuckdb(
  columns: Record<string, ColumnInput>,
  computed: { name: string; node: Node }[],
  dates: Dates,
): Promise<unknown[][]> {
  const inputs = Object.entries(columns).map(([name, input]) => ({
    name,
    values: input.values,
    kind: input.values instanceof Float64Array ? (input.kind ?? 'number') : 'text',
  }));
  const types = {
    number: 'DOUBLE',
    date: dates === 'as dates' ? 'DATE' : 'DOUBLE',
    boolean: 'BOOLEAN',
    text: 'VARCHAR',
  };
  const fields = inputs.map(({ name, kind }) => `${quoted(name)} ${types[kind]}`);
  await duckdb.run(`CREATE OR REPLACE TABLE feet (row_at INTEGER, ${fields.join(', ')})`);
  const rows = Array.from(
    { length: inputs[0].values.length },
    (_, row) => `(${[String(row), ...inputs.map(({ values, kind }) => literal(values[row], kind, dates))].join(', ')})`,
  );
  if (rows.length > 0) await duckdb.run(`INSERT INTO feet VALUES ${rows.join(', ')}`);
  const stored = inputs.flatMap(({ name, kind }) => (kind === 'date' && dates === 'as dates' ? [name] : []));
  const statement = sql(computed, {
    ...{ table: 'feet', names: Object.keys(columns), relations, rowId: 'row_at', dates: stored },
    dialect: dates === 'as dates' ? 'duckdb' : 'standard',
  });
  const result = await duckdb.runAndReadAll(statement);
  const found = result.getColumnsJS();
  return computed.map(({ name }) => found[result.columnNames().indexOf(name)] ?? []);
}

/** The largest size of any value on the way to the result: rounding is relative to it. */
function size(nodes: readonly Node[], columns: Record<string, ColumnInput>): number {
  const parts = nodes.flatMap(function all(node: Node): Node[] {
    return [node, ...children(node).flatMap(all)];
  });
  let largest = 0;
  for (const column of values(parts, plainTable(columns, relations)))
    if (column instanceof Float64Array)
      for (const value of column) if (Math.abs(value) > largest) largest = Math.abs(value);
  return largest;
}

/** Checks that DuckDB gives what the sheet gives. Formulas may name the ones before them: `f0`, `f1`, … */
async function check(
  columns: Record<string, ColumnInput>,
  formulas: readonly string[],
  dates: Dates = 'as days',
): Promise<void> {
  const all = { ...columns };
  const computed: { name: string; node: Node; wanted: Float64Array | TextColumn; kind: string; scale: number }[] = [];
  for (const [i, formula] of formulas.entries()) {
    const table = plainTable(all, relations);
    const { node, unit, kind } = resolve(parse(formula), table);
    const [wanted] = values([node], table);
    computed.push({ name: `f${i}`, node, wanted, kind, scale: size([node], all) });
    all[`f${i}`] = wanted instanceof TextColumn ? { values: wanted.values } : { unit, kind, values: wanted };
  }
  const rows = Object.values(columns)[0].values.length;
  const found = await byDuckdb(columns, computed, dates);
  computed.forEach(({ wanted, kind, scale }, i) => {
    expect(found[i]).toHaveLength(rows);
    for (let row = 0; row < rows; row++) {
      const value = found[i][row] as number | string | boolean | null | bigint;
      const about = `${formulas[i]} in row ${row}`;
      if (wanted instanceof TextColumn) expect(value ?? '', about).toBe(wanted.at(row));
      else if (Number.isNaN(wanted[row])) expect(value, about).toBeNull();
      else {
        expect(value, about).not.toBeNull();
        if (kind === 'boolean') expect(value, about).toBe(wanted[row] === 1);
        else expect(Math.abs(Number(value) - wanted[row]), about).toBeLessThanOrEqual(1e-12 * scale);
      }
    }
  });
}

describe('SQL on DuckDB gives the values of', () => {
  it.each([
    [
      'sums and ratios',
      ['(toe - heel) / 2', 'length / width', 'f0 * f1', 'f2 % quantity(3, "deg")', '-(f0 ** 2) / quantity(1, "deg2")'],
    ],
    [
      'functions',
      [
        'sqrt(length * width)',
        'sin(toe)',
        'atan2(length, width)',
        'log(length / width)',
        'hypot(length, width)',
        'round(toe)',
        'abs(toe - heel)',
        'sign(toe - heel)',
        'exp(length / width)',
        'asin(length / width)',
        'acos(width / length)',
        'log10(toe / heel - 1)',
        'clamp(toe, 48, 52)',
        'floor(f0)',
        'ceil(heel)',
        'tan(heel)',
        'cos(heel)',
        'atan(length / width)',
        '(toe / heel - 1) ** 0.5',
        '(toe / heel - 1) ** -1',
      ],
    ],
    [
      'conditions',
      [
        'toe > heel',
        'toe > 50 && shod',
        'toe > 50 || shod',
        '!shod',
        'toe == heel || is_missing(heel)',
        'f1 ? toe : heel',
        'limb == "LF"',
        'limb != moment',
        'limb == "LF" ? "left \'fore\'" : moment',
        'shod ? missing() : toe',
        'coalesce(toe, heel, 45)',
        'is_missing(f8)',
        'coalesce(f8, limb)',
      ],
    ],
    [
      'relations',
      [
        'toe - opposite(toe)',
        'opposite(opposite(toe))',
        'length - previous(length)',
        'date - previous(date)',
        'f2 / f3',
        'previous(opposite(toe) - toe)',
        'opposite(limb)',
        'previous(shod)',
        'twin(toe)',
        'only(toe)',
        'opposite(f2)',
        'is_missing(previous(date))',
      ],
    ],
    [
      'summaries',
      [
        'mean(toe, horse_id)',
        'sd(toe, horse_id, limb)',
        'sum(length)',
        'count(toe, limb)',
        'min(toe, limb)',
        'max(toe)',
        'median(toe, horse_id)',
        'quantile(toe, 0.9, limb)',
        'quantile(toe, 0.1)',
        'quantile(toe, 1)',
        'quantile(toe, 0, shod)',
        'count(limb, horse_id)',
        'mean(shod, limb)',
        'median(date, horse_id)',
      ],
    ],
    [
      'summaries of summaries and of other rows',
      [
        '(toe - mean(toe)) / sd(toe)',
        'mean(f0, horse_id)',
        'sd(toe - mean(toe, horse_id), limb)',
        'mean(opposite(toe) - toe, horse_id)',
        'opposite(mean(toe, limb))',
        'median(toe - median(toe, horse_id))',
        'quantile(f1, 0.25, limb) - f1',
        'toe > quantile(toe, 0.75, horse_id) ? "high" : "not"',
        'count(f7, f7)',
        'mean(toe, f7)',
      ],
    ],
  ])('%s', async (_, formulas) => {
    for (const gaps of [0, 0.25])
      for (const dates of ['as days', 'as dates'] as const)
        await check(smallHerd({ seed: 21, gaps, horses: 4, visits: 3 }), formulas, dates);
  });

  it('columns with hostile names, texts and no rows', async () => {
    const columns: Record<string, ColumnInput> = Object.fromEntries([
      ['a"b; DROP TABLE feet; --', { values: Float64Array.of(1, 2, Number.NaN) }],
      ['__proto__', { values: ["it's", 'a\\b', ''] }],
      ['part_1', { values: Float64Array.of(4, 5, 6) }],
      ['stage_1', { values: Float64Array.of(7, 8, 9) }],
    ]);
    const formulas = [
      'column("a\\"b; DROP TABLE feet; --") - mean(column("a\\"b; DROP TABLE feet; --"))',
      'column("__proto__") == "it\'s"',
      'mean(part_1 - mean(stage_1, column("__proto__"))) - -(-1)',
      'is_missing(column("__proto__"))',
    ];
    await check(columns, formulas);
    const empty = Object.entries(columns).map(([name, { values }]) => [name, { values: values.slice(0, 0) }] as const);
    await check(Object.fromEntries(empty), formulas);
  });

  const maybe = <T>(arbitrary: fc.Arbitrary<T>, missing: T) =>
    fc.oneof({ weight: 6, arbitrary }, { weight: 1, arbitrary: fc.constant(missing) });
  // Eighths add up exactly, so that which values are equal does not hang on rounding.
  const number = maybe(
    fc.integer({ min: 8, max: 800 }).map((eighths) => eighths / 8),
    Number.NaN,
  );
  const row = fc.record({
    horse_id: maybe(fc.constantFrom('h1', 'h2'), ''),
    limb: maybe(fc.constantFrom('LF', 'RF', 'LH', 'RH'), ''),
    moment: maybe(fc.constantFrom('before', 'after'), ''),
    date: maybe(fc.integer({ min: 1, max: 4 }), Number.NaN),
    shod: maybe(fc.constantFrom(0, 1), Number.NaN),
    a: number,
    b: number,
    'we"ird': number,
  });

  /** Formulas without cliffs, where rounding would decide: `size` is above 0 and may be divided by, tests are exact. */
  const { formula } = fc.letrec<Record<'column' | 'keys' | 'test' | 'size' | 'formula', string>>((tie) => ({
    column: fc.constantFrom(
      'a',
      'b',
      'column("we\\"ird")',
      'opposite(a)',
      'previous(b)',
      'twin(a)',
      'only(b)',
      'previous(opposite(a))',
    ),
    keys: fc.constantFrom('', ', limb', ', horse_id', ', horse_id, limb', ', moment, date', ', shod'),
    test: fc.oneof(
      { maxDepth: 2 },
      fc
        .tuple(tie('column'), fc.constantFrom('<', '<=', '>', '>=', '==', '!='), tie('column'))
        .map((parts) => parts.join(' ')),
      fc.constantFrom(
        'shod',
        'limb == "LF"',
        'moment != opposite(moment)',
        'is_missing(a)',
        'previous(shod)',
        'date > "1970-01-03"',
      ),
      fc.tuple(tie('test'), fc.constantFrom('&&', '||'), tie('test')).map(([x, by, y]) => `(${x}) ${by} (${y})`),
      tie('test').map((test) => `!(${test})`),
    ),
    size: fc.oneof(
      { maxDepth: 3, withCrossShrink: true },
      tie('column'),
      fc
        .tuple(fc.constantFrom('mean', 'median', 'min', 'max', 'sum'), tie('size'), tie('keys'))
        .map(([of, x, by]) => `${of}(${x}${by})`),
      fc.tuple(tie('size'), fc.constantFrom('+', '*'), tie('size')).map(([x, by, y]) => `(${x} ${by} ${y})`),
      fc
        .tuple(fc.constantFrom('sqrt', 'opposite', 'previous', 'twin', 'only'), tie('size'))
        .map(([of, x]) => `${of}(${x})`),
    ),
    formula: fc.oneof(
      { maxDepth: 4, withCrossShrink: true },
      tie('size'),
      fc.integer({ min: -5, max: 5 }).map(String),
      fc.tuple(tie('formula'), fc.constantFrom('+', '-', '*'), tie('formula')).map(([x, by, y]) => `(${x} ${by} ${y})`),
      fc.tuple(tie('formula'), tie('size')).map(([x, y]) => `(${x} / ${y})`),
      fc.tuple(tie('test'), tie('formula'), tie('formula')).map(([test, x, y]) => `(${test} ? ${x} : ${y})`),
      fc
        .tuple(fc.constantFrom('least', 'greatest', 'coalesce'), tie('formula'), tie('formula'))
        .map(([of, x, y]) => `${of}(${x}, ${y})`),
      fc.tuple(fc.constantFrom('abs', 'opposite', 'previous', 'twin'), tie('formula')).map(([of, x]) => `${of}(${x})`),
      fc
        .tuple(fc.constantFrom('mean', 'median', 'sd', 'min', 'max', 'sum', 'count'), tie('formula'), tie('keys'))
        .map(([of, x, by]) => `${of}(${x}${by})`),
      fc
        .tuple(tie('formula'), fc.constantFrom(0, 0.1, 0.25, 0.5, 0.99, 1), tie('keys'))
        .map(([x, p, by]) => `quantile(${x}, ${p}${by})`),
    ),
  }));

  it('random formulas over random tables (seed 2026)', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(row, { minLength: 1, maxLength: 24 }),
        fc.array(formula, { minLength: 1, maxLength: 3 }),
        fc.constantFrom<Dates>('as days', 'as dates'),
        async (rows, formulas, dates) => {
          const columns = Object.fromEntries(
            (['horse_id', 'limb', 'moment', 'date', 'shod', 'a', 'b', 'we"ird'] as const).map((name) => {
              const cells = rows.map((cell) => cell[name]);
              const kind = name === 'date' ? 'date' : name === 'shod' ? 'boolean' : 'number';
              const input: ColumnInput =
                typeof cells[0] === 'string'
                  ? { values: cells as string[] }
                  : { kind, values: Float64Array.from(cells as number[]) };
              return [name, input];
            }),
          );
          await check(columns, formulas, dates);
        },
      ),
      { numRuns: 120, seed: 2026 },
    );
  });
});
