import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calendar } from '../../lib/files/calendar.ts';
import { daysFromIso } from '../../lib/sheet/days.ts';

const stamp = Date.UTC(2026, 10, 25, 9, 5, 7, 123);
const day = (title: string, extra = {}) => ({ date: daysFromIso('2026-12-31'), title, key: title, ...extra });
/** Content lines, unfolded as a reader does (RFC 5545, 3.1). */
const lines = (text: string) => text.replaceAll('\r\n ', '').split('\r\n');
/** A text value read back (3.3.11). */
const unescaped = (text: string) => text.replace(/\\([\\;,nN])/g, (_, sign) => (/n/i.test(sign) ? '\n' : sign));
const value = (text: string, name: string) =>
  lines(text)
    .find((line) => line.startsWith(`${name}:`))
    ?.slice(name.length + 1);

describe('calendar', () => {
  it('writes what RFC 5545 requires of a calendar and of an event, each between its begin and end', () => {
    expect(lines(calendar([day('Farrier: Star')], stamp))).toEqual([
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'PRODID:-//Evenhoof//Hoof record//EN',
      'CALSCALE:GREGORIAN',
      'BEGIN:VEVENT',
      expect.stringMatching(/^UID:[0-9a-f]{16}@evenhoof\.invalid$/),
      'DTSTAMP:20261125T090507Z',
      'DTSTART;VALUE=DATE:20261231',
      // The end of an all-day event is the day after its last (3.6.1).
      'DTEND;VALUE=DATE:20270101',
      'SUMMARY:Farrier: Star',
      'TRANSP:TRANSPARENT',
      'END:VEVENT',
      'END:VCALENDAR',
      '',
    ]);
  });

  it('escapes backslash, semicolon, comma and line ends, and nothing else', () => {
    const text = calendar([day('a,b;c\\d\ne: "f"', { description: 'x\r\ny\rz' })], stamp);
    expect(value(text, 'SUMMARY')).toBe('a\\,b\\;c\\\\d\\ne: "f"');
    expect(value(text, 'DESCRIPTION')).toBe('x\\ny\\nz');
  });

  it('cannot be made to write another property or event by what a horse is called', () => {
    const text = calendar([day('Star\r\nEND:VEVENT\r\nBEGIN:VALARM\u0000')], stamp);
    expect(lines(text).filter((line) => line === 'END:VEVENT')).toHaveLength(1);
    expect(lines(text)).not.toContain('BEGIN:VALARM');
    expect(text).not.toContain('\u0000');
  });

  it('folds at 75 octets, tears no character, and reads back as it was (law)', () => {
    const texts = fc.oneof(
      fc.string({ unit: 'grapheme', maxLength: 200 }),
      fc.string({ maxLength: 300 }),
      fc.constant('🐴é'.repeat(60)),
    );
    fc.assert(
      fc.property(texts, (title) => {
        const text = calendar([day(title)], stamp);
        for (const line of text.split('\r\n')) {
          expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
          expect(line).not.toContain('\ufffd');
        }
        expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
        const kept = title
          .replace(/\r\n|\r/g, '\n')
          .replace(/[^\P{Cc}\t\n]/gu, (sign) => (sign > '\u007f' ? sign : ''));
        expect(unescaped(value(text, 'SUMMARY')!)).toBe(kept);
      }),
      { numRuns: 200 },
    );
  });

  it('fills lines to exactly 75 octets before it folds', () => {
    const [first, second] = calendar([day('x'.repeat(100))], stamp)
      .split('\r\n')
      .filter((line) => line.startsWith('SUMMARY') || line.startsWith(' '));
    expect(first).toHaveLength(75);
    expect(second).toBe(` ${'x'.repeat(100 - 67)}`);
  });

  it('gives the same identity for the same key and another for another', () => {
    const uid = (key: string) => value(calendar([day('a', { key })], stamp), 'UID');
    expect(uid('plan 1 Star')).toBe(uid('plan 1 Star'));
    expect(uid('plan 1 Star')).not.toBe(uid('plan 2 Star'));
    const many = new Set(Array.from({ length: 2000 }, (_, i) => uid(`plan ${i}`)));
    expect(many.size).toBe(2000);
  });

  it('refuses a day that no calendar has', () => {
    expect(() => calendar([day('a', { date: Number.NaN })], stamp)).toThrow(TypeError);
    expect(() => calendar([day('a', { date: 1e9 })], stamp)).toThrow(/four-digit years/);
    expect(lines(calendar([], stamp))).toHaveLength(6);
  });
});
