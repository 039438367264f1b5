import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { axeRules, drawn, notebook, overflow } from './browser.ts';

const site = notebook();

const choose = (page: Page, name: string, text: string | Uint8Array) =>
  page
    .getByLabel('Open your own files')
    .setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(text) });

const desk = `horse_id,date,limb,moment,toe_angle_deg,toe_length_mm
Bramble,2026-03-09,LF,before,52,84
Bramble,2026-03-09,RF,before,50,
Otter,2026-03-09,LF,before,48,80
`;
const phone = `horse_id,date,limb,moment,toe_angle_deg,toe_length_mm
Bramble,2026-03-09,LF,before,53,84
Bramble,2026-03-09,RF,before,51,85
Otter,2026-03-09,LF,before,48,80
Otter,2026-03-09,RF,before,49,81
`;

const record = (page: Page) => page.getByRole('grid', { name: 'Every reading' });
const offer = (page: Page, from: string) => page.getByRole('region', { name: `Merge ${from}` });

/** The toe angles in the table of feet as a tidy file says them. */
async function angles(page: Page): Promise<string[]> {
  const saved = page.waitForEvent('download');
  await page.getByText('Copies outside the browser').click();
  await page.getByRole('button', { name: 'Save a copy of the record' }).click();
  const zip = unzipSync(new Uint8Array(await readFile(await (await saved).path())));
  await page.getByText('Copies outside the browser').click();
  const [heading, ...rows] = new TextDecoder().decode(zip['feet.csv']).trimEnd().split('\n');
  const [limb, angle] = ['limb', 'toe_angle_deg'].map((name) => heading.split(',').indexOf(name));
  return rows.map((row) => `${row.split(',')[0]} ${row.split(',')[limb]} ${row.split(',')[angle]}`);
}

async function opened(options = {}) {
  const all = await site.open('record.html', options);
  await choose(all.page, 'desk.csv', desk);
  await all.page.getByText('desk.csv opened').waitFor();
  await all.page.locator('.whose', { hasText: 'desk.csv' }).waitFor();
  return all;
}

test('a file edited elsewhere is merged: what differs is chosen cell by cell, and the choice can be taken back', async () => {
  const { page, wrongs } = await opened();
  await choose(page, 'phone.csv', phone);
  const merging = offer(page, 'phone.csv');
  await merging
    .getByText('1 row new, 1 row the same, 1 cell filled in where mine is blank, 2 cells different')
    .waitFor();
  await merging.getByLabel('Toe angle, Bramble, 2026-03-09, right fore, before, the other').check();
  await merging.getByRole('button', { name: 'Merge', exact: true }).click();
  await page.getByText('phone.csv merged').waitFor();
  expect(await angles(page)).toEqual(['Bramble LF 52', 'Bramble RF 51', 'Otter LF 48', 'Otter RF 49']);
  await page.getByRole('button', { name: 'Take back: merging phone.csv' }).click();
  await page.getByRole('button', { name: 'Do again: merging phone.csv' }).waitFor();
  expect(await angles(page)).toEqual(['Bramble LF 52', 'Bramble RF 50', 'Otter LF 48']);
  await page.getByRole('button', { name: 'Do again: merging phone.csv' }).click();

  await choose(page, 'phone.csv', phone);
  await merging
    .getByText('0 rows new, 3 rows the same, 0 cells filled in where mine are blank, 1 cell different')
    .waitFor();
  await merging.getByRole('button', { name: 'Take the other in all' }).click();
  await merging.getByRole('button', { name: 'Merge', exact: true }).click();
  await page.getByText('phone.csv merged').waitFor();
  expect((await angles(page))[0]).toBe('Bramble LF 53');

  await choose(page, 'phone.csv', phone);
  await merging.getByRole('button', { name: 'Nothing to merge, go on' }).click();
  await page.reload();
  await drawn(page);
  expect(await angles(page)).toEqual(['Bramble LF 53', 'Bramble RF 51', 'Otter LF 48', 'Otter RF 49']);
  expect(wrongs).toEqual([]);
});

test('it can replace what is there instead, or be left', async () => {
  const { page } = await opened();
  await choose(page, 'phone.csv', phone);
  await offer(page, 'phone.csv').getByRole('button', { name: 'Leave it' }).click();
  expect(await page.textContent('.whose')).toContain('desk.csv');
  await choose(page, 'phone.csv', phone);
  await offer(page, 'phone.csv').getByRole('button', { name: 'Replace what I have' }).click();
  await page.getByText('phone.csv opened in place').waitFor();
  expect(await page.textContent('.whose')).toContain('phone.csv');
});

test('choosing works on a phone, by keyboard, and for a screen reader', async () => {
  const { page, wrongs } = await opened({ viewport: { width: 360, height: 740 }, hasTouch: true });
  await choose(page, 'phone.csv', phone);
  const merging = offer(page, 'phone.csv');
  await merging.waitFor();
  expect(await merging.evaluate((element) => element === document.activeElement)).toBe(true);
  const { violations } = await new AxeBuilder({ page }).withTags(axeRules).include('.merging').analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
  expect((await overflow(page)).over).toBeLessThanOrEqual(0);
  const mine = merging.getByLabel('Toe angle, Bramble, 2026-03-09, left fore, before, mine');
  await mine.focus();
  await page.keyboard.press('ArrowRight');
  expect(await mine.isChecked()).toBe(false);
  await merging.getByRole('button', { name: 'Merge', exact: true }).focus();
  await page.keyboard.press('Enter');
  await page.getByText('phone.csv merged').waitFor();
  expect((await angles(page)).slice(0, 2)).toEqual(['Bramble LF 53', 'Bramble RF 50']);
  expect(wrongs).toEqual([]);
});

test('a saved record opens elsewhere as it was, history too, and is the same file to the last byte when saved there', async () => {
  const { page } = await opened();
  await choose(page, 'phone.csv', phone);
  await offer(page, 'phone.csv').getByRole('button', { name: 'Merge', exact: true }).click();
  await page.getByText('phone.csv merged').waitFor();
  // A table that is replaced goes into the history, and with it into the copy.
  await choose(page, 'later.csv', desk.replace('52', '54'));
  await offer(page, 'later.csv').getByRole('button', { name: 'Replace what I have' }).click();
  await page.getByText('later.csv opened in place').waitFor();
  const first = await saved(page);
  expect(Object.keys(unzipSync(first))).toContain('earlier-1-feet.csv');
  const other = await site.open('record.html');
  await choose(other.page, 'copy.zip', first);
  await other.page.getByText('3 rows of feet').waitFor();
  await other.page.getByRole('button', { name: 'Open it as a record of its own' }).click();
  await other.page.getByText('opened as a record of its own').waitFor();
  await record(other.page).getByRole('gridcell', { name: 'Otter' }).first().waitFor();
  expect(Buffer.compare(Buffer.from(await saved(other.page)), Buffer.from(first))).toBe(0);
  expect(other.wrongs).toEqual([]);
});

async function saved(page: Page): Promise<Uint8Array> {
  const download = page.waitForEvent('download');
  await page.getByText('Copies outside the browser').click();
  await page.getByRole('button', { name: 'Save a copy of the record' }).click();
  return new Uint8Array(await readFile(await (await download).path()));
}

test('a folder is kept up to date with what is typed, also after a reload; a browser without says so', async () => {
  const { context, page: first } = await opened();
  await first.getByText('Copies outside the browser').click();
  // The browser of the tests has the chooser, which nobody can answer: a folder of its own stands in.
  await context.addInitScript(() => {
    Object.assign(globalThis, { showDirectoryPicker: () => navigator.storage.getDirectory() });
  });
  const page = await context.newPage();
  await page.goto(`${site.address}record.html`);
  await drawn(page);
  await page.getByText('Copies outside the browser').click();
  await page.getByRole('button', { name: 'Keep a folder on the disk up to date' }).click();
  await page.getByText('is up to date').waitFor();
  const onDisk = () =>
    page.evaluate(async () => {
      const folder = await navigator.storage.getDirectory();
      return (await (await folder.getFileHandle('feet.csv')).getFile()).text();
    });
  expect(await onDisk()).toContain('Otter,2026-03-09,LF,before');
  await page.reload();
  await drawn(page);
  await choose(page, 'phone.csv', phone);
  await offer(page, 'phone.csv').getByRole('button', { name: 'Merge', exact: true }).click();
  await page.getByText('phone.csv merged').waitFor();
  await expect.poll(onDisk, { timeout: 30_000 }).toContain('Otter,2026-03-09,RF,before');

  await context.addInitScript(() => {
    Reflect.deleteProperty(globalThis, 'showDirectoryPicker');
    Reflect.deleteProperty(Window.prototype, 'showDirectoryPicker');
  });
  const without = await context.newPage();
  await without.goto(`${site.address}record.html`);
  await drawn(without);
  await without.getByText('Copies outside the browser').click();
  await without.getByText('This one can’t').waitFor();
});

test('a record that was not copied for weeks has a quiet line, which a copy takes away', async () => {
  const { page } = await opened();
  await page.clock.install({ time: Date.now() + 30 * 86_400_000 });
  await page.reload();
  await drawn(page);
  await page.getByText('No copy of this record has been saved yet').waitFor();
  await saved(page);
  await expect.poll(() => page.getByText('No copy of this record has been saved yet').count()).toBe(0);
});
