import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import { unzipSync } from 'fflate';
import type { Download, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { axeRules, notebook, overflow } from './browser.ts';

const site = notebook();

const feet = `horse_id,date,limb,toe_angle_deg,observer,paddock
Bramble,2026-03-09,LF,52,Ida,north
Bramble,2026-04-20,LF,50,Ida,north
Otter,2026-03-09,LF,48,Tom,south
`;

async function opened(width = 1280) {
  const all = await site.open('record.html', { viewport: { width, height: 900 }, hasTouch: width < 1000 });
  const { page } = all;
  await page
    .getByLabel('Open your own files')
    .setInputFiles({ name: 'yard.csv', mimeType: 'text/csv', buffer: Buffer.from(feet) });
  await page.locator('.whose', { hasText: 'yard.csv' }).waitFor();
  await page.getByText('Copies outside the browser').click();
  await page.getByText('Tables without names, for a pool of several yards').click();
  await page.getByRole('button', { name: 'Save the tables without names' }).waitFor();
  return all;
}

/** What one press hands to the browser, by file name. */
async function saved(page: Page, files: number): Promise<Map<string, Buffer>> {
  const downloads: Download[] = [];
  page.on('download', (download) => downloads.push(download));
  await page.getByRole('button', { name: 'Save the tables without names' }).click();
  await expect.poll(() => downloads.length).toBe(files);
  return new Map(
    await Promise.all(
      downloads.map(async (one) => [one.suggestedFilename(), await readFile(await one.path())] as const),
    ),
  );
}

const texts = (zip: Buffer) =>
  Object.entries(unzipSync(new Uint8Array(zip))).map(
    ([name, bytes]) => [name, new TextDecoder().decode(bytes)] as const,
  );

test('the tables are saved without names, the key apart from them, and with the key of before they come out the same', async () => {
  const { page, wrongs } = await opened();
  const first = await saved(page, 2);
  const key = first.get('pooling-key.txt')!;
  const files = texts(first.get('herd-without-names.zip')!);
  expect(files.map(([name]) => name)).toEqual(['feet.csv', 'datapackage.json', 'what-still-identifies.md']);
  const all = files.map(([, text]) => text).join('\n');
  for (const secret of ['Bramble', 'Otter', 'Ida', 'Tom', 'north', '2026-03-09', String(key).trim()])
    expect(all).not.toContain(secret);
  await page.getByText('What was done to these tables, and what in them still identifies').waitFor();
  const other = await opened();
  await other.page
    .getByLabel('The key of an earlier export')
    .setInputFiles({ name: 'pooling-key.txt', mimeType: 'text/plain', buffer: key });
  expect(texts((await saved(other.page, 1)).get('herd-without-names.zip')!)).toEqual(files);
  await other.page.getByLabel('paddock').check();
  const kept = texts((await saved(other.page, 1)).get('herd-without-names.zip')!);
  expect(kept[0][1]).toContain(',north\n');
  expect([...wrongs, ...other.wrongs]).toEqual([]);
});

test('a file that is no key is refused in words', async () => {
  const { page } = await opened();
  await page
    .getByLabel('The key of an earlier export')
    .setInputFiles({ name: 'list.txt', mimeType: 'text/plain', buffer: Buffer.from('Bramble') });
  await page.getByRole('button', { name: 'Save the tables without names' }).click();
  await page.getByText('This is no key for pooling').waitFor();
});

test.each([390, 820, 1280])('the panel is clean by axe and fits a window %i px wide', async (width) => {
  const { page } = await opened(width);
  await saved(page, 2);
  const { violations } = await new AxeBuilder({ page }).include('.records').withTags(axeRules).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join('\n')}`)).toEqual([]);
  expect(await overflow(page)).toEqual({ over: 0, out: [] });
});
