import * as Plot from '@observablehq/plot';
import { parseHTML } from 'linkedom';
import { expect, test } from 'vitest';
import type { Block } from '../../../lib/page/blocks.ts';
import { cautionOnPaper, cautions } from '../../../lib/page/cautions.ts';
import type { Page } from '../../../lib/page/page.ts';
import { htmlPage } from '../../../lib/page/render/html.tsx';
import { svg } from '../../../lib/views/svg.ts';
import { everyBlock, hostile } from '../everyBlock.ts';

const page: Page<string> = { name: 'every', title: 'Every block', question: 'Is it all there?', blocks: everyBlock };
const html = await htmlPage(page, { herd: '', source: 'from feet.csv', units: { length: 'in', mass: 'kg' } });
const { document } = parseHTML(html);

test('a page in one file fetches nothing and runs nothing', () => {
  expect(document.querySelectorAll('script, link, iframe, object, img').length).toBe(0);
  for (const element of document.querySelectorAll('*'))
    for (const { name } of element.attributes) expect(name).not.toMatch(/^on/);
  for (const link of document.querySelectorAll('a'))
    expect(link.getAttribute('href')).toMatch(/^(data:text|[\w-]+\.html)/);
});

test('title, question, source and cautions stand on it', () => {
  expect(document.querySelector('h1')?.textContent).toBe('Every block');
  expect(document.body.textContent).toContain('Is it all there?');
  expect(document.body.textContent).toContain('from feet.csv');
  for (const caution of cautions) expect(document.body.textContent).toContain(caution);
});

test('names that look like markup are shown as text', () => {
  expect(document.querySelector('h2')?.textContent).toBe(hostile);
  expect(document.querySelector('.still-sheet td')?.textContent).toContain(hostile);
  expect(html).not.toContain('<script>alert');
});

test('charts are drawn into it, named by title and summary, and silent inside', () => {
  const chart = document.querySelector('svg.plot')!;
  expect(chart.getAttribute('role')).toBe('img');
  expect(chart.getAttribute('aria-label')).toBe('Toes. Three dots that rise');
  expect(chart.querySelectorAll('circle').length).toBe(3);
  expect(chart.querySelectorAll('[aria-label], style').length).toBe(0);
});

test('linked charts are drawn as they are before anything is selected', () => {
  expect(document.querySelector('.linked svg .mark-rect')).not.toBeNull();
  expect(document.querySelector('.linked')?.textContent).toContain('Three bars');
  expect(document.querySelectorAll('.linked svg [role], .linked svg [aria-roledescription]').length).toBe(0);
});

test('the sheet is a table with units in its headings, missing said in words, the computed column marked', () => {
  const heads = [...document.querySelectorAll('.still-sheet th')].map(({ textContent }) => textContent);
  expect(heads).toEqual(['Horse', 'Toe length, in', '∴ worked out: Half of the toe, in']);
  const rows = [...document.querySelectorAll('.still-sheet tbody tr')].map((row) =>
    [...row.querySelectorAll('td')].map(({ textContent }) => textContent),
  );
  expect(rows[1]).toEqual(['Horse 1', '3.19', '1.59 ± 0.03']);
  expect(rows[2][2]).toBe('–missing');
});

test('controls say in words what they were set to, in the reader’s units', () => {
  const words = [...document.querySelectorAll('.control')].map(({ textContent }) => textContent);
  expect(words).toEqual([
    'Weeks: 6',
    'Gap: 1 in',
    'Shod only: yes',
    `Words: ${hostile}`,
    'Limb: right fore',
    'Limbs: left fore',
  ]);
});

test('a download travels inside its link', () => {
  expect(document.querySelector('a.download')?.getAttribute('href')).toBe('data:text/plain,a%2C%20b%20%26%20c');
});

test('what looks otherwise on paper stands on it both ways, and what doesn’t fit there is counted', async () => {
  const dot = (width: number) => ({ width, marks: [Plot.dot([1], { x: (x: number) => x })] });
  const drawing = (width: number) => svg('svg', { viewBox: '0 0 1 1', width, height: 10 });
  const blocks: Block[] = [
    {
      kind: 'group',
      layout: 'sheet of paper',
      blocks: [
        { kind: 'chart', name: 'one', title: 'One', summary: 'A dot.', options: dot(300), onPaper: dot(133) },
        { kind: 'form', name: 'long', title: 'Long', columns: ['Foot'], rows: [['LF'], ['RF'], ['LH']], onPaper: 1 },
        { kind: 'drawings', items: [{ title: 'LF', drawing: [drawing(30), drawing(20)] }] },
      ],
    },
  ];
  const html = await htmlPage({ ...page, blocks: () => blocks }, { herd: '' });
  const { document } = parseHTML(html);
  const widths = (part: string) =>
    [...document.querySelectorAll(`${part} .plot`)].map((plot) => plot.getAttribute('width'));
  expect(widths('.picture.unprinted')).toEqual(['300']);
  expect(widths('.picture.on-paper')).toEqual(['133']);
  expect(document.querySelectorAll('tbody tr.unprinted')).toHaveLength(2);
  expect(document.body.textContent).toContain('And 2 more, on the screen.');
  expect(document.querySelectorAll('.row svg')).toHaveLength(2);
  expect(document.querySelector('.rows')?.getAttribute('style')).toMatch(/--widest: ?58; ?--tallest: ?10/);
  expect(document.querySelector('.sheet-of-paper > .cautions')?.textContent).toBe(cautionOnPaper);
});
