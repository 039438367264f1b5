import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readTable } from '../../lib/index.ts';
import { fixturePages } from './browser.ts';

const pages = fixturePages();

async function sheet(name: string): Promise<{ page: Page; figure: Locator; grid: Locator }> {
  const { page } = await pages.open('all-parts.html', {
    viewport: { width: 1280, height: 900 },
    permissions: ['clipboard-read'],
  });
  const figure = page.locator('figure.sheet').filter({ has: page.getByRole('grid', { name, exact: true }) });
  await figure.scrollIntoViewIfNeeded();
  return { page, figure, grid: figure.getByRole('grid') };
}

/** Row and column of the focused cell, as a screen reader is told them. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const cell = document.activeElement!;
    return [cell.parentElement!.getAttribute('aria-rowindex'), cell.getAttribute('aria-colindex')].map(Number);
  });

test('a grid says its size, and only the rows near the screen are in the document', async () => {
  const { grid } = await sheet('A long table');
  expect(await grid.getAttribute('aria-rowcount')).toBe('100001');
  expect(await grid.getAttribute('aria-colcount')).toBe('2');
  const rows = await grid.getByRole('row').count();
  expect(rows).toBeGreaterThan(10);
  expect(rows).toBeLessThan(80);
});

test('one cell is a stop for the Tab key; arrows, Home, End, Page and Control move inside', async () => {
  const { page, grid } = await sheet('A long table');
  expect(await grid.locator('[tabindex="0"]').count()).toBe(1);
  await grid.locator('[tabindex="0"]').focus();
  expect(await focused(page)).toEqual([2, 1]);
  for (const [key, place] of [
    ['ArrowDown', [3, 1]],
    ['ArrowRight', [3, 2]],
    ['Control+End', [100_001, 2]],
    ['Home', [100_001, 1]],
    ['Control+Home', [2, 1]],
    ['ArrowUp', [1, 1]],
    ['End', [1, 2]],
  ] as const) {
    await page.keyboard.press(key);
    await expect.poll(() => focused(page)).toEqual(place);
    expect(await grid.locator('[tabindex="0"]').count()).toBe(1);
  }
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('PageDown');
  await expect.poll(async () => (await focused(page))[0]).toBeGreaterThan(10);
  const cell = await page.locator(':focus').boundingBox();
  const box = await grid.boundingBox();
  expect(cell!.y).toBeGreaterThan(box!.y);
  expect(cell!.y + cell!.height).toBeLessThan(box!.y + box!.height + 1);
});

test('the focused cell stays in the document when its row is scrolled away', async () => {
  const { page, grid } = await sheet('A long table');
  await grid.locator('[tabindex="0"]').focus();
  await grid.evaluate((element) => element.scrollTo(0, 500_000));
  await expect
    .poll(() =>
      grid
        .getByText('Row 15000', { exact: true })
        .count()
        .then((count) => count >= 0),
    )
    .toBe(true);
  expect(await focused(page)).toEqual([2, 1]);
  await page.keyboard.press('ArrowDown');
  await expect.poll(() => focused(page)).toEqual([3, 1]);
});

test('a heading sorts by key and by click, rising, falling and back, and says so', async () => {
  const { page, grid } = await sheet('A long table');
  const heading = grid.getByRole('columnheader', { name: /length_mm/ });
  const first = () => grid.getByRole('row').nth(1).getByRole('gridcell').nth(1).textContent();
  await heading.click();
  expect(await heading.getAttribute('aria-sort')).toBe('ascending');
  await expect.poll(first).toBe('0.0');
  await page.keyboard.press('Enter');
  expect(await heading.getAttribute('aria-sort')).toBe('descending');
  await expect.poll(first).toBe('99999.0');
  await page.keyboard.press('Enter');
  expect(await heading.getAttribute('aria-sort')).toBe('none');
  await expect.poll(() => grid.getByRole('row').nth(1).getByRole('gridcell').first().textContent()).toBe('Row 0');
});

test('rows are kept by text and by a range in the reader’s unit, and the conditions can be taken off', async () => {
  const { page, figure, grid } = await sheet('A long table');
  await page.getByLabel('Lengths in').selectOption('cm');
  await figure.getByLabel('Keep rows by').selectOption({ label: 'name' });
  await figure.getByLabel('containing').fill('row 12');
  await page.keyboard.press('Enter');
  await figure.getByText('1,111 of 100,000 rows').waitFor();
  await figure.getByLabel('Keep rows by').selectOption({ label: 'length_mm' });
  await figure.getByLabel('from, cm').fill('0');
  await figure.getByLabel('to, cm').fill('100');
  await figure.getByRole('button', { name: 'Keep these' }).click();
  await expect.poll(() => figure.locator('.sheet-count').textContent()).toMatch(/^\d\d? of 100,000 rows/);
  expect(await grid.getAttribute('aria-rowcount')).toMatch(/^\d\d?$/);
  await figure.getByRole('button', { name: 'Take off: length_mm from 0 to 100 cm' }).click();
  await figure.getByRole('button', { name: /Take off: name containing/ }).click();
  await figure.getByText('100,000 rows').waitFor();
});

test('a block of cells is copied as tab-separated text', async () => {
  const { page, figure, grid } = await sheet('A long table');
  await grid.locator('[tabindex="0"]').focus();
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Control+c');
  await figure.getByText('4 cells copied').waitFor();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe('Row 0\t0.0\nRow 1\t7919.0');
});

test('a computed column is told apart without colour, and says how it was worked out', async () => {
  const { page, figure, grid } = await sheet('Feet');
  await grid.locator('[tabindex="0"]').focus();
  await page.keyboard.press('End');
  const heading = grid.getByRole('columnheader', { name: /worked out/ }).last();
  expect(await heading.evaluate((element) => getComputedStyle(element).fontStyle)).toBe('italic');
  expect(await heading.textContent()).toMatch(/^∴/);
  await heading.click();
  expect(await figure.locator('.about-column').textContent()).toMatch(/worked out as .+\. \S+/);
  expect(await page.locator('.about-column code').first().textContent()).not.toBe('');
});

test('the table is taken away as tidy CSV of the rows shown, with its dictionary', async () => {
  const { page, figure } = await sheet('Feet');
  await figure.getByLabel('Keep rows by').selectOption({ label: 'Limb' });
  await figure.getByLabel('containing').fill('LF');
  await page.keyboard.press('Enter');
  const shown = Number((await figure.locator('.sheet-count').textContent())!.split(' ')[0].replace(',', ''));
  const save = async (name: string) => {
    const [download] = await Promise.all([page.waitForEvent('download'), figure.getByRole('button', { name }).click()]);
    return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
  };
  const csv = await save('Save this table as tidy CSV');
  expect(csv.name).toBe('feet.csv');
  const { columns } = readTable(csv.text, { file: csv.name });
  expect(new Set<unknown>(columns.limb.values as readonly string[])).toEqual(new Set(['LF']));
  expect(columns.limb.values.length).toBe(shown);
  const dictionary = JSON.parse((await save('Save its dictionary')).text);
  const fields = dictionary.resources[0].schema.fields as { name: string; unit?: string }[];
  expect(fields.map(({ name }) => name)).toEqual(csv.text.split('\n')[0].split(','));
  expect(fields.find(({ name }) => name === 'toe_length_mm')?.unit).toBe('mm');
});
