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
  expect(sqlOf(sheet, 'feet', { rowId: 'n' })).toMatch(/ORDER BY "n"$/);
});

test('only names, texts and dates are written differently for different engines', () => {
  const sheet: Sheet = Sheet.from({
    date: { kind: 'date', values: Float64Array.of(0) },
    ['a`b"c']: { values: ['x'] },
  }).add({ name: 'late', formula: `date > '1970-01-11' && column('a\`b"c') == 'it\\'s \\\\'` });
  const late = (dialect: 'standard' | 'duckdb' | 'trino' | 'spark') =>
    /\n {2}(.*) AS .late/.exec(sqlOf(sheet, 'feet', { dialect, dates: ['date'] }))?.[1];
  const quoted = `("a\`b""c" = 'it''s \\')`;
  expect(late('standard')).toBe(
    `(((1E0 * EXTRACT(DAY FROM ("date" - DATE '1970-01-01') DAY(7))) > 1E1) AND ${quoted})`,
  );
  expect(late('duckdb')).toBe(`(((1E0 * DATE_DIFF('day', DATE '1970-01-01', "date")) > 1E1) AND ${quoted})`);
  expect(late('trino')).toBe(late('duckdb'));
  expect(late('spark')).toBe(
    `(((1E0 * DATEDIFF(\`date\`, DATE '1970-01-01')) > 1E1) AND (\`a\`\`b"c\` = 'it\\'s \\\\'))`,
  );
});
