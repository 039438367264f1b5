import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { daysFromIso, isoFromDays } from '../../lib/sheet/days.ts';

describe('dates as days', () => {
  test('count from 1970', () => {
    expect(daysFromIso('1970-01-01')).toBe(0);
    expect(daysFromIso('2026-01-01')).toBe(20454);
    expect(daysFromIso('2024-03-01') - daysFromIso('2024-02-28')).toBe(2);
    expect(daysFromIso('1969-12-31')).toBe(-1);
    expect(isoFromDays(20454)).toBe('2026-01-01');
    expect(isoFromDays(20454.9)).toBe('2026-01-01');
    expect(isoFromDays(Number.NaN)).toBe('');
  });

  test.each(['2026-02-30', '2026-13-01', '2026-1-1', '01/02/2026', '2026-01-01T00:00', '', 'soon', '20260101'])(
    '%j is no date',
    (text) => {
      expect(daysFromIso(text)).toBeNaN();
    },
  );

  test('there and back is the same day', () => {
    fc.assert(
      fc.property(fc.integer({ min: -700_000, max: 2_900_000 }), (day) => {
        expect(daysFromIso(isoFromDays(day))).toBe(day);
      }),
    );
  });
});
