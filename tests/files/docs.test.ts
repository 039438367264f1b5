import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { matchHeading } from '../../lib/files/headings.ts';
import { isMissing } from '../../lib/files/missingWords.ts';
import { parseDate } from '../../lib/files/parseDate.ts';
import { parseQuantity } from '../../lib/files/parseQuantity.ts';
import { schemas } from '../../lib/files/schemas.ts';
import { contextOf, understoodWord } from '../../lib/hoof/context.ts';
import { parseLimb } from '../../lib/hoof/limbs.ts';

const docs = readFileSync(new URL('../../docs/files.md', import.meta.url), 'utf8');

/** What stands in backticks in the part of a bullet up to `end`. */
function examples(bullet: string, end = '\n'): string[] {
  const start = docs.indexOf(`- **${bullet}**`);
  const part = docs.slice(start, docs.indexOf(end, start + bullet.length + 6));
  expect(start).toBeGreaterThan(0);
  return [...part.matchAll(/`([^`]+)`/g)].map(([, example]) => example);
}

describe('docs/files.md', () => {
  it('names headings that are understood', () => {
    const headings = examples('Headings');
    expect(headings.length).toBeGreaterThan(4);
    for (const heading of headings) expect(matchHeading(heading, schemas.feet)?.column.name).toMatch(/^(toe|medial)/);
  });

  it('names limbs, numbers, dates and words that are understood', () => {
    for (const limb of examples('Limbs').flatMap((words) => (words.startsWith('LF RF') ? words.split(' ') : words)))
      expect([limb, parseLimb(limb)]).not.toContain(undefined);
    for (const number of examples('Numbers', 'A decimal comma'))
      expect(parseQuantity(number, '.')).toHaveProperty('value');
    for (const date of examples('Dates', 'where the whole column'))
      expect([date, parseDate(date)]).not.toContain(undefined);
    for (const word of examples('Missing')) expect([word, isMissing(word)]).toEqual([word, true]);
    for (const word of examples('Yes and no')) expect(understoodWord(contextOf('shod')!, word)).toMatch(/^(yes|no)$/);
  });
});
