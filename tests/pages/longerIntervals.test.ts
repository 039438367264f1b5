import { expect, test } from 'vitest';
import { drawn, notebook } from './browser.ts';

const site = notebook();

/** The page while its model is still being fitted: workers start late enough to be seen. */
async function openedAtWork() {
  const context = await site.context({ viewport: { width: 1280, height: 900 } });
  const page = await context.newPage();
  await page.route('**/taskWorker*', async (route) => {
    await new Promise((resolve) => setTimeout(resolve, 1500));
    await route.continue();
  });
  await page.goto(`${site.address}longer-intervals.html`);
  await page.locator('.working progress').waitFor();
  return page;
}

test('says what it is working out while a worker fits the model, then shows the answer', async () => {
  const page = await openedAtWork();
  expect(await page.locator('.working').textContent()).toContain('Fitting the model and checking it');
  expect(await page.locator('#answer').count()).toBe(0);
  await drawn(page);
  expect(page.workers()).toHaveLength(1);
  expect(await page.locator('.finding').textContent()).toMatch(/A week longer went with .* within the same horse/);
});

test('stops by the keyboard, says so, and works it out when asked again', async () => {
  const page = await openedAtWork();
  await page.getByRole('button', { name: 'Stop' }).focus();
  await page.keyboard.press('Enter');
  expect(await page.locator('.working').textContent()).toContain('stopped');
  expect(page.workers()).toHaveLength(0);
  await page.getByRole('button', { name: 'Work it out' }).focus();
  await page.keyboard.press('Enter');
  await drawn(page);
  expect(await page.locator('.finding').count()).toBe(1);
});

test('another unit or an answer that is known is shown without working it out again', async () => {
  const { page, wrongs } = await site.open('longer-intervals.html');
  const sentence = () => page.locator('.finding').textContent();
  const first = await sentence();
  await page.evaluate(() => {
    const target = window as unknown as { worked: number };
    target.worked = 0;
    new MutationObserver(() => {
      if (document.querySelector('.working')) target.worked++;
    }).observe(document.getElementById('blocks')!, { childList: true, subtree: true });
  });
  const worked = () => page.evaluate(() => (window as unknown as { worked: number }).worked);
  await page.getByLabel('What may change').selectOption('toe_angle_deg');
  await page.waitForFunction(() => document.querySelector('.finding')?.textContent?.includes('toe angle'));
  const once = await worked();
  expect(once).toBeGreaterThan(0);
  await page.getByLabel('What may change').selectOption('wall_level_mm');
  expect(await sentence()).toBe(first);
  await page.getByLabel('Lengths in').selectOption('in');
  await page.waitForFunction(() => document.querySelector('.finding')?.textContent?.includes(' in '));
  expect(await worked()).toBe(once);
  expect(wrongs).toEqual([]);
});
