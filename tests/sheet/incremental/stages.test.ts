import { describe, expect, test } from 'vitest';
import { type ColumnInput, type TextColumn, toColumn } from '../../../lib/sheet/column.ts';
import { parse } from '../../../lib/sheet/formula/parse.ts';
import { summaries } from '../../../lib/sheet/formula/summaries.ts';
import { Engine } from '../../../lib/sheet/incremental/engine.ts';
import { GroupsStage, listed } from '../../../lib/sheet/incremental/groupsStage.ts';
import { InputStage } from '../../../lib/sheet/incremental/inputStage.ts';
import { changedRows, many, numberBefore, numbersOf, type Stage } from '../../../lib/sheet/incremental/stage.ts';
import { readingOf, SummaryStage } from '../../../lib/sheet/incremental/summaryStage.ts';
import type { Relation } from '../../../lib/sheet/relation.ts';

const opposite: Relation = {
  name: 'opposite',
  words: 'the other’s',
  match: ['horse'],
  swap: { limb: { LF: 'RF', RF: 'LF' } },
};
const limbs = ['LF', 'RF', 'LH', 'RH'];

/** Sixteen horses with four feet each; a number is its row. */
function herd() {
  const of = <T>(value: (row: number) => T) => Array.from({ length: 64 }, (_, row) => value(row));
  const columns: Record<string, ColumnInput> = {
    horse: { values: of((row) => `h${Math.floor(row / 4)}`) },
    limb: { values: of((row) => limbs[row % 4]) },
    toe: { values: Float64Array.from(of((row) => row)) },
    heel: { values: Float64Array.from(of((row) => 100 - row)) },
    note: { values: of((row) => ['', 'bar', 'egg'][row % 3]) },
  };
  const inputs = new Map(Object.entries(columns).map(([name, input]) => [name, new InputStage(toColumn(input))]));
  const stage = (name: string) => inputs.get(name)!;
  const site = {
    rows: 64,
    names: [...inputs.keys()],
    relations: [opposite],
    stage,
    column: (name: string) => stage(name).column,
  };
  const engine = new Engine(site);
  const formula = (text: string) => {
    const made = engine.formula(parse(text));
    engine.refresh();
    return made;
  };
  engine.arrange(() => {
    for (const input of inputs.values()) engine.input(input);
  });
  const set = (name: string, row: number, cell: number | string | null) => {
    stage(name).write(row, cell);
    engine.refresh();
  };
  return { engine, formula, set, stage };
}

const rowsOf = ({ changes }: Stage) => (typeof changes === 'string' ? changes : [...new Set(Array.from(changes.rows))]);
const beforeOf = ({ changes }: Stage) => (typeof changes === 'string' ? changes : Array.from(changes.before));

describe('a column that is typed in', () => {
  const numbers = () => {
    const stage = new InputStage(toColumn({ values: Float64Array.of(1, 2, 3) }));
    stage.refresh();
    stage.fresh = false;
    return stage;
  };

  test('has nothing to say until something is written', () => {
    const stage = numbers();
    expect(stage.idle).toBe(true);
    stage.write(1, 5);
    expect(stage.idle).toBe(false);
    stage.refresh();
    expect(stage.idle).toBe(true);
  });

  test('says which rows changed and what stood there before the first of several changes', () => {
    const stage = numbers();
    stage.write(1, 5);
    stage.write(1, null);
    stage.write(0, 9);
    expect(stage.refresh()).toEqual({ rows: [1, 0], before: [2, 1] });
    expect([...(stage.column.values as Float64Array)]).toEqual([9, Number.NaN, 3]);
  });

  test('says nothing of what is as it was', () => {
    const stage = numbers();
    stage.write(1, 5);
    stage.write(1, 2);
    expect(stage.refresh()).toBe('none');
  });

  test('copies the array that came in once', () => {
    const stage = numbers();
    stage.write(0, 4);
    const { values } = stage.column;
    stage.write(1, 5);
    expect(stage.column.values).toBe(values);
  });

  test('tells text by its codes, new words included', () => {
    const stage = new InputStage(toColumn({ values: ['a', '', 'b'] }));
    stage.refresh();
    stage.write(0, 'c');
    stage.write(1, 'b');
    stage.write(2, null);
    expect(stage.refresh()).toEqual({ rows: [0, 1, 2], before: [0, -1, 1] });
    expect(stage.column.values).toEqual(['c', 'b', '']);
    stage.write(0, 'a');
    stage.refresh();
    expect(stage.column.values).toEqual(['a', 'b', '']);
  });
});

describe('rows by group', () => {
  test('are listed in order, those without a code left out', () => {
    const { starts, rows } = listed(Int32Array.of(-1, 1, 0, 1, -1), 3);
    expect([...starts]).toEqual([0, 1, 3, 3]);
    expect([...rows]).toEqual([2, 1, 3]);
  });

  test('follow their keys', () => {
    const key = new InputStage(toColumn({ values: ['a', 'b', 'a', 'c'] }));
    const groups = new GroupsStage([key], 4);
    groups.refresh();
    expect([0, 1, 2].map((group) => [...groups.members(group)])).toEqual([[0, 2], [1], [3]]);
    key.write(0, 'c');
    key.refresh();
    expect(groups.refresh()).toBe('all');
    expect([0, 1, 2].map((group) => [...groups.members(group)])).toEqual([[0, 3], [1], [2]]);
  });
});

describe('a formula', () => {
  test('is computed again in the rows that changed, and says what stood there', () => {
    const { formula, set } = herd();
    const sum = formula('toe + heel * 2');
    set('toe', 5, 50);
    expect([rowsOf(sum), beforeOf(sum)]).toEqual([[5], [5 + 95 * 2]]);
    expect((sum.column.values as Float64Array)[5]).toBe(50 + 95 * 2);
    expect((sum.column.values as Float64Array)[6]).toBe(6 + 94 * 2);
  });

  test('that gives what it gave has not changed, and what rests on it neither', () => {
    const { formula, set } = herd();
    const [steep, count] = [formula('toe > 30'), formula('sum(toe > 30 ? 1 : 0, horse) + 1')];
    set('toe', 40, 41);
    expect([rowsOf(steep), rowsOf(count)]).toEqual(['none', 'none']);
    set('toe', 40, 3);
    expect([rowsOf(steep), rowsOf(count)]).toEqual([[40], [40, 41, 42, 43]]);
  });

  test('of text is told by its codes', () => {
    const { formula, set } = herd();
    const word = formula("toe > 30 ? note : 'low'");
    set('toe', 40, 3);
    expect([rowsOf(word), word.column.values[40], word.column.values[41]]).toEqual([[40], 'low', 'egg']);
    set('toe', 41, 2);
    set('note', 44, null);
    expect([rowsOf(word), word.column.values[44], word.column.values[41]]).toEqual([[44], '', 'low']);
    set('note', 44, 'new');
    expect([word.column.values[44], word.column.values[40]]).toEqual(['new', 'low']);
    set('note', 3, 'old');
    expect(rowsOf(word)).toBe('none');
    set('note', 45, 'bar');
    expect((word.column as TextColumn).levels.filter((level) => level === 'bar')).toHaveLength(1);
  });

  test('is computed over all rows where many changed', () => {
    const { engine, formula, stage } = herd();
    const sum = formula('toe + heel');
    for (let row = 0; row < 5; row++) stage('toe').write(row, 1000);
    engine.refresh();
    expect(rowsOf(sum)).toBe('all');
    expect([...(sum.column.values as Float64Array).subarray(3, 6)]).toEqual([1097, 1096, 100]);
  });

  test('is there once, and its values stay while others come and go', () => {
    const { engine, formula } = herd();
    const sum = formula('toe + heel');
    expect(formula('toe + heel')).toBe(sum);
    const { values } = sum.column;
    engine.arrange(() => {
      for (const text of ['toe + heel', 'toe - heel']) engine.formula(parse(text));
    });
    engine.refresh();
    expect(sum.changes).toBe('none');
    expect(sum.column.values).toBe(values);
  });
});

describe('what a relation leads to', () => {
  test('changes where the partner changed', () => {
    const { formula, set } = herd();
    const pair = formula('toe - opposite(heel)');
    expect((pair.column.values as Float64Array)[4]).toBe(4 - 95);
    set('heel', 5, 50);
    expect(rowsOf(pair)).toEqual([4]);
    expect((pair.column.values as Float64Array)[4]).toBe(4 - 50);
    set('heel', 6, 50);
    expect(rowsOf(pair)).toBe('none');
  });

  test('is found anew where a key changed', () => {
    const { formula, set } = herd();
    const [pair, word] = [formula('opposite(heel)'), formula('opposite(note)')];
    set('horse', 5, 'h2');
    // The feet 5 and 9 are both right front feet of h2 now.
    expect([4, 5, 8, 9].map((row) => pair.column.values[row])).toEqual([Number.NaN, 92, Number.NaN, 92]);
    expect([4, 5, 8, 9].map((row) => word.column.values[row])).toEqual(['', 'egg', '', 'egg']);
    set('horse', 5, 'h1');
    expect([4, 5, 8, 9].map((row) => pair.column.values[row])).toEqual([95, 96, 91, 92]);
  });
});

describe('a summary', () => {
  test.each([
    ['mean', 5, 50, (4 + 50 + 6 + 7) / 4],
    ['sum', 5, 50, 4 + 50 + 6 + 7],
    ['count', 5, null, 3],
    ['min', 4, 50, 5],
    ['max', 5, 50, 50],
    ['median', 5, 50, 6.5],
    ['sd', 5, null, Math.sqrt(7 / 3)],
  ] as const)('%s changes in the rows of its group', (name, row, cell, expected) => {
    const { formula, set } = herd();
    const summary = formula(`${name}(toe, horse) + 0`);
    const others = [...(summary.column.values as Float64Array)];
    set('toe', row, cell);
    expect(rowsOf(summary)).toEqual([4, 5, 6, 7]);
    const found = [...(summary.column.values as Float64Array)];
    for (const member of [4, 5, 6, 7]) expect(found[member]).toBeCloseTo(expected, 12);
    expect([...found.slice(0, 4), ...found.slice(8)]).toEqual([...others.slice(0, 4), ...others.slice(8)]);
  });

  test('goes by its own keys and share', () => {
    const { formula } = herd();
    const found = ['mean(toe, horse)', 'mean(toe, limb)', 'quantile(toe, 0, horse)', 'quantile(toe, 1, horse)'].map(
      (text) => (formula(`${text} + 0`).column.values as Float64Array)[0],
    );
    // Of 0 to 3; of 0, 4, …, 60.
    expect(found).toEqual([1.5, 30, 0, 3]);
  });

  test('that stays as it was changes no row', () => {
    const { formula, set } = herd();
    const low = formula('min(toe, horse) + 0');
    set('toe', 6, 7.5);
    expect(rowsOf(low)).toBe('none');
    expect(rowsOf(formula('quantile(toe, 0, horse) + 0'))).toBe('all');
  });

  test('of the whole table changes every row', () => {
    const { formula, set } = herd();
    const score = formula('toe - mean(toe)');
    set('toe', 0, 64);
    expect(rowsOf(score)).toBe('all');
    // 1 to 64 have the mean 32.5.
    expect((score.column.values as Float64Array)[1]).toBe(1 - 32.5);
  });

  test('moves with a key', () => {
    const { formula, set } = herd();
    const mean = formula('mean(toe, horse) + 0');
    set('horse', 4, 'h0');
    const values = mean.column.values as Float64Array;
    expect([values[0], values[4], values[5]]).toEqual([2, 2, 6]);
  });

  test('of nothing is missing, and of a first value that value', () => {
    const { formula, set } = herd();
    const [sum, mean] = [formula('sum(toe, horse) + 0'), formula('mean(toe, horse) + 0')];
    const found = () => [sum, mean].map((stage) => (stage.column.values as Float64Array)[4]);
    for (const row of [4, 5, 6, 7]) set('toe', row, null);
    expect(found()).toEqual([Number.NaN, Number.NaN]);
    set('toe', 6, 8);
    expect(found()).toEqual([8, 8]);
  });

  test('has all its digits back once a huge value has gone', () => {
    const { formula, set } = herd();
    const [sum, spread] = [formula('sum(toe, horse) + 0'), formula('sd(toe, horse) + 0')];
    const found = () => [sum, spread].map((stage) => (stage.column.values as Float64Array)[4]);
    const before = found();
    set('toe', 5, 1e60);
    expect(found()[0]).toBe(1e60);
    set('toe', 5, 5);
    expect(found()).toEqual(before);
  });

  test('that nothing is kept running for is worked out afresh', () => {
    const source = new InputStage(toColumn({ values: Float64Array.of(1, 2, 3) }));
    const groups = new GroupsStage([new InputStage(toColumn({ values: ['a', 'b', 'a'] }))], 3);
    const row = { ...summaries.find(({ name }) => name === 'sum')!, name: 'total' };
    const total = new SummaryStage(
      source,
      groups,
      readingOf(row, source, groups, Number.NaN, (_, make) => make()),
    );
    groups.refresh();
    expect(total.refresh()).toBe('all');
    expect([...total.result.values]).toEqual([4, 2]);
    total.fresh = false;
    source.write(1, 7);
    source.changes = source.refresh();
    groups.changes = 'none';
    expect(total.refresh()).toBe('all');
    expect([...total.result.values]).toEqual([4, 7]);
  });

  test('of text counts what is there', () => {
    const { formula, set } = herd();
    const count = formula('count(note, horse) + 0');
    // Rows 0 and 3 of the first four have no note.
    expect((count.column.values as Float64Array)[0]).toBe(2);
    set('note', 0, 'bar');
    expect((count.column.values as Float64Array)[1]).toBe(3);
    set('note', 1, null);
    expect((count.column.values as Float64Array)[1]).toBe(2);
  });
});

describe('changes', () => {
  test('are many from more than a sixteenth of the rows on', () => {
    expect([many(4, 64), many(5, 64)]).toEqual([false, true]);
  });

  test('of several columns are put together, each row once', () => {
    const changed = (changes: Stage['changes']) => ({ changes }) as Stage;
    const rows = (...all: number[]) => changed({ rows: all, before: [] });
    expect(changedRows([changed('none'), rows(3, 1), rows(1, 2)], 64)).toEqual([3, 1, 2]);
    expect(changedRows([], 64)).toEqual([]);
    expect(changedRows([rows(1), changed('all')], 64)).toBe('all');
    expect(changedRows([rows(1, 2, 3, 4, 5)], 64)).toBe('all');
    expect(changedRows([rows(1, 2, 3), rows(4, 5)], 64)).toBe('all');
    expect(changedRows([rows(1, 2, 3), rows(1, 2, 4)], 64)).toEqual([1, 2, 3, 4]);
  });

  test('of text are numbers, missing where the text is', () => {
    const words = toColumn({ values: ['a', '', 'b'] });
    expect([...numbersOf(words)]).toEqual([0, Number.NaN, 1]);
    expect([numberBefore(words, -1), numberBefore(words, 1)]).toEqual([Number.NaN, 1]);
    const numbers = toColumn({ values: Float64Array.of(-1) });
    expect(numbersOf(numbers)).toBe(numbers.values);
    expect(numberBefore(numbers, -1)).toBe(-1);
  });
});
