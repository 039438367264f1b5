import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import { expect, test } from 'vitest';
import { axeRules, drawn, fixturePages, type Opened } from './browser.ts';

const pages = fixturePages();
const desktop = { viewport: { width: 1280, height: 900 } };
const open = (path = 'all-parts.html') => pages.open(path, desktop);

async function saved({ page }: Opened, name: string | RegExp): Promise<{ name: string; bytes: Buffer }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name }).first().click(),
  ]);
  return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
}

test('what a control says changes the page, stands in the address and comes back with a reload', async () => {
  const { page, wrongs } = await open();
  await page.getByLabel('Limb', { exact: true }).selectOption('RH');
  await page.getByLabel('Shod only').check();
  await page.getByLabel('after', { exact: true }).check();
  await page.getByLabel('Words').fill('**Star** & <b>');
  await page.getByLabel('Words').blur();
  await expect.poll(() => page.textContent('.prose')).toContain('the words **Star** & <b>.');
  expect(await page.getByText('Feet RH').count()).toBe(1);
  await page.reload();
  await drawn(page);
  expect(await page.getByLabel('Limb', { exact: true }).inputValue()).toBe('RH');
  expect(await page.getByLabel('Shod only').isChecked()).toBe(true);
  expect(await page.getByLabel('before', { exact: true }).isChecked()).toBe(true);
  expect(await page.textContent('.prose')).toContain('the words **Star** & <b>.');
  expect(wrongs).toEqual([]);
});

test('the focus stays on a control while the page around it is computed afresh', async () => {
  const { page } = await open();
  const limb = page.getByLabel('Limb', { exact: true });
  await limb.focus();
  await limb.selectOption('RF');
  await page.getByText('Feet RF').waitFor();
  expect(await limb.evaluate((element) => element === document.activeElement)).toBe(true);
});

test('a number out of bounds is refused with the bounds, and the page keeps the last good one', async () => {
  const { page } = await open();
  await page.getByLabel('Gap').fill('300');
  await page.getByLabel('Gap').blur();
  await page.getByText('Give a number from 0 to 254').waitFor();
  expect(await page.textContent('.prose')).toContain('The gap is 25.4 mm');
});

test('units switch everywhere at once and are remembered on the next page', async () => {
  const { page } = await open();
  expect(
    await page
      .getByRole('columnheader', { name: /Toe length/ })
      .first()
      .textContent(),
  ).toMatch(/mm$/);
  await page.getByLabel('Lengths in').selectOption('in');
  await expect.poll(() => page.textContent('.prose')).toContain('The gap is 1.00 in');
  expect(await page.getByLabel('Gap').inputValue()).toBe('1');
  expect(
    await page
      .getByRole('columnheader', { name: /Toe length/ })
      .first()
      .textContent(),
  ).toMatch(/in$/);
  await page.getByLabel('Gap').fill('2');
  await page.getByLabel('Gap').blur();
  expect(new URL(page.url()).hash).toContain('gap=50.8');
  await page.goto(`${pages.address}broken.html`);
  await drawn(page);
  expect(await page.getByLabel('Lengths in').inputValue()).toBe('in');
});

test('an address that names a place leads there once the page is drawn', async () => {
  const { page } = await open('all-parts.html#place');
  await expect
    .poll(() => page.locator('#place').evaluate((place) => Math.abs(place.getBoundingClientRect().top) < 5))
    .toBe(true);
});

test('charts that select each other run without generated code, fetched only when they come near', async () => {
  const { page, wrongs } = await pages.open('all-parts.html', { viewport: { width: 1280, height: 300 } });
  const fetched: string[] = [];
  page.on('request', (request) => fetched.push(request.url()));
  await page.waitForTimeout(200);
  expect(fetched.filter((url) => url.includes('/assets/vega'))).toEqual([]);
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.locator('.linked').scrollIntoViewIfNeeded();
  const bars = page.locator('.linked svg .marks path');
  await bars.first().waitFor();
  const box = (await page.locator('.linked svg').boundingBox())!;
  await page.mouse.move(box.x + box.width * 0.6, box.y + box.height * 0.4);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.95, box.y + box.height * 0.4, { steps: 4 });
  await page.mouse.up();
  await expect
    .poll(() => bars.evaluateAll((all) => new Set(all.map((bar) => bar.getAttribute('opacity'))).size))
    .toBeGreaterThan(1);
  expect(wrongs).toEqual([]);
});

test('charts that select each other are as wide as their place, also when it changes', async () => {
  const { page } = await open();
  await page.locator('.linked').scrollIntoViewIfNeeded();
  const spare = () =>
    page.locator('.linked .picture').evaluate((place) => {
      const picture = place.querySelector('svg');
      return picture ? Math.abs(place.clientWidth - Number(picture.getAttribute('width'))) : Number.NaN;
    });
  await expect.poll(spare).toBeLessThan(12);
  await page.setViewportSize({ width: 400, height: 900 });
  await expect.poll(spare).toBeLessThan(12);
});

test('a chart saves as SVG that stands alone and as PNG', async () => {
  const opened = await open();
  const svg = await saved(opened, /as SVG/);
  expect(svg.name).toBe('toes.svg');
  expect(svg.bytes.toString()).toMatch(/^<svg[^>]* xmlns="http:\/\/www.w3.org\/2000\/svg"/);
  expect(svg.bytes.toString()).toMatch(/font-family="[^"]*Avenir/);
  const png = await saved(opened, /as PNG/);
  expect(png.name).toBe('toes.png');
  expect([...png.bytes.subarray(1, 4)].map((byte) => String.fromCharCode(byte)).join('')).toBe('PNG');
  expect(png.bytes.readUInt32BE(16)).toBeGreaterThan(1000);
  expect(opened.wrongs).toEqual([]);
});

test('a download block saves its file', async () => {
  const { name, bytes } = await saved(await open(), 'Take the words');
  expect([name, bytes.toString('utf8')]).toEqual(['words.txt', 'größer']);
});

test('a page that fails says so in words, links nothing it was given, and stands beside what works', async () => {
  const { page } = await open('broken.html');
  expect(await page.textContent('#blocks')).toContain('This part stands.');
  expect(await page.textContent('#blocks')).toContain('could not be drawn: there is no sheet');
  await page.goto(`${pages.address}broken.html#fail=true`);
  await page.reload();
  await drawn(page);
  expect(await page.textContent('#blocks')).toContain('What was found: the horse [ran](away)');
});

test('Arquero’s verbs run on a page that asks for the policy, on that page alone', async () => {
  const strict = await open('strict-verbs.html');
  expect(await strict.page.textContent('#blocks')).toContain("Give the page the policy 'generated' to use its verbs");
  const generated = await open('generated-verbs.html');
  expect(await generated.page.textContent('#blocks')).toContain('Twice the toes: 160, 180');
  expect(generated.wrongs).toEqual([]);
});

test('every part is clean by axe', async () => {
  const { page } = await open();
  await page.locator('.linked svg .marks path').first().waitFor();
  const { violations } = await new AxeBuilder({ page }).withTags(axeRules).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([]);
});
