import { expect, test } from 'vitest';
import { pages } from '../../notebooks/index.ts';
import { drawn, notebook } from './browser.ts';

const site = notebook();

test('after the first visit every page, its data and its linked charts work without a network', async () => {
  const { page, context, wrongs } = await site.open('');
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await context.setOffline(true);
  for (const { name, title } of pages) {
    await page.goto(`${site.address}${name}.html`);
    await drawn(page);
    expect(await page.textContent('h1')).toBe(title);
    const linked = page.locator('figure.linked');
    if ((await linked.count()) > 0) {
      await linked.first().scrollIntoViewIfNeeded();
      await linked.first().locator('svg').first().waitFor();
    }
  }
  await page.goto(site.address);
  await drawn(page);
  expect(await page.textContent('h1')).toBe(pages[0].title);
  expect(wrongs).toEqual([]);
});
