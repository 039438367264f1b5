import { type ColumnTable, desc, op, table } from 'arquero';
import { describe, expect, test } from 'vitest';
import { Sheet } from '../../lib/sheet/sheet.ts';

const feet = () =>
  Sheet.from({
    horse: { values: ['Ada', '', 'Bo', 'Bo'] },
    toe: { unit: 'deg', values: Float64Array.of(50, 52, Number.NaN, 48) },
    date: { kind: 'date', values: Float64Array.of(20000, 20000, 20042, 20042) },
  } as const).add({ name: 'doubled', formula: 'toe * 2' });

const arquero = (sheet: Sheet) => sheet.toArquero() as ColumnTable;
const sheetOf = (from: ColumnTable) => Sheet.fromArquero(from);

describe('toArquero', () => {
  test('shares the numbers, measured and computed, without a copy', () => {
    const sheet: Sheet = feet();
    const shared = sheet.toArquero();
    expect(shared.columnNames()).toEqual(['horse', 'toe', 'date', 'doubled']);
    for (const name of ['toe', 'date', 'doubled']) expect(shared.column(name)).toBe(sheet.column(name).values);
  });

  test('gives text through its dictionary, null for missing', () => {
    expect(feet().toArquero().array('horse')).toEqual(['Ada', null, 'Bo', 'Bo']);
    expect(feet().toArquero().get('horse', 2)).toBe('Bo');
    expect(feet().toArquero().column('horse')?.at(4)).toBeNull();
    expect([...(feet().toArquero().column('horse') as unknown as Iterable<unknown>)]).toEqual([
      'Ada',
      null,
      'Bo',
      'Bo',
    ]);
  });

  test('Arquero’s verbs work on it, missing numbers left out of its summaries', () => {
    const means = arquero(feet())
      .groupby('horse')
      .rollup({ mean: op.mean('toe'), n: op.valid('toe') })
      .orderby(desc('n'), 'mean')
      .objects();
    expect(means).toEqual([
      { horse: 'Bo', mean: 48, n: 1 },
      { horse: 'Ada', mean: 50, n: 1 },
      { horse: null, mean: 52, n: 1 },
    ]);
    const steep = arquero(feet()).filter((row: { toe: number }) => row.toe > 49);
    expect(steep.array('horse')).toEqual(['Ada', null]);
    expect(arquero(feet()).select('horse', 'toe').slice(0, 2).toCSV()).toBe('horse,toe\nAda,50\n,52\n');
  });

  test('columns of any name survive', () => {
    const sheet = Sheet.from(
      Object.fromEntries([['__proto__', { values: Float64Array.of(1) }]]) as Record<string, { values: Float64Array }>,
    );
    expect(sheet.toArquero().get('__proto__', 0)).toBe(1);
    expect(sheetOf(arquero(sheet)).names).toEqual(['__proto__']);
  });
});

describe('fromArquero', () => {
  test('and back is the same sheet over the same numbers', () => {
    const sheet: Sheet = feet();
    const back = sheetOf(arquero(sheet));
    expect(back.names).toEqual(sheet.names);
    expect(back.column('toe').values).toBe(sheet.column('toe').values);
    expect(back.column('horse').values).toEqual(sheet.column('horse').values);
    const blank = Sheet.from({ note: { values: ['', ''] } });
    expect(sheetOf(arquero(blank)).column('note').kind).toBe('text');
  });

  test('finds numbers, dates, yes/no and text; null and undefined are missing', () => {
    const sheet = sheetOf(
      table({
        number: [1, null, 2.5],
        day: [new Date('2026-01-01'), undefined, new Date('2026-01-31')],
        yes: [true, false, null],
        word: ['a', null, ''],
        mixed: [1, 'b', null],
        none: [null, null, null],
        big: [1n, 2n, null],
      }),
    );
    const kinds = sheet.names.map((name) => [name, sheet.column(name).kind, [...sheet.column(name).values]]);
    expect(kinds).toEqual([
      ['number', 'number', [1, Number.NaN, 2.5]],
      ['day', 'date', [20454, Number.NaN, 20484]],
      ['yes', 'boolean', [1, 0, Number.NaN]],
      ['word', 'text', ['a', '', '']],
      ['mixed', 'text', ['1', 'b', '']],
      ['none', 'number', [Number.NaN, Number.NaN, Number.NaN]],
      ['big', 'number', [1, 2, Number.NaN]],
    ]);
    expect(sheet.column('day').unit).toBe('d');
  });

  test('takes the rows as they are filtered and ordered', () => {
    const arranged = table({ x: Float64Array.of(3, 1, 2), w: ['c', 'a', 'b'] })
      .filter((row: { x: number }) => row.x > 1)
      .orderby('x');
    const sheet = sheetOf(arranged);
    expect([...sheet.column('x').values, ...sheet.column('w').values]).toEqual([2, 3, 'b', 'c']);
  });

  test('a text column of ours comes back even when filtered', () => {
    const sheet = sheetOf(arquero(feet()).filter((row: { date: number }) => row.date < 20042));
    expect(sheet.column('horse').values).toEqual(['Ada', '']);
  });

  test('the sheet computes on it, and setting a cell leaves the Arquero table alone', () => {
    const from = table({ x: Float64Array.of(1, 2) });
    const sheet = sheetOf(from).add({ name: 'y', formula: 'x * 10' }).set('x', 0, 5);
    expect([...(sheet.column('y').values as Float64Array)]).toEqual([50, 20]);
    expect(from.get('x', 0)).toBe(1);
  });
});
