import { describe, expect, test } from 'vitest';
import { type Cell, cellAt, toCell } from '../../lib/sheet/cell.ts';
import { TextColumn, toColumn } from '../../lib/sheet/column.ts';

test('cellAt gives what stands there, null where nothing does', () => {
  const numbers = toColumn({ values: Float64Array.of(0, Number.NaN) });
  const words = TextColumn.from(['a', '']);
  expect([cellAt(numbers, 0), cellAt(numbers, 1), cellAt(words, 0), cellAt(words, 1)]).toEqual([0, null, 'a', null]);
});

describe('toCell', () => {
  test('takes what is of the column’s kind', () => {
    const given = [
      toCell('x', 'number', -1.5),
      toCell('x', 'date', 20000),
      toCell('x', 'boolean', 0),
      toCell('x', 'text', 'a'),
    ];
    expect(given).toEqual([-1.5, 20000, 0, 'a']);
    expect([toCell('x', 'number', Number.NaN), toCell('x', 'text', ''), toCell('x', 'date', null)]).toEqual([
      null,
      null,
      null,
    ]);
  });

  test('says what was found, a long text cut short and nothing else looked into', () => {
    const found = (value: unknown) => {
      try {
        return String(toCell('x', 'number', value as Cell));
      } catch (error) {
        return (error as TypeError).message.split('found ')[1];
      }
    };
    expect(found('5')).toBe('the text "5"');
    expect(found('y'.repeat(40))).toBe(`the text "${'y'.repeat(40)}"`);
    expect(found('y'.repeat(50))).toBe(`the text "${'y'.repeat(40)}…"`);
    expect([found([1]), found({}), found(() => 1), found(true)]).toEqual([
      'a list',
      'a value of type object',
      'a value of type function',
      'true',
    ]);
  });
});
