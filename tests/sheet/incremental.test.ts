import { describe, expect, test } from 'vitest';
import { FootSheet } from '../../lib/hoof/footSheet.ts';
import type { Cell } from '../../lib/sheet/cell.ts';
import type { Sheet } from '../../lib/sheet/sheet.ts';

/** The same numbers for the same seed, 0 to below 1. */
function dice(seed: number): () => number {
  let state = (seed + 1) * 2654435761;
  return () => {
    state = (state ^ (state << 13)) | 0;
    state ^= state >>> 17;
    state = (state ^ (state << 5)) | 0;
    return (state >>> 0) / 4294967296;
  };
}

const limbs = ['LF', 'RF', 'LH', 'RH'];

/** Of every sort: by the row, by groups, over the whole table, by partners, in chains, of text and of yes/no. */
const formulas: Readonly<Record<string, string>> = {
  under: 'toe - heel',
  ratio: 'toe / heel',
  steep: 'toe > 50',
  tilt: 'atan2(toe - heel, toe)',
  word: "steep ? limb : horse_id == 'h1' ? 'one' : 'other'",
  horse_mean: 'mean(toe, horse_id)',
  horse_sum: 'sum(under, horse_id)',
  limb_sd: 'sd(toe, limb)',
  limb_count: 'count(heel, limb, horse_id)',
  words: 'count(word)',
  herd_score: '(toe - mean(toe)) / sd(toe)',
  low: 'min(under, horse_id)',
  high: 'max(toe)',
  middle: 'median(toe, limb)',
  quarter: 'quantile(toe - heel, 0.25, horse_id)',
  all_quarter: 'quantile(toe, 0.25)',
  pair: 'toe - opposite(toe)',
  growth: 'toe - previous(toe)',
  days: 'date - previous(date)',
  pair_mean: 'mean(abs(pair), horse_id)',
  other_score: 'opposite(herd_score) + front_of(ratio)',
  by_word: 'mean(toe, word)',
  other_word: "opposite(word) == 'other' ? 1 : 0",
  odd: 'toe - horse_mean > 2 * sd(toe - horse_mean) ? high : coalesce(growth, 0)',
};

function herd(rows: number, random: () => number) {
  const cell = (low: number, high: number) => (random() < 0.05 ? Number.NaN : low + (high - low) * random());
  const sheet: Sheet = FootSheet.from({
    horse_id: { values: Array.from({ length: rows }, (_, row) => `h${Math.floor(row / 24)}`) },
    date: {
      kind: 'date',
      values: Float64Array.from({ length: rows }, (_, row) => 20000 + 42 * (Math.floor(row / 4) % 6)),
    },
    limb: { values: Array.from({ length: rows }, (_, row) => limbs[row % 4]) },
    toe: { unit: 'deg', values: Float64Array.from({ length: rows }, () => cell(45, 60)) },
    heel: { unit: 'deg', values: Float64Array.from({ length: rows }, () => cell(40, 55)) },
  });
  return sheet.addAll(Object.entries(formulas).map(([name, formula]) => ({ name, formula }))).beginHistory();
}

/** The same table, computed afresh. */
function afresh(sheet: Sheet): Sheet {
  const measured = sheet.names.filter((name) => sheet.describe(name).origin === 'measured');
  const columns = measured.map((name) => {
    const { kind, unit, values } = sheet.column(name);
    return [name, { kind, unit, values: values instanceof Float64Array ? values.slice() : [...values] }] as const;
  });
  const computed = sheet.names.filter((name) => !measured.includes(name));
  const made: Sheet = FootSheet.from(Object.fromEntries(columns));
  return made.addAll(computed.map((name) => ({ name, formula: sheet.describe(name).formula! })));
}

/** The largest relative difference between two columns of numbers; what is missing in one must be missing in both. */
function difference(a: Float64Array, b: Float64Array): number {
  let largest = a.length === b.length ? 0 : Number.POSITIVE_INFINITY;
  for (let row = 0; row < a.length; row++) {
    if (Number.isNaN(a[row]) !== Number.isNaN(b[row])) return Number.POSITIVE_INFINITY;
    const size = Math.max(Math.abs(a[row]), Math.abs(b[row]), 1);
    if (!Number.isNaN(a[row])) largest = Math.max(largest, Math.abs(a[row] - b[row]) / size);
  }
  return largest;
}

function expectSame(sheet: Sheet, tolerance = 1e-12) {
  const fresh = afresh(sheet);
  expect(sheet.names).toEqual(fresh.names);
  for (const name of sheet.names) {
    const { values } = sheet.column(name);
    const expected = fresh.column(name).values;
    if (values instanceof Float64Array)
      expect(difference(values, expected as Float64Array), name).toBeLessThanOrEqual(tolerance);
    else expect(values, name).toEqual(expected);
  }
}

describe('a sheet that was edited', () => {
  test.each(Array.from({ length: 12 }, (_, seed) => seed))('holds what one made afresh holds, seed %i', (seed) => {
    const random = dice(seed);
    const pick = <T>(from: readonly T[]) => from[Math.floor(random() * from.length)];
    const sheet = herd(480, random);
    const row = () => Math.floor(random() * sheet.rows);
    const value = (name: string): Cell => {
      if (random() < 0.1) return null;
      if (name === 'horse_id') return `h${Math.floor(random() * 12)}`;
      if (name === 'limb') return pick(limbs);
      if (name === 'date') return 20000 + 42 * Math.floor(random() * 8);
      return random() < 0.02 ? 1e15 : 40 + 20 * random();
    };
    const numbers = ['toe', 'heel', 'toe', 'heel', 'toe', 'heel', 'horse_id', 'limb', 'date'];
    const edits: (() => unknown)[] = [
      ...Array.from({ length: 12 }, () => () => {
        const name = pick(numbers);
        sheet.set(name, row(), value(name));
      }),
      () => sheet.fill('toe', [row(), row(), row()], value('toe')),
      () =>
        sheet.paste({
          row: 3,
          columns: ['toe', 'limb'],
          cells: [
            [value('toe'), 'LF'],
            [value('toe'), 'RF'],
          ],
        }),
      () => sheet.addRows([{ horse_id: 'h1', limb: 'LF', date: 20300, toe: 50 }], row()),
      () => sheet.removeRows([row()]),
      () => sheet.replace({ name: 'under', formula: pick(['toe - heel', 'heel - toe', 'toe + heel']) }),
      () => sheet.undo(),
      () => sheet.undo(),
      () => sheet.redo(),
    ];
    for (let step = 0; step < 150; step++) {
      pick(edits)();
      // Reading now and then lets changes gather in between.
      if (random() < 0.5) sheet.column('herd_score');
      if (step % 30 === 29) expectSame(sheet);
    }
    const [names, contents] = [[...sheet.names], () => sheet.names.map((name) => [...sheet.column(name).values])];
    const last = contents();
    while (sheet.undo());
    expectSame(sheet);
    while (sheet.redo());
    expect(sheet.names).toEqual(names);
    expect(contents().length).toBe(last.length);
    expectSame(sheet);
  });

  test('drifts by less than 1e-10 in 100,000 edits', () => {
    const random = dice(99);
    const sheet = herd(480, random);
    for (let edit = 0; edit < 100_000; edit++) {
      sheet.set(edit % 3 === 0 ? 'heel' : 'toe', Math.floor(random() * 480), 40 + 20 * random());
      if (edit % 10 === 0) sheet.column('herd_score');
    }
    expectSame(sheet, 1e-10);
  });

  test('has the very bits back after an undo', () => {
    const sheet = herd(480, dice(5));
    const bits = () => Object.keys(formulas).map((name) => [...sheet.column(name).values]);
    const before = bits();
    for (let row = 0; row < 480; row += 7) sheet.set('toe', row, row).column('odd');
    while (sheet.undo()) sheet.column('odd');
    expect(bits()).toEqual(before);
  });
});

describe('only what depends on a cell', () => {
  test('is computed again: other columns keep their arrays and values', () => {
    const sheet = herd(2400, dice(1));
    sheet.column('under');
    const ratio = sheet.column('ratio');
    const shown = sheet.column('days').values;
    sheet.set('toe', 5, 47);
    expect(sheet.column('days').values).toBe(shown);
    expect(sheet.column('ratio').values).toBe(ratio.values);
    expect(ratio.values[5]).toBe(47 / (sheet.column('heel').values[5] as number));
  });
});
