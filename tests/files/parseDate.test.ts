import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isSerialDay, parseDate } from '../../lib/files/parseDate.ts';
import { isoFromDays } from '../../lib/sheet/days.ts';

function read(text: string): string {
  const reading = parseDate(text);
  if (reading === undefined) return 'no date';
  const { dmy, mdy } = reading;
  return dmy === mdy ? isoFromDays(dmy) : `${isoFromDays(dmy) || 'none'} or ${isoFromDays(mdy) || 'none'}`;
}

describe('parseDate', () => {
  it.each([
    ['2026-03-09', '2026-03-09'],
    ['2026/3/9', '2026-03-09'],
    ['2026.03.09', '2026-03-09'],
    ['20260309', '2026-03-09'],
    ['2026-03-09T23:59:59+02:00', '2026-03-09'],
    ['2026-03-09 10:15', '2026-03-09'],
    ['9 Mar 2026', '2026-03-09'],
    ['9-Mar-26', '2026-03-09'],
    ['9th of March, 2026', '2026-03-09'],
    ['Mar 9, 2026', '2026-03-09'],
    ['March 9 2026', '2026-03-09'],
    ['Mon 9 March 2026', '2026-03-09'],
    ['2026 March 9', '2026-03-09'],
    ['29 Feb 2024', '2024-02-29'],
  ])('reads %s, whatever the order', (text, iso) => {
    expect(read(text)).toBe(iso);
  });

  it.each([
    ['03/04/2026', '2026-04-03 or 2026-03-04'],
    ['3.4.26', '2026-04-03 or 2026-03-04'],
    ['3-4-2026', '2026-04-03 or 2026-03-04'],
    ['25/03/2026', '2026-03-25 or none'],
    ['3/25/2026 10:15 AM', 'none or 2026-03-25'],
    ['07/07/2026', '2026-07-07'],
  ])('reads %s in both orders', (text, both) => {
    expect(read(text)).toBe(both);
  });

  it.each([
    '',
    '30 Feb 2026',
    '31/02/2026',
    '2026-13-01',
    '45/45/2026',
    'yesterday',
    '3/2026',
    '9 Mar',
    '5/6/98',
    '46090',
    '1/2-2026',
  ])('makes no date of “%s”', (text) => {
    expect(read(text)).toBe('no date');
  });

  it('reads every day as it is written, in every form', () => {
    fc.assert(
      fc.property(fc.integer({ min: -25_567, max: 47_481 }), (days) => {
        const [year, month, day] = isoFromDays(days).split('-');
        expect(parseDate(`${year}-${month}-${day}`)).toEqual({ dmy: days, mdy: days });
        expect(parseDate(`${day}/${month}/${year}`)?.dmy).toBe(days);
        expect(parseDate(`${month}/${day}/${year}`)?.mdy).toBe(days);
        const name = new Date(days * 86_400_000).toLocaleDateString('en-GB', { month: 'long', timeZone: 'UTC' });
        expect(parseDate(`${Number(day)} ${name} ${year}`)).toEqual({ dmy: days, mdy: days });
      }),
    );
  });

  it('answers for any text, at once', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(...'0123456789/-. marth'), maxLength: 80 })),
        (text) => {
          const reading = parseDate(text);
          if (reading) expect(Number.isNaN(reading.dmy) && Number.isNaN(reading.mdy)).toBe(false);
        },
      ),
      { numRuns: 3000 },
    );
  });
});

describe('isSerialDay', () => {
  it('knows a spreadsheet’s day number when it sees one', () => {
    expect(['46090', '46090.5', ' 36526 '].map(isSerialDay)).toEqual([true, true, true]);
    expect(['52', '20260309', '4609O', '99999'].map(isSerialDay)).toEqual([false, false, false, false]);
  });
});
