import { dayMs } from '../sheet/days.ts';

/** A whole day in a calendar. */
export interface CalendarDay {
  /** Days since 1970-01-01. */
  readonly date: number;
  readonly title: string;
  readonly description?: string;
  /** What tells this day from every other one; the same key gives the same identity, so that a second import replaces. */
  readonly key: string;
}

/**
 * Days as an iCalendar file: all-day events, lines of at most 75 octets, text escaped, CRLF at every end.
 * @param days  in any order
 * @param stamp  when the file was made, in milliseconds since 1970-01-01 UTC
 * @returns UTF-8 text
 * @throws TypeError for a day that has no date of four-digit years
 * @source RFC 5545: 3.1 folding, 3.3.11 escaping, 3.6.1 events, 3.8.4.7 identity, 3.8.7.2 stamp
 * @example calendar([{ date: 20454, title: 'Farrier', key: 'a' }], 0).includes('DTSTART;VALUE=DATE:20260101') // true
 */
export function calendar(days: readonly CalendarDay[], stamp: number): string {
  const made = new Date(stamp).toISOString().replace(/[-:]|\.\d+/g, '');
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Evenhoof//Hoof record//EN',
    'CALSCALE:GREGORIAN',
    ...days.flatMap(({ date, title, description, key }) => [
      'BEGIN:VEVENT',
      `UID:${identity(key)}@evenhoof.invalid`,
      `DTSTAMP:${made}`,
      `DTSTART;VALUE=DATE:${basicDate(date)}`,
      `DTEND;VALUE=DATE:${basicDate(date + 1)}`,
      `SUMMARY:${escaped(title)}`,
      ...(description === undefined ? [] : [`DESCRIPTION:${escaped(description)}`]),
      // Nobody is busy all day because of it.
      'TRANSP:TRANSPARENT',
      'END:VEVENT',
    ]),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function basicDate(day: number): string {
  const date = new Date(day * dayMs);
  const year = date.getUTCFullYear();
  if (!(year >= 0 && year <= 9999)) throw new TypeError(`A day of four-digit years was expected, found ${day}`);
  return date.toISOString().slice(0, 10).replaceAll('-', '');
}

/** Backslash, semicolon, comma and line ends stand for themselves only behind a backslash; other control signs may not stand. */
function escaped(text: string): string {
  return (
    text
      .replace(/[\\;,]/g, '\\$&')
      .replace(/\r\n|\r|\n/g, '\\n')
      // biome-ignore lint/suspicious/noControlCharactersInRegex: those are what may not stand in text
      .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '')
  );
}

/** Lines of at most 75 octets; the rest follows behind a space, and no character is torn. */
function folded(line: string): string {
  const encoder = new TextEncoder();
  let [text, octets] = ['', 0];
  for (const sign of line) {
    const size = encoder.encode(sign).length;
    if (octets + size > 75) {
      text += '\r\n ';
      octets = 1;
    }
    text += sign;
    octets += size;
  }
  return text;
}

/** 64 bits of a text, twice Fowler, Noll and Vo's hash from unlike starts. */
function identity(key: string): string {
  const hash = (start: number) => {
    let h = start;
    for (const byte of new TextEncoder().encode(key)) h = Math.imul(h ^ byte, 0x01000193);
    return (h >>> 0).toString(16).padStart(8, '0');
  };
  return hash(0x811c9dc5) + hash(0x9747b28c);
}
