import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTable } from '../../lib/files/readTable.ts';
import { writeTable } from '../../lib/files/writeTable.ts';
import { herd, intervalSheet } from '../../lib/hoof/herd.ts';
import { type IntervalData, intervalData, intervalRows } from '../../lib/hoof/intervalData.ts';
import { type IntervalFit, intervalModel } from '../../lib/hoof/intervalModel.ts';
import { IntervalSums, type IntervalSumsFit, type IntervalSumsOptions } from '../../lib/hoof/intervalSums.ts';
import { termTable } from '../../lib/hoof/intervalTables.ts';
import {
  betweenSentence,
  effectSentence,
  errorSentence,
  modelSentence,
  singularSentence,
} from '../../lib/hoof/intervalWords.ts';
import type { Columns } from '../../lib/sheet/column.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';
import { random } from '../../lib/stats/random.ts';
import { type Invented, intervalRows as invented } from './intervalRows.ts';

const units = { length: 'mm', mass: 'kg' } as const;
const asked = { outcome: 'wall_level_mm', size: true } as const;

/** An invented yard's intervals as a table of them: other moments, therapeutic feet and gaps among them. */
function tableOf(data: IntervalData, seed = 9): Columns {
  const { uniform, below } = random(seed);
  const start = data.atStart.map((value) => (uniform() < 0.5 ? -value : value));
  const end = data.change.map((change, row) => Math.abs(start[row]) + change);
  return {
    horse_id: { values: data.horse },
    limb: { values: data.limb },
    start_date: { kind: 'date', values: data.start },
    end_date: { kind: 'date', values: data.end },
    compared: { values: data.horse.map(() => ['after to before', 'before to before'][Math.floor(1.1 * uniform())]) },
    shod: {
      kind: 'boolean',
      values: Float64Array.from(data.shod, (word) => (word === '' ? Number.NaN : Number(word === 'shod'))),
    },
    farrier: { values: data.farrier },
    therapeutic: { kind: 'boolean', values: Float64Array.from(data.horse, () => Number(uniform() < 0.03)) },
    wall_level_start_mm: { unit: 'mm', values: start, error: start.map(() => 1 + below(3) / 10) },
    wall_level_end_mm: {
      unit: 'mm',
      values: end.map((value) => (uniform() < 0.03 ? Number.NaN : value)),
      error: end.map(() => 1.25),
    },
  };
}

/** What `intervalData` makes of a herd whose intervals these are. */
function dataOf(table: Columns): IntervalData {
  const { compared, leftOut, ...rows } = intervalRows(plainTable(table), asked);
  expect(compared.filter((words) => words === 'after to before').length).toBeGreaterThanOrEqual(20);
  const kept = [...compared.keys()].filter((row) => compared[row] === 'after to before');
  const taken = Object.entries(rows).map(([name, values]) => [
    name,
    values instanceof Float64Array
      ? Float64Array.from(kept, (row) => values[row])
      : Array.isArray(values)
        ? kept.map((row) => values[row])
        : values,
  ]);
  return {
    ...(Object.fromEntries(taken) as typeof rows),
    compared: 'after to before',
    leftOut: { ...leftOut, otherMoments: compared.length - kept.length },
  };
}

/** Some rows of a table. */
function taken(table: Columns, rows: readonly number[]): Columns {
  return Object.fromEntries(
    Object.entries(table).map(([name, { values, error, ...about }]) => [
      name,
      {
        ...about,
        values:
          values instanceof Float64Array
            ? Float64Array.from(rows, (row) => values[row])
            : rows.map((row) => values[row]),
        ...(error && { error: Float64Array.from(rows, (row) => error[row]) }),
      },
    ]),
  );
}

const rowsOf = (table: Columns) => [...table.limb.values.keys()];
const inventedTable = (options: Invented, more: Partial<IntervalData> = {}) =>
  tableOf({ ...invented(options), ...more });
const summed = (table: Columns, options: Partial<IntervalSumsOptions> = {}) =>
  new IntervalSums({ ...asked, ...options }).add(table);

function words(fit: IntervalSumsFit | IntervalFit, about: IntervalData | IntervalSumsFit): string[] {
  return [
    effectSentence(fit, about, units),
    betweenSentence(fit, about, units),
    errorSentence(fit, about, units),
    modelSentence(fit, about),
    singularSentence(fit),
  ];
}

/** The same answer from sums as from the rows, and the same words. */
function expectSame(sums: IntervalSums, data: IntervalData, ownSlopes = false): void {
  const [ours, theirs] = [sums.answer({ ownSlopes }), intervalModel(data, { ownSlopes, draws: 9 })];
  if (ours.kind === 'too little' || theirs.kind === 'too little') {
    expect(ours).toEqual(theirs);
    return;
  }
  expect(words(ours, ours)).toEqual(words(theirs, data));
  for (const key of ['design', 'n', 'missing', 'singular', 'dropped'] as const) expect(ours[key]).toEqual(theirs[key]);
  expect(ours.leftOut).toEqual(data.leftOut);
  expect(ours.horses).toBe(new Set(Array.from(theirs.rows, (row) => data.horse[row])).size);
  expect(ours.terms.map(({ term }) => term)).toEqual(theirs.terms.map(({ term }) => term));
  for (const [i, { estimate, se, df, p }] of theirs.terms.entries()) {
    expect(Math.abs(ours.terms[i].estimate - estimate)).toBeLessThan(1e-7 * se);
    expect(Math.abs(ours.terms[i].se / se - 1)).toBeLessThan(1e-7);
    expect(Math.abs(ours.terms[i].df / df - 1)).toBeLessThan(1e-5);
    expect(Math.abs(ours.terms[i].p - p)).toBeLessThan(1e-6);
  }
  expect(ours.random.map(({ by, term }) => [by, term])).toEqual(theirs.random.map(({ by, term }) => [by, term]));
  for (const [i, { sd }] of theirs.random.entries()) expect(Math.abs(ours.random[i].sd - sd)).toBeLessThan(1e-5);
  expect(Object.keys(termTable(ours, ours))).toEqual(Object.keys(termTable(data, theirs)));
}

describe('sums of intervals', () => {
  const some = (word: string, share: number) => (_: unknown, i: number) =>
    i % 100 < share * 100 ? '' : word + (i % 2);
  const yard = invented({ horses: 14, visits: 7, limbs: ['LF', 'RF', 'LH'] });
  it.each<[string, Columns, Partial<IntervalSumsOptions>]>([
    ['a yard', tableOf(yard), {}],
    ['feet of one limb', inventedTable({ horses: 12, limbs: ['LF'] }), {}],
    ['a few farriers', inventedTable({ farriers: 3, horses: 12 }), { circumstances: ['farrier', 'season', 'shod'] }],
    ['one farrier', inventedTable({ farriers: 1, horses: 12 }), { circumstances: ['season', 'shod', 'farrier'] }],
    [
      'shoeing that is known for most',
      tableOf({ ...yard, shod: yard.shod.map((word, i) => (i % 9 === 0 ? '' : word)) }),
      {},
    ],
    [
      'shoeing that few rows know',
      tableOf({ ...yard, shod: yard.shod.map((word, i) => (i % 3 === 0 ? '' : word)) }),
      {},
    ],
    [
      'shoeing that few know and farriers that most know',
      tableOf({
        ...yard,
        shod: yard.shod.map((word, i) => (i % 3 === 0 ? '' : word)),
        farrier: yard.farrier.map(some('farrier ', 0.1)),
      }),
      { circumstances: ['season', 'shod', 'farrier'] },
    ],
    ['shoeing that nobody knows', tableOf({ ...yard, shod: yard.shod.map(() => '') }), {}],
    ['too few horses', inventedTable({ horses: 2, visits: 15 }), {}],
  ])('of %s give the answer of the rows in the same words', (_, table, options) => {
    const without = options.circumstances?.includes('farrier')
      ? table
      : { ...table, farrier: { values: yardless(table) } };
    expectSame(summed(without, options), dataOf(without));
    expectSame(summed(without, options), dataOf(without), true);
  });
  const yardless = (table: Columns) => rowsOf(table).map(() => '');

  it('say why nothing can be said where no interval is longer, and where terms are too many', () => {
    const same = tableOf({ ...yard, end: yard.start.map((day) => day + 42) });
    expect(summed(same).answer()).toMatchObject({ reason: expect.stringMatching(/same number of days/) });
    const few = inventedTable({ horses: 6, visits: 2, limbs: ['LF'] });
    expect(summed(few).answer()).toMatchObject({
      reason: expect.stringMatching(/^There are \d+ intervals of \d horses to go by; at least 20/),
    });
    const small = invented({ horses: 4, visits: 2, limbs: ['LF', 'RF', 'LH', 'RH'] });
    const many = tableOf({ ...small, farrier: small.farrier.map((_, i) => `f${i}`) }, 4);
    const answer = summed(many, { circumstances: ['farrier'] }).answer();
    expect(answer).toMatchObject({ reason: expect.stringMatching(/numbers that the model has to find/) });
    const both = { ...many, end_date: { ...many.start_date, values: small.start.map((day) => day + 42) } };
    expect(summed(both, { circumstances: ['farrier'] }).answer()).toMatchObject({
      reason: expect.stringMatching(/same number of days/),
    });
    expect(new IntervalSums(asked).answer()).toMatchObject({
      reason: expect.stringMatching(/^There are 0 intervals of 0 horses/),
    });
  });

  it('give the same bytes and the same answer whatever the parts and their order', () => {
    const table = tableOf({ ...yard, shod: yard.shod.map((word, i) => (i % 8 === 0 ? '' : word)) });
    const rows = rowsOf(table);
    const whole = summed(table);
    const expected = whole.answer();
    fc.assert(
      fc.property(
        fc.shuffledSubarray(rows, { minLength: rows.length }),
        fc.array(fc.nat(2), { minLength: rows.length, maxLength: rows.length }),
        fc.boolean(),
        (order, part, sent) => {
          const [one, two, three] = [0, 1, 2].map((which) =>
            summed(
              taken(
                table,
                order.filter((row) => part[row] === which),
              ),
            ),
          );
          const together = two.merge(sent ? IntervalSums.load(three.save()) : three).merge(one);
          expect(Buffer.from(together.save()).equals(Buffer.from(whole.save()))).toBe(true);
          expect(together.answer()).toEqual(expected);
          expect(IntervalSums.load(together.save()).answer()).toEqual(expected);
        },
      ),
      { numRuns: 15 },
    );
  });

  it('of pieces of the demo herd, horse by horse, give the answer of the herd', () => {
    const read = (name: string) =>
      readTable(readFileSync(new URL(`../../data/${name}.csv`, import.meta.url), 'utf8'), { file: name }).columns;
    const [feet, visits] = [read('feet'), read('visits')];
    const { farrier: _, ...withoutFarriers } = visits;
    const whole = herd({ feet, visits: withoutFarriers });
    const sums = new IntervalSums(asked);
    // Errors are worked out from the repeats of all: the pieces are cut from the intervals and not from the readings.
    const sheet = intervalSheet(whole, [asked.outcome]);
    const table = Object.fromEntries(sheet.names.map((name) => [name, sheet.column(name)])) as Columns;
    const horse = sheet.column('horse_id').values as readonly string[];
    for (const name of new Set(horse))
      sums.add(
        taken(
          table,
          [...horse.keys()].filter((row) => horse[row] === name),
        ),
      );
    const data = intervalData(whole, asked);
    expect(data.horse.length).toBeGreaterThan(300);
    expectSame(sums, data);
    expect(sums.save()).toEqual(new IntervalSums(asked).add(sheet).save());
  });

  it('of files that were written and read again give the same, but for the errors, which files lack', () => {
    const table = tableOf({ ...yard, farrier: yard.farrier.map(() => '') });
    const [known, unknown] = [0, 1].map((part) =>
      taken(
        table,
        rowsOf(table).filter((row) => (row % 9 === 0) === (part === 1)),
      ),
    );
    const blank = { values: rowsOf(unknown).map(() => '') };
    const files = [known, { ...unknown, shod: blank, wall_level_end_mm: blank }, unknown];
    const [direct, read] = [(file: Columns) => file, (file: Columns) => readTable(writeTable(file)).columns].map(
      (way) => files.reduce((sums, file) => sums.add(way(file)), new IntervalSums(asked)).answer(),
    ) as IntervalSumsFit[];
    expect(direct.leftOut.unmeasured).toBeGreaterThan(unknown.limb.values.length);
    expect(direct.smallestChange).toBeGreaterThan(0);
    expect(read).toEqual({ ...direct, smallestChange: Number.NaN });
  });

  it('refuse another question, another unit, columns that are not there, and other bytes', () => {
    const table = tableOf(yard);
    const sums = summed(table);
    expect(() => sums.merge(new IntervalSums({ ...asked, size: false }))).toThrow(/can't be added to them/);
    expect(() => sums.merge(sums)).toThrow(/every row would count twice/);
    const inches = { ...table, wall_level_start_mm: { ...table.wall_level_start_mm, unit: '[in_i]' } };
    expect(() => sums.add(inches)).toThrow(/wall_level_mm is in \[in_i\] here and was in mm before/);
    const { compared: _, ...less } = table;
    expect(() => summed(less)).toThrow(/no column compared/);
    expect(() => summed({ ...table, start_date: { values: yard.horse } })).toThrow(
      /start_date must hold numbers or days/,
    );
    expect(() => summed({ ...table, horse_id: table.start_date })).toThrow(
      /horse_id must hold text, and it holds dates/,
    );
    const bytes = sums.save();
    for (const broken of [new Uint8Array(3), bytes.slice(0, -1), bytes.slice(8)])
      expect(() => IntervalSums.load(broken)).toThrow(/no saved sums/);
    const written = new IntervalSums({ circumstances: ['shod', 'season'], outcome: asked.outcome, size: true });
    expect(written.merge(sums).save()).toEqual(bytes);
  });
});
