import AxeBuilder from '@axe-core/playwright';
import * as sheets from '@e965/xlsx';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { axeRules, drawn, notebook, overflow } from './browser.ts';

const site = notebook();

const choose = (page: Page, ...files: { name: string; text: string | Uint8Array }[]) =>
  page
    .getByLabel('Open your own files')
    .setInputFiles(
      files.map(({ name, text }) => ({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(text) })),
    );

const wide = [
  'Yard list',
  'Animal,Seen,LF toe angle,RF toe angle,LF toe length,Temper',
  'Bramble,03/04/2026,52,about 50,8.4,calm',
  'Otter,05/04/2026,49,48,8.1,',
].join('\n');

/** A workbook as another program writes it, whose days count from 1904. */
function workbook(): Uint8Array {
  const day = new Date('2026-03-09T00:00:00Z');
  const rows = [
    ['Horse', 'Day', 'Limb', 'Hoof angle'],
    ['Bramble', day, 'AG', 52.5],
    ['Bramble', day, 'AD', 51],
  ];
  const book = sheets.utils.book_new();
  sheets.utils.book_append_sheet(book, sheets.utils.aoa_to_sheet([['Notes']]), 'Notes');
  sheets.utils.book_append_sheet(book, sheets.utils.aoa_to_sheet(rows, { cellDates: true, UTC: true }), 'March');
  book.Workbook = { WBProps: { date1904: true } };
  return new Uint8Array(sheets.write(book, { type: 'array', bookType: 'xlsx' }));
}

const record = (page: Page) => page.getByRole('grid', { name: 'Every reading' });

test('a list with a row a horse becomes a row a foot; what is open is asked; the matching is remembered', async () => {
  const { page, wrongs } = await site.open('record.html');
  await choose(page, { name: 'wide.csv', text: wide });
  const guided = page.getByRole('region', { name: 'How wide.csv is read' });
  await guided.getByText('4 rows of feet come of it').waitFor();
  expect(await guided.getByLabel('LF toe length: in').inputValue()).toBe('cm');
  expect(await guided.getByRole('button', { name: 'Read it so' }).isDisabled()).toBe(true);
  await guided.getByLabel('3 April, day first').check();
  await guided.getByLabel('Temper is').selectOption('left out');
  await guided.getByText('Look at what can’t be used').click();
  await guided.getByText('about 50').first().waitFor();
  await guided.getByRole('gridcell', { name: '2026-04-03' }).first().waitFor();
  await guided.getByRole('button', { name: 'Read it so' }).click();
  await page.getByText('wide.csv opened').waitFor();
  await record(page).getByRole('gridcell', { name: '2026-04-05' }).first().waitFor();
  expect(await page.textContent('.whose')).toContain('wide.csv');
  await page.getByText('1 row above the headings of wide.csv was left out: “Yard list”.').waitFor();
  await page.getByText('1 cell could not be used as it stands').waitFor();

  await choose(page, { name: 'next.csv', text: wide.replaceAll('/04/2026', '/05/2026').replace('Yard list', 'Next') });
  const again = page.getByRole('region', { name: 'How next.csv is read' });
  const today = await page.evaluate(() => new Date().toLocaleDateString('sv-SE'));
  await again.getByText(`Matched as you did on ${today} for wide.csv, a file with these headings.`).waitFor();
  await again.getByText('1 row above the headings of next.csv was left out: “Next”.').waitFor();
  expect(await again.getByLabel('Temper is').inputValue()).toBe(':nothing');
  expect(await again.getByLabel('3 April, day first').isChecked()).toBe(true);
  // What was chosen against what is likely is said of its heading, and taken back there or for all.
  await again.getByRole('button', { name: 'Temper: Choose again' }).click();
  expect(await again.getByLabel('Temper is').inputValue()).toBe(':own');
  expect(await again.getByRole('button', { name: /Choose again$/ }).count()).toBe(0);
  await again.getByRole('button', { name: 'Forget that and choose again' }).click();
  await again.getByText('What is likely is chosen already').waitFor();
  expect(await again.getByLabel('3 April, day first').isChecked()).toBe(false);
  await again.getByRole('button', { name: 'Leave it' }).click();
  await again.waitFor({ state: 'detached' });
  expect(await page.textContent('.whose')).toContain('wide.csv');
  expect(wrongs).toEqual([]);
});

test('a spreadsheet’s own file is read under the strict policy, its sheet chosen and its words for limbs explained', async () => {
  const { page, wrongs } = await site.open('record.html');
  await choose(page, { name: 'yard.xlsx', text: workbook() });
  const guided = page.getByRole('region', { name: 'How yard.xlsx is read' });
  await guided.getByLabel('Sheet').selectOption('March');
  // Dates and angles are found; “AG” is French, which limbs are not understood in.
  await guided.getByLabel('Limb is').selectOption('Limb');
  await guided.getByLabel('“AG” is').selectOption('left fore');
  await guided.getByLabel('“AD” is').selectOption('right fore');
  await guided.getByText('Every cell can be read').waitFor();
  await guided.getByRole('button', { name: 'Read it so' }).click();
  await page.getByText('yard.xlsx opened').waitFor();
  await record(page).getByRole('gridcell', { name: '2026-03-09' }).first().waitFor();
  await record(page).getByRole('gridcell', { name: 'RF', exact: true }).first().waitFor();
  expect(wrongs).toEqual([]);
});

test('what is no spreadsheet is refused in words', async () => {
  const { page } = await site.open('herd.html');
  await choose(page, { name: 'broken.xlsx', text: workbook().subarray(0, 900) });
  await page.getByRole('alert').filter({ hasText: 'broken.xlsx could not be read as a spreadsheet' }).waitFor();
  expect(await page.textContent('.whose')).toContain('Invented demo herd');
});

test('matching is done by keyboard alone, on a phone too, and says to everyone what it asks', async () => {
  const { page, wrongs } = await site.open('herd.html', { viewport: { width: 360, height: 740 }, hasTouch: true });
  await choose(page, { name: 'wide.csv', text: wide });
  const guided = page.getByRole('region', { name: 'How wide.csv is read' });
  await guided.waitFor();
  expect(await guided.evaluate((element) => element === document.activeElement)).toBe(true);
  const { violations } = await new AxeBuilder({ page }).withTags(axeRules).include('.guided').analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
  expect((await overflow(page)).over).toBeLessThanOrEqual(0);
  await guided.getByLabel('3 April, day first').focus();
  await page.keyboard.press('Space');
  await guided.getByRole('button', { name: 'Read it so' }).focus();
  await page.keyboard.press('Enter');
  await page.getByText('wide.csv opened').waitFor();
  await drawn(page);
  expect(wrongs).toEqual([]);
});
