import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { words } from '../../notebooks/firstSheet.ts';
import { drawn, notebook, paperFile } from './browser.ts';

const site = notebook();

test.each([
  ['a computer', { width: 1280, height: 900 }],
  ['a phone', { width: 390, height: 844 }],
])('the steps of the first sheet lead from a list to a printed sheet and back, on %s', async (_, viewport) => {
  const { page, wrongs } = await site.open('first-sheet.html', { viewport });
  const saving = page.waitForEvent('download');
  await page
    .getByRole('link', { name: 'A list to try it with' })
    .or(page.getByRole('button', { name: 'A list to try it with' }))
    .click();
  const list = await (await saving).path();

  await page
    .getByLabel(words.open)
    .setInputFiles({ name: 'yard-list.csv', mimeType: 'text/csv', buffer: await readFile(list) });
  const guided = page.getByRole('region', { name: 'How yard-list.csv is read' });
  await guided
    .getByText('2 rows above the headings of yard-list.csv were left out: “Hollow Lane yard”, “gauge and steel rule”.')
    .waitFor();
  expect(await guided.getByLabel('NF angle is').inputValue()).toBe('toe_angle_deg');
  expect(await guided.getByLabel('NF angle: of').inputValue()).toBe('LF');
  expect(await guided.getByLabel('OF toe length in: in').inputValue()).toBe('[in_i]');
  await guided.getByLabel(words.dayFirst).check();
  await guided.getByLabel(/For all rows it was/).selectOption(words.before);
  await guided.getByRole('grid', { name: words.rows }).getByRole('gridcell', { name: '2026-04-03' }).first().waitFor();
  await guided.getByText(words.unread).click();
  await guided.getByText('about 50').first().waitFor();
  await guided.getByRole('button', { name: words.read }).click();
  await page.getByText('yard-list.csv opened').waitFor();
  await page.getByText('1 cell could not be used as it stands').waitFor();

  await page.goto(`${site.address}herd.html`);
  await drawn(page);
  expect(await page.textContent('#blocks')).toContain('Bramble');

  await page.goto(`${site.address}for-the-visit.html`);
  await drawn(page);
  await page.getByLabel(words.day).fill('2026-06-12');
  await page.getByLabel(words.day).press('Enter');
  await page.getByLabel(words.paper).selectOption(words.pages);
  await page.locator('#blocks', { hasText: '2026-06-12' }).waitFor();
  expect((await page.pdf({ format: 'A4', path: paperFile(`first-sheet-${viewport.width}`) })).length).toBeGreaterThan(
    10_000,
  );

  const filling = page.waitForEvent('download');
  await page.getByText(words.table).click();
  const [headings, ...rows] = (await readFile(await (await filling).path(), 'utf8')).trimEnd().split('\n');
  const at = headings.split(',').indexOf('toe_angle_deg');
  const filled = rows.map((row) => row.split(',').with(at, '51').join(','));
  await page.getByLabel(words.open).setInputFiles({
    name: 'filled.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from([headings, ...filled, ''].join('\n')),
  });
  await page.getByRole('button', { name: words.merge, exact: true }).click();
  await page.getByText('filled.csv merged').waitFor();

  await page.getByText(words.copies).click();
  const copying = page.waitForEvent('download');
  await page.getByRole('button', { name: words.save }).click();
  expect((await copying).suggestedFilename()).toMatch(/\.zip$/);
  expect(wrongs).toEqual([]);
});
