import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readTable, writeArrow, writeParquet } from '../../lib/index.ts';
import { drawn, notebook } from './browser.ts';

const site = notebook();
let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'evenhoof-own-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function file(name: string, ...lines: string[]): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, `${lines.join('\n')}\n`);
  return path;
}

const feet = (...dates: string[]) =>
  file(
    `feet-${dates[0].replaceAll(/\D/g, '')}.csv`,
    'Horse;Date;Limb;Toe angle;Toe length',
    ...dates.flatMap((date) => [
      `Bramble;${date};near fore;52°;8,5 cm`,
      `"<b>Otter</b>";${date};off fore;about 50;8,1 cm`,
    ]),
  );

const choose = (page: Page, ...paths: string[]) => page.getByLabel('Open your own files').setInputFiles(paths);

test('own files are opened, shown on every page, kept over a reload, and put away again', async () => {
  const { page, context, wrongs } = await site.open('herd.html');
  await choose(
    page,
    await feet('2026-01-13', '2026-02-24'),
    await file('horses.csv', 'horse_id,weight_kg', 'Bramble,512'),
  );
  await page.getByText('Your herd', { exact: true }).waitFor();
  expect(await page.textContent('.whose')).toContain('feet-20260113.csv, horses.csv');
  expect(await page.getByText('Invented demo herd').count()).toBe(0);
  await page.reload();
  await drawn(page);
  expect(await page.textContent('.whose')).toContain('Your herd');
  const second = await context.newPage();
  await second.goto(`${site.address}level.html`);
  await drawn(second);
  expect(await second.textContent('.whose')).toContain('Your herd');
  expect(await second.textContent('body')).not.toContain('Thistle');
  await page.getByRole('button', { name: 'Put it away, show the demo herd' }).click();
  await page.getByText('Invented demo herd').waitFor();
  await second.getByText('Invented demo herd').waitFor();
  expect(wrongs).toEqual([]);
});

test.each([
  ['parquet', writeParquet],
  ['arrow', writeArrow],
])('a table of feet is opened from a file in %s, as from CSV', async (format, write) => {
  const path = join(folder, `feet.${format}`);
  const { columns } = readTable(await readFile(await feet('2026-01-13', '2026-02-24')));
  await writeFile(path, await write(columns));
  const { page, wrongs } = await site.open('herd.html');
  await choose(page, path);
  await page.getByText('Your herd', { exact: true }).waitFor();
  expect(await page.textContent('.whose')).toContain(`feet.${format}`);
  expect(await page.textContent('body')).toContain('Bramble');
  expect(wrongs).toEqual([]);
});

test('cells that could not be used are listed, and names that look like markup stay text', async () => {
  const { page, wrongs } = await site.open('herd.html');
  await choose(page, await feet('2026-01-13', '2026-02-24'));
  await page.getByText('2 cells could not be used').click();
  const problems = page.getByRole('grid', { name: 'Cells that could not be used' });
  await problems.getByText('about 50').first().waitFor();
  expect(await page.locator('b:has-text("Otter")').count()).toBe(0);
  expect(wrongs).toEqual([]);
});

test('files can be dropped, one after another, and feet are waited for', async () => {
  const { page } = await site.open('herd.html');
  const drop = async (name: string, text: string) => {
    const files = await page.evaluateHandle(
      ([name, text]) => {
        const transfer = new DataTransfer();
        transfer.items.add(new File([text], name, { type: 'text/csv' }));
        return transfer;
      },
      [name, text],
    );
    await page.dispatchEvent('body', 'dragover', { dataTransfer: files });
    await page.getByText('Drop the files to open them').waitFor();
    await page.dispatchEvent('body', 'drop', { dataTransfer: files });
  };
  await drop('horses.csv', 'horse_id,weight_kg\nBramble,512\n');
  await page.getByText('Your own pages appear once you open your table of feet too').waitFor();
  expect(await page.textContent('.whose')).toContain('Invented demo herd');
  await drop('feet.csv', 'horse,date,limb,toe angle\nBramble,2026-01-13,LF,52\n');
  await page.getByText('Your herd', { exact: true }).waitFor();
  expect(await page.textContent('.whose')).toContain('feet.csv, horses.csv');
});

test.each([
  ['3 April, day first', '2026-04-03'],
  ['4 March, month first', '2026-03-04'],
])('dates that can be read both ways are asked about: %s', async (answer, date) => {
  const { page } = await site.open('herd.html');
  await choose(page, await feet('03/04/2026'));
  await page.getByText('can be read two ways').waitFor();
  expect(await page.textContent('.whose')).toContain('Invented demo herd');
  await page.getByRole('button', { name: answer }).click();
  await page.getByText('Your herd', { exact: true }).waitFor();
  await page.getByRole('gridcell', { name: date }).first().waitFor();
});

test('a question about dates left unanswered leaves everything as it was', async () => {
  const { page } = await site.open('herd.html');
  await choose(page, await feet('03/04/2026'));
  await page.getByRole('button', { name: 'I don’t know, leave it' }).click();
  expect(await page.getByText('can be read two ways').count()).toBe(0);
  expect(await page.textContent('.whose')).toContain('Invented demo herd');
});

test.each([
  ['a letter', 'letter.csv', ['Dear farrier,', 'thank you.']],
  ['an empty file', 'empty.csv', []],
  ['bytes of no text', 'photo.csv', ['\u0000\u0001\u0002\u0003']],
])('%s is refused in words, and what was shown stays', async (_, name, lines) => {
  const { page, wrongs } = await site.open('herd.html');
  await choose(page, await file(name, ...lines));
  await page.getByRole('alert').filter({ hasText: 'What was shown before is still in use' }).waitFor();
  expect(await page.textContent('.whose')).toContain('Invented demo herd');
  expect(wrongs).toEqual([]);
});

test('two tables of feet at once are refused by their names', async () => {
  const { page } = await site.open('herd.html');
  await choose(page, await feet('2026-01-13'), await feet('2026-02-24'));
  await page.getByText('both hold the table of feet').waitFor();
});

test('where the browser keeps nothing, own files are shown all the same', async () => {
  const { context } = await site.open('cautions.html');
  await context.addInitScript(() => {
    Object.defineProperty(IDBFactory.prototype, 'open', {
      value() {
        throw new DOMException('Denied', 'SecurityError');
      },
    });
  });
  const page = await context.newPage();
  await page.goto(`${site.address}herd.html`);
  await drawn(page);
  await choose(page, await feet('2026-01-13'));
  await page.getByText('Your herd', { exact: true }).waitFor();
  await page.getByText('could not be kept').waitFor();
});
