import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readTable } from '../../lib/files/readTable.ts';
import { builtInRanges } from '../../lib/hoof/ranges.ts';
import { rangesFromColumns } from '../../lib/hoof/rangeTable.ts';
import { generatedDocs } from '../../scripts/makeDocs.ts';

const file = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');

it.each(Object.entries(generatedDocs()))('%s is what the rows give afresh', (path, text) => {
  expect(file(path)).toBe(text);
});

it('the file of ranges reads back to the built-in ranges', () => {
  const { ranges, problems } = rangesFromColumns(readTable(file('data/ranges.csv'), { file: 'ranges.csv' }).columns);
  expect(problems).toEqual([]);
  expect(JSON.parse(JSON.stringify([...ranges]))).toEqual(JSON.parse(JSON.stringify([...builtInRanges])));
});
