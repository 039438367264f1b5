import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { axeRules, drawn, notebook, overflow } from './browser.ts';

const site = notebook();

const feet = `horse_id,date,limb,moment,toe_angle_deg,toe_length_mm
Bramble,2026-03-09,LF,before,52,84
Bramble,2026-03-09,RF,before,50,85
Otter,2026-03-09,LF,before,48,80
Otter,2026-04-20,LF,before,49,82
`;

const choose = (page: Page, name: string, text: string | Uint8Array) =>
  page
    .getByLabel('Open your own files')
    .setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(text) });

async function opened(options = {}) {
  const all = await site.open('own-page.html', options);
  await choose(all.page, 'yard.csv', feet);
  await all.page.getByText('It is kept in the record “My herd”').waitFor();
  return all;
}

async function title(page: Page, text: string) {
  await page.getByLabel('Your title').fill(text);
  await page.getByLabel('Your title').press('Enter');
}

async function keep(page: Page, text: string) {
  await title(page, text);
  await page.getByRole('button', { name: 'Keep this page' }).click();
  await page.getByRole('status').getByText('ept').waitFor();
}

const list = (page: Page) => page.getByRole('main').getByRole('list', { name: 'Pages you kept' });
const links = (page: Page) => page.getByRole('navigation').getByRole('list', { name: 'Your own' });
const titles = (page: Page) => list(page).getByRole('link').allTextContents();

async function saved(page: Page): Promise<Uint8Array> {
  const download = page.waitForEvent('download');
  await page.getByText('Copies outside the browser').click();
  await page.getByRole('button', { name: 'Save a copy of the record' }).click();
  const zip = new Uint8Array(await readFile(await (await download).path()));
  await page.getByText('Copies outside the browser').click();
  return zip;
}

test('a page that is kept is there after a reload and in every tab, by its title, and shows the same chart', async () => {
  const { page, context, wrongs } = await opened();
  const other = await context.newPage();
  await other.goto(`${site.address}cautions.html`);
  await drawn(other);
  await page.getByLabel('Drawn').selectOption('against');
  await page.getByLabel('Against', { exact: true }).selectOption('toe_length_mm');
  await keep(page, 'Long <b>toes</b>');
  const shown = await page.locator('.figure-title').first().textContent();
  await links(other).getByRole('link', { name: 'Long <b>toes</b>' }).waitFor();
  await page.goto(`${site.address}own-page.html`);
  await drawn(page);
  expect(await titles(page)).toEqual(['Long <b>toes</b>']);
  expect(await page.locator('.figure-title').first().textContent()).not.toBe(shown);
  await links(other).getByRole('link', { name: 'Long <b>toes</b>' }).click();
  await drawn(other);
  expect(await other.getByRole('heading', { level: 2 }).first().textContent()).toBe('Long <b>toes</b>');
  expect(await other.locator('.figure-title').first().textContent()).toBe(shown);
  expect(wrongs).toEqual([]);
});

test('it can be kept again, renamed and removed, and each taken back', async () => {
  const { page, wrongs } = await opened();
  const takeBack = () => page.getByRole('button', { name: 'Take back' }).click();
  await keep(page, 'One');
  await keep(page, 'Two');
  await page.getByLabel('Drawn').selectOption('over time');
  await keep(page, 'One');
  await page.getByText('Kept in place of the “One” of before').waitFor();
  expect(await titles(page)).toEqual(['One', 'Two']);
  const address = () => list(page).getByRole('link', { name: 'One' }).getAttribute('href');
  expect(await address()).toContain('kind=over+time');
  await takeBack();
  await expect.poll(address).toContain('kind=spread');

  await page.getByRole('button', { name: 'Remove One' }).click();
  await expect.poll(() => titles(page)).toEqual(['Two']);
  await page.getByRole('status').getByText('“One” is removed').waitFor();
  expect(await page.evaluate(() => document.activeElement?.getAttribute('role'))).toBe('status');
  await takeBack();
  await expect.poll(() => titles(page)).toEqual(['One', 'Two']);

  await page.getByRole('button', { name: 'Rename One' }).click();
  await page.keyboard.type('Two');
  await page.keyboard.press('Enter');
  await page.getByText('There is a page “Two” already').waitFor();
  await page.getByRole('button', { name: 'Rename One' }).click();
  await page.keyboard.type('Three');
  await page.keyboard.press('Enter');
  await expect.poll(() => titles(page)).toEqual(['Three', 'Two']);
  await takeBack();
  await expect.poll(() => titles(page)).toEqual(['One', 'Two']);
  expect(wrongs).toEqual([]);
});

test('a saved record brings its pages along, to the last byte, and merged ones come beside those that are there', async () => {
  const { page } = await opened();
  await keep(page, 'Toes');
  const zip = await saved(page);
  const other = await opened();
  await other.page.getByLabel('Drawn').selectOption('over time');
  await keep(other.page, 'Toes');
  await choose(other.page, 'copy.zip', zip);
  await other.page.getByText('1 page of its owner’s own').waitFor();
  await other.page.getByRole('button', { name: 'Merge it into “My herd”' }).click();
  await other.page.getByRole('button', { name: 'Nothing to merge, go on' }).click();
  await expect.poll(() => titles(other.page)).toEqual(['Toes', 'Toes (2)']);
  await choose(other.page, 'copy.zip', zip);
  await other.page.getByRole('button', { name: 'Open it as a record of its own' }).click();
  await expect.poll(() => titles(other.page)).toEqual(['Toes']);
  expect(Buffer.compare(Buffer.from(await saved(other.page)), Buffer.from(zip))).toBe(0);
  expect(other.wrongs).toEqual([]);
});

test('on the invented herd it says beforehand what keeping begins, and what ends it', async () => {
  const { page, wrongs } = await site.open('own-page.html');
  await page.getByText('keeping a page begins a changed copy of them on this device').waitFor();
  await keep(page, '');
  expect(await titles(page)).toEqual(['Toe angle, by limb']);
  expect(await page.textContent('.whose')).toContain('A changed copy of the invented demo herd');
  await page.getByText('It is kept in the changed copy of the demo herd').waitFor();
  await page.getByRole('button', { name: 'Back to the demo herd as it was' }).click();
  await expect.poll(() => list(page).count()).toBe(0);
  expect(await links(page).count()).toBe(0);
  expect(wrongs).toEqual([]);
});

test('a kept page whose column is gone says so and shows the rest', async () => {
  const { page } = await opened();
  await page.getByLabel('Column', { exact: true }).selectOption('toe_length_mm');
  await keep(page, 'Lengths');
  await choose(page, 'later.csv', feet.replaceAll('toe_length_mm', 'paint').replaceAll(/,8\d\n/g, ',red\n'));
  await page.getByRole('button', { name: 'Replace what I have' }).click();
  await page.getByText('later.csv opened in place').waitFor();
  await page.getByText('“Toe length” can’t be shown from this table').waitFor();
  await list(page).getByRole('link', { name: 'Lengths' }).waitFor();
  expect(await page.locator('.figure-title').first().textContent()).toContain('by limb');
});

test.each([390, 820, 1280])('the list is clean by axe and fits a window %i px wide', async (width) => {
  const { page } = await opened({ viewport: { width, height: 844 }, hasTouch: width < 1000 });
  await keep(page, 'A title that goes on and on, about the toes of all horses in the yard, through the summer');
  await page.getByRole('button', { name: /^Rename A title/ }).click();
  const { violations } = await new AxeBuilder({ page }).withTags(axeRules).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join('\n')}`)).toEqual([]);
  expect(await overflow(page)).toEqual({ over: 0, out: [] });
});
