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

test('a newer notebook that takes over loses nothing that is being typed on another page', async () => {
  const { page: typing, context } = await site.open('record.html', { viewport: { width: 1280, height: 900 } });
  await typing.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  const grid = typing.getByRole('grid', { name: 'Every reading' });
  const cell = async () => {
    await grid.locator('[tabindex="0"]').focus();
    await typing.keyboard.press('Control+Home');
  };
  await change('service-worker.js', /"(another version|[0-9a-f]{16})"/, '"yet another version"');
  const other = await context.newPage();
  await other.goto(`${site.address}cautions.html`);
  await drawn(other);
  const button = other.getByRole('button', { name: 'Use it now' });
  await button.waitFor();
  await cell();
  await typing.keyboard.type('Half typed');
  const reloaded = typing.waitForEvent('load');
  await button.click();
  await reloaded;
  await drawn(typing);
  await cell();
  expect(await typing.locator('[role=gridcell][tabindex="0"]').textContent()).toBe('Half typed');
});
