import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { changingNotebook, drawn } from './browser.ts';

const site = changingNotebook();

async function change(file: string, from: string | RegExp, to: string): Promise<void> {
  const path = join(site.folder(), file);
  const text = await readFile(path, 'utf8');
  expect(text).toMatch(from);
  await writeFile(path, text.replace(from, to));
}

test('a newer notebook waits beside the old one and takes over when the reader says so', async () => {
  const { page, wrongs } = await site.open('cautions.html');
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await change('cautions.html', '<h1>Cautions</h1>', '<h1>Newer cautions</h1>');
  await change('service-worker.js', /"[0-9a-f]{16}"/, '"another version"');
  await page.reload();
  await drawn(page);
  expect(await page.textContent('h1')).toBe('Cautions');
  await page.getByText('A newer version of this notebook is ready').waitFor();
  expect(await page.textContent('h1')).toBe('Cautions');
  await page.getByRole('button', { name: 'Use it now' }).click();
  await page.getByRole('heading', { name: 'Newer cautions' }).waitFor();
  await drawn(page);
  expect(await page.getByText('A newer version of this notebook is ready').count()).toBe(0);
  expect(wrongs).toEqual([]);
});
