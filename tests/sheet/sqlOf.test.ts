import { expect, test } from 'vitest';
import { Sheet } from '../../lib/sheet/sheet.ts';
import { sqlOf } from '../../lib/sheet/sqlOf.ts';

test('one SELECT gives the measured columns and the computed ones', () => {
  const sheet: Sheet = Sheet.from({
    horse: { values: ['Ada', 'Bo'] },
    a: { values: Float64Array.of(1, 2) },
  }).addAll([
    { name: 'off', formula: 'a - mean(a)' },
    { name: 'own', formula: 'a - mean(a, horse)' },
  ]);
  expect(sqlOf(sheet, 'feet').replace(/\s+/g, ' ')).toBe(
    'WITH "stage_1" AS ( SELECT "horse", "a", AVG("a") OVER () AS "part_1", AVG("a") OVER (PARTITION BY "horse") AS "part_2" FROM "feet" ) ' +
      'SELECT "horse", "a", ("a" - "part_1") AS "off", ("a" - "part_2") AS "own" FROM "stage_1"',
  );
});

test('rows are sorted by a stored column where one is named', () => {
  const sheet: Sheet = Sheet.from({ n: { values: Float64Array.of(1) } });
  expect(sqlOf(sheet, 'feet', 'n')).toMatch(/ORDER BY "n"$/);
});
