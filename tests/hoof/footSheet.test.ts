import { describe, expect, test } from 'vitest';
import { FootSheet } from '../../lib/hoof/footSheet.ts';
import { FormulaError } from '../../lib/sheet/formula/syntax.ts';
import { Sheet } from '../../lib/sheet/sheet.ts';

describe('FootSheet', () => {
  const feet = () =>
    FootSheet.from(
      {
        horse_id: { values: ['Ada', 'Ada', 'Ada', 'Ada', 'Ada'] },
        date: { kind: 'date', values: Float64Array.of(1, 1, 1, 1, 43) },
        limb: { values: ['LF', 'RF', 'LH', 'RH', 'LF'] },
        toe: { unit: 'deg', values: Float64Array.of(50, 52, 53, 54, 49) },
      },
      ['horse_id', 'date', 'limb'],
    );

  test('is a sheet whose formulas look at the other feet and at the visit before', () => {
    const sheet: Sheet = feet().addAll([
      { name: 'side', formula: 'toe - opposite(toe)' },
      { name: 'end', formula: 'hind_of(toe) - toe' },
      { name: 'back', formula: 'toe - front_of(toe)' },
      { name: 'drift', formula: '(toe - previous(toe)) / (date - previous(date))', unit: 'deg/wk' },
    ]);
    expect(sheet).toBeInstanceOf(Sheet);
    expect([...sheet.column('side').values]).toEqual([-2, 2, -1, 1, Number.NaN]);
    expect([...sheet.column('end').values]).toEqual([3, 2, Number.NaN, Number.NaN, Number.NaN]);
    expect([...sheet.column('back').values]).toEqual([Number.NaN, Number.NaN, 3, 2, Number.NaN]);
    expect(sheet.column('drift').values[4]).toBeCloseTo(-1 / 6, 14);
  });

  test('a relation’s missing column is named when a formula asks for it, and not before', () => {
    const sheet: Sheet = FootSheet.from({ toe: { unit: 'deg', values: Float64Array.of(50) } });
    expect(() => sheet.add({ name: 'x', formula: 'opposite(toe)' })).toThrow(FormulaError);
    expect(() => sheet.add({ name: 'x', formula: 'opposite(toe)' })).toThrow(/looks at the column horse_id/);
  });

  test('a column of the wrong kind is named when a formula asks for the relation', () => {
    const columns = { horse_id: { values: ['Ada'] }, toe: { unit: 'deg', values: Float64Array.of(50) } };
    const number = { values: Float64Array.of(1) };
    const text = { values: ['LF'] };
    const one: Sheet = FootSheet.from({ ...columns, date: number, limb: number });
    expect(() => one.add({ name: 'x', formula: 'opposite(toe)' })).toThrow('opposite goes by the words of limb');
    const two: Sheet = FootSheet.from({ ...columns, date: text, limb: text });
    expect(() => two.add({ name: 'x', formula: 'previous(toe)' })).toThrow('previous goes by the order of date');
  });

  test('comes from an Arquero table with its relations', () => {
    const sheet = FootSheet.fromArquero(feet().toArquero(), ['horse_id', 'date', 'limb']);
    expect(sheet).toBeInstanceOf(FootSheet);
    expect(sheet.keys).toEqual(['horse_id', 'date', 'limb']);
    expect([...sheet.add({ name: 'side', formula: 'toe - opposite(toe)' }).column('side').values]).toEqual([
      -2,
      2,
      -1,
      1,
      Number.NaN,
    ]);
  });
});

test('FootSheet.from() reads ISO texts in date as days, and leaves other texts alone', () => {
  const columns = { horse_id: { values: ['A', 'A'] }, limb: { values: ['LF', 'LF'] } };
  const angle = { unit: 'deg', values: Float64Array.of(50, 53) };
  const sheet = FootSheet.from({ ...columns, date: { values: ['2026-01-01', '2026-02-01'] }, toe_angle_deg: angle });
  sheet.add({ name: 'change', formula: 'toe_angle_deg - previous(toe_angle_deg)' });
  expect([...(sheet.column('change' as never) as { values: Float64Array }).values]).toEqual([Number.NaN, 3]);
  expect(FootSheet.from({ ...columns, date: { values: ['1.2.26', ''] } }).describe('date').kind).toBe('text');
});
