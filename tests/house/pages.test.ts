import { expect, test } from 'vitest';
import { pages } from '../../notebooks/index.ts';
import { filesIn } from './sources.ts';

const fileOf = (name: string) => `notebooks/${name.replace(/-(\w)/g, (_, letter) => letter.toUpperCase())}.ts`;

test('every page of notebooks is listed, and every page listed stands in the file of its name', () => {
  const files = filesIn('notebooks', /\.ts$/).filter((path) => /^notebooks\/[^/]+\.ts$/.test(path));
  expect(pages.map(({ name }) => fileOf(name)).sort()).toEqual(
    files.filter((path) => path !== 'notebooks/index.ts').sort(),
  );
});

test('pages have names of their own that can stand in an address', () => {
  const names = pages.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  for (const name of names) expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
  expect(names).not.toContain('index');
});

test('every page asks one question', () => {
  for (const { question } of pages) expect(question).toMatch(/^[^\n]+\?$/);
});

test('the cautions come last, where every page links to them', () => {
  expect(pages.at(-1)?.name).toBe('cautions');
});
