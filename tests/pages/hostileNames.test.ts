import { expect, test } from 'vitest';
import { pages } from '../../notebooks/index.ts';
import { hostileFeet, hostileNames } from '../hostileNames.ts';
import { drawn, notebook, overflow } from './browser.ts';

const site = notebook();

/** What stands in a document as words: text, and what is said of pictures. */
const words = () => {
  const said = [...document.querySelectorAll('[aria-label], [title]')].map(
    (element) => `${element.getAttribute('aria-label')} ${element.getAttribute('title')}`,
  );
  return `${document.body.textContent} ${said.join(' ')}`;
};

test('on every page hostile names are words: nothing of them runs, no element comes of them, no page grows wide', async () => {
  const { page, context, wrongs } = await site.open('cautions.html');
  const dialogs: string[] = [];
  const wide: string[] = [];
  await page.getByLabel('Open your own files').setInputFiles({
    ...{ name: '<b onclick=alert(1)>.csv', mimeType: 'text/csv' },
    buffer: Buffer.from(hostileFeet()),
  });
  await page.getByText('Your herd', { exact: true }).waitFor();
  for (const { name } of pages) {
    const other = await context.newPage();
    other.on('pageerror', (error) => wrongs.push(`${name}: ${error.message}`));
    other.on('dialog', (dialog) => {
      dialogs.push(dialog.message());
      dialog.dismiss();
    });
    other.on('console', (message) => message.type() === 'error' && wrongs.push(`${name}: ${message.text()}`));
    await other.goto(`${site.address}${name}.html`);
    await drawn(other);
    const found = await other.evaluate(() => ({
      taken: (globalThis as { taken?: unknown }).taken,
      made: document.querySelectorAll('#page img[src="x"], #page script, #desk script, #desk b, [onerror], [onload]')
        .length,
      links: [...document.querySelectorAll('a')].filter(({ href }) => href.startsWith('javascript')).length,
      strong: [...document.querySelectorAll('#page strong')].filter(({ textContent }) => textContent === 'strong')
        .length,
    }));
    expect({ name, ...found }).toEqual({ name, taken: undefined, made: 0, links: 0, strong: 0 });
    expect({ name, failures: await other.locator('#blocks .failure, #blocks .trouble').allTextContents() }).toEqual({
      ...{ name, failures: [] },
    });
    const { over, out } = await overflow(other);
    if (over > 0) wide.push(`${name} by ${over} px: ${out[0]}`);
    await other.close();
  }
  expect(dialogs).toEqual([]);
  expect(wide).toEqual([]);
  expect(wrongs).toEqual([]);
}, 600_000);

test('a sheet shows them as they are, its cells and what is said about them', async () => {
  const { page } = await site.open('measurements.html');
  await page.getByLabel('Open your own files').setInputFiles({
    ...{ name: 'feet.csv', mimeType: 'text/csv' },
    buffer: Buffer.from(hostileFeet(hostileNames.slice(0, 6))),
  });
  await page.getByText('Your herd', { exact: true }).waitFor();
  const second = await page.context().newPage();
  await second.goto(`${site.address}record.html`);
  await drawn(second);
  const grid = second.getByRole('grid', { name: 'Every reading' });
  await grid.getByRole('gridcell', { name: hostileNames[0] }).first().waitFor();
  await grid.getByRole('gridcell', { name: hostileNames[0] }).first().click();
  expect(await second.evaluate(words)).toContain(hostileNames[0]);
  const one = await page.context().newPage();
  await one.goto(`${site.address}one-horse.html`);
  await drawn(one);
  expect(await one.evaluate(words)).toContain(hostileNames[1]);
});
