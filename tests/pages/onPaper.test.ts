import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { drawn, notebook, paperFile } from './browser.ts';

const site = notebook();
const csv = (name: string) => readFileSync(new URL(`../../data/${name}.csv`, import.meta.url), 'utf8');

/** Fonts as wide and as narrow as readers have them, whichever this machine has. */
const fonts = { wide: '* { letter-spacing: 0.06em !important }', narrow: '* { letter-spacing: -0.04em !important }' };

/** How many sheets of paper a page takes. */
async function sheets(page: Page, format: string, path?: string): Promise<number> {
  const paper = await page.pdf({ format, path });
  return paper.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}

/** Words that were cut at the end of the lines there is room for. */
const cut = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('main *')]
      .filter((element) => getComputedStyle(element).overflow === 'hidden' && element.checkVisibility())
      .filter(({ scrollHeight, clientHeight }) => scrollHeight > clientHeight + 2)
      .map(({ textContent }) => textContent),
  );

/** How many sheets every horse takes on the page that is open. */
async function everyHorse(page: Page, formats: readonly string[]): Promise<Record<string, number[]>> {
  const choice = page.locator('#blocks select').first();
  const found: Record<string, number[]> = {};
  for (const name of await choice.locator('option').allTextContents()) {
    await choice.selectOption(name);
    await page.locator('#feet').filter({ hasText: name }).waitFor();
    await drawn(page);
    found[name] = [];
    for (const format of formats)
      found[name].push(await sheets(page, format, paperFile(`${name.slice(0, 20)}-${format}`)));
  }
  return found;
}

const twoOf = (formats: readonly string[], found: object) =>
  Object.fromEntries(Object.keys(found).map((name) => [name, formats.map(() => 2)]));

describe('One horse on paper', () => {
  // Letter is the shorter, A4 the narrower.
  test.each([
    { language: '', font: fonts.wide, formats: ['A4', 'Letter'], how: 'in wide fonts' },
    { language: '', font: fonts.narrow, formats: ['Letter'], how: 'in narrow fonts' },
    { language: 'de/', font: fonts.wide, formats: ['A4', 'Letter'], how: 'in German' },
  ])(
    'takes two sheets for every horse $how',
    async ({ language, font, formats }) => {
      const { page } = await site.open(`${language}one-horse.html`, { bypassCSP: true });
      await page.addStyleTag({ content: font });
      const found = await everyHorse(page, formats);
      expect(Object.keys(found)).toHaveLength(24);
      expect(found).toEqual(twoOf(formats, found));
    },
    240_000,
  );

  test.each(['', 'de/'])(
    'takes two for a long name, one visit, four years of all that is measured (%s)',
    async (language) => {
      const { page } = await site.open(`${language}one-horse.html`, { bypassCSP: true });
      await page
        .locator('input[type=file]')
        .first()
        .setInputFiles([
          { name: 'feet.csv', mimeType: 'text/csv', buffer: Buffer.from(hardFeet()) },
          { name: 'horses.csv', mimeType: 'text/csv', buffer: Buffer.from(hardHorses()) },
        ]);
      await page.locator('.whose.own').waitFor();
      await page.addStyleTag({ content: fonts.wide });
      const found = await everyHorse(page, ['A4', 'Letter']);
      expect(Object.keys(found)).toHaveLength(hardNames.length);
      expect(found).toEqual(twoOf(['A4', 'Letter'], found));
    },
  );

  test('holds the feet of both comparisons and a line for each computed column, with nothing cut and no word below 7 pt', async () => {
    const { page } = await site.open('one-horse.html', { viewport: { width: 703, height: 1000 } });
    await page.locator('#blocks select').first().selectOption('Heron');
    await page.locator('#feet').filter({ hasText: 'Heron' }).waitFor();
    await page.emulateMedia({ media: 'print' });
    await drawn(page);
    await page.locator('.small svg.plot[width="133"]').last().waitFor();
    expect(await page.locator('.foot-over-time:visible').count()).toBe(24);
    expect(await page.locator('.small svg.plot:visible').count()).toBeGreaterThan(20);
    expect(await smallWords(page)).toEqual([]);
    expect(await cut(page)).toEqual([]);
  });
});

/** Words that stand smaller on paper than 7 pt. */
const smallWords = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('main :is(h1, h2, p, td, th, figcaption, text)')]
      .filter((element) => element.checkVisibility() && element.textContent !== '')
      .map((element) => {
        const shrunk = element instanceof SVGGraphicsElement ? element.getScreenCTM()!.a : 1;
        return {
          text: element.textContent,
          points: 0.75 * shrunk * Number.parseFloat(getComputedStyle(element).fontSize),
        };
      })
      .filter(({ points }) => points < 6.99),
  );

const long =
  `Wilhelmina Theodora von der Niederen Obermühle genannt ${'die Unermüdliche vom Langen Weg '.repeat(4)}`.trim();
const hardNames = [long, 'Only once', 'Four years'];

/** One demo horse made hard: by its name, by a single visit, by years and every column that there is. */
function hardFeet(): string {
  const [head, ...rows] = csv('feet').trim().split('\n');
  const columns = head.split(',');
  const of = rows.filter((row) => row.startsWith('Heron,')).map((row) => row.split(','));
  const date = columns.indexOf('date');
  const last = of.at(-1)![date];
  const earlier = (cells: string[], years: number) =>
    cells.with(
      date,
      cells[date].replace(/^\d+/, (year) => String(Number(year) - years)),
    );
  const whole = (cells: string[], index: number) =>
    cells.map((cell, place) => {
      if (columns[place] === 'shod') return index % 2 === 0 ? 'yes' : 'no';
      return cell === '' && /_(deg|mm)$/.test(columns[place]) ? '55' : cell;
    });
  const feet = [
    ...of.map((cells) => cells.with(0, long)),
    ...of.filter((cells) => cells[date] === last).map((cells) => cells.with(0, 'Only once')),
    ...[0, 1, 2, 3].flatMap((years) => of.map((cells) => earlier(cells, years).with(0, 'Four years'))).map(whole),
  ];
  return `${[columns, ...feet].map((cells) => cells.join(',')).join('\n')}\n`;
}

function hardHorses(): string {
  const [head, ...rows] = csv('horses').trim().split('\n');
  const heron = rows.find((row) => row.startsWith('Heron,'))!;
  return `${[head, ...hardNames.map((name) => heron.replace('Heron', name))].join('\n')}\n`;
}

describe('For the visit on paper', () => {
  test.each(['', 'de/'])('takes one sheet for each horse, with room to write by hand (%s)', async (language) => {
    const { page } = await site.open(`${language}for-the-visit.html`, { bypassCSP: true });
    await page.addStyleTag({ content: fonts.wide });
    expect(await sheets(page, 'A4', paperFile('visit-A4'))).toBe(24);
    expect(await sheets(page, 'Letter', paperFile('visit-Letter'))).toBe(24);
    await page.setViewportSize({ width: 703, height: 1000 });
    await page.emulateMedia({ media: 'print' });
    const narrow = await page.locator('.sheet-of-paper td.to-fill').evaluateAll((cells) => {
      const mm = 96 / 25.4;
      return cells
        .map((cell) => cell.getBoundingClientRect())
        .filter(({ width, height }) => Math.round(width / mm) < 14 || Math.round(height / mm) < 8);
    });
    expect(narrow).toEqual([]);
  });

  test('leaves out whose herd it is, and what was never measured there', async () => {
    const { page } = await site.open('for-the-visit.html');
    const text = 'horse,date,limb,moment,toe angle\nBella,2026-03-09,LF,before,52\nBella,2026-04-20,LF,before,53\n';
    await page
      .locator('input[type=file]')
      .first()
      .setInputFiles({ name: 'feet.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
    await page.locator('.whose.own').waitFor();
    await page.getByRole('heading', { name: /^Bella/ }).waitFor();
    const rows = page.locator('.sheet-of-paper tr:has(.to-fill) > th');
    expect(await rows.allTextContents()).toEqual(['Toe angle (°)']);
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByText('Your herd').isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
    await page.getByLabel('Room for what was never measured here, too').check();
    await page.locator('.sheet-of-paper tr:has(.to-fill) > th', { hasText: 'Foot length' }).waitFor();
    expect(await rows.count()).toBe(10);
  });
});
