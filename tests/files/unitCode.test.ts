import { expect, test } from 'vitest';
import { unitCode, unitOfName } from '../../lib/files/unitCode.ts';

test('a unit is read as people write it, in one or many', () => {
  expect(['mm', 'Inches', 'inch', 'degree', 'Degrees', '°', '”', 'kg.', 'week'].map(unitCode)).toEqual([
    ...['mm', '[in_i]', '[in_i]', 'deg', 'deg', 'deg', '[in_i]', 'kg', 'wk'],
  ]);
});

test('a letter that is no unit is none with an s at its end either', () => {
  expect(['C', 'u', 'n', 'p', 'da'].map(unitCode)).toEqual(Array(5).fill(undefined));
  expect(unitOfName('class (C)')).toBe('1');
});
