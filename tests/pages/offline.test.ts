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
}, 300_000);

test('a device can take the notebook among its own programs, and what is typed without a network is kept', async () => {
  const { page, context, wrongs } = await site.open('record.html', { viewport: { width: 1280, height: 900 } });
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  const session = await context.newCDPSession(page);
  const { url, errors } = await session.send('Page.getAppManifest');
  expect([url, errors]).toEqual([`${site.address}manifest.webmanifest`, []]);
  await context.setOffline(true);
  await page.reload();
  await drawn(page);
  const sizes = await page.evaluate(async (address) => {
    const { icons, start_url } = await (await fetch(address)).json();
    const drawn = icons.map(async ({ src, sizes }: { src: string; sizes: string }) => {
      const image = new Image();
      image.src = src;
      await image.decode();
      return [sizes, `${image.naturalWidth}x${image.naturalHeight}`];
    });
    return { icons: await Promise.all(drawn), start: (await fetch(start_url)).ok };
  }, url);
  expect(sizes.start).toBe(true);
  expect(sizes.icons.length).toBeGreaterThan(2);
  for (const [said, is] of sizes.icons) if (said !== 'any') expect(is).toBe(said);
  await page.getByRole('grid', { name: 'Every reading' }).locator('[tabindex="0"]').focus();
  await page.keyboard.press('Control+Home');
  await page.keyboard.type('Typed in the barn');
  await page.keyboard.press('Enter');
  await page.locator('.kept').getByText('Kept on this device.').waitFor();
  await page.reload();
  await drawn(page);
  await page.getByRole('gridcell', { name: 'Typed in the barn' }).first().waitFor();
  expect(wrongs.filter((wrong) => !wrong.includes('ERR_INTERNET_DISCONNECTED'))).toEqual([]);
});
