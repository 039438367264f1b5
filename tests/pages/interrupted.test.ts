import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { drawn, notebook } from './browser.ts';

const site = notebook();
const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

const head = 'horse_id,date,limb,toe_angle_deg\n';
const feet = `${head}Bella,2026-03-09,LF,51\nBella,2026-03-09,RF,52\nBella,2026-03-09,LH,53\nBella,2026-03-09,RH,54\n`;

async function openFeet(page: Page) {
  const buffer = Buffer.from(feet);
  await page.locator('input[type=file]').first().setInputFiles({ name: 'feet.csv', mimeType: 'text/csv', buffer });
  await page.getByText('feet.csv opened.').waitFor({ state: 'attached' });
}

const kept = (page: Page) => page.getByText('Kept on this device.').waitFor();
const toe = (page: Page) => page.getByLabel('Toe angle', { exact: true });
const foot = (page: Page) => page.locator('.foot-form h3').textContent();
const angles = (page: Page) => page.locator('[role=gridcell][aria-colindex="6"]').allTextContents();
const cell = (page: Page, row: number) => page.locator(`[aria-rowindex="${row + 1}"] [aria-colindex="6"]`);

test('what is still being typed is kept over a reload, which comes back to the same foot', async () => {
  const { page, wrongs } = await site.open('record.html', phone);
  await openFeet(page);
  for (let turns = 0; turns < 2; turns++) await page.getByRole('button', { name: 'Next foot' }).first().tap();
  const third = await foot(page);
  await toe(page).fill('');
  await toe(page).pressSequentially('48,5');
  await page.reload();
  await drawn(page);
  expect(await foot(page)).toBe(third);
  expect(await toe(page).inputValue()).toBe('48.5');

  await page.getByLabel('Sheet', { exact: true }).check();
  await cell(page, 1).tap();
  await cell(page, 1).tap();
  await page.getByRole('textbox', { name: 'Toe angle' }).fill('47');
  await page.reload();
  await drawn(page);
  await page.getByLabel('Sheet', { exact: true }).check();
  expect(await angles(page)).toEqual(['47.0 °', '52.0 °', '48.5 °', '54.0 °']);
  expect(wrongs).toEqual([]);
});

test('what is being typed stays as it is while something else of the foot changes', async () => {
  const { page, context } = await site.open('record.html', phone);
  await openFeet(page);
  await kept(page);
  const other = await context.newPage();
  await other.goto(`${site.address}record.html`);
  await drawn(other);
  await toe(page).fill('4');
  const heel = (tab: Page) => tab.getByLabel('Heel angle', { exact: true });
  await heel(other).fill('47');
  await heel(other).press('Enter');
  await expect.poll(() => heel(page).inputValue()).toBe('47');
  await toe(page).press('8');
  await toe(page).press('Enter');
  expect(await toe(page).inputValue()).toBe('48');
});

test('what is typed goes to the foot it was begun for, though another tab takes a row away above it', async () => {
  const { page, context, wrongs } = await site.open('record.html');
  await openFeet(page);
  await kept(page);
  const other = await context.newPage();
  await other.setViewportSize(phone.viewport);
  await other.goto(`${site.address}record.html`);
  await drawn(other);
  await other.getByLabel('One foot at a time').check();
  for (let turns = 0; turns < 3; turns++) await other.getByRole('button', { name: 'Next foot' }).first().click();
  await toe(other).fill('44');
  await cell(page, 3).click();
  await page.keyboard.type('43');

  const third = await context.newPage();
  await third.goto(`${site.address}record.html`);
  await drawn(third);
  await cell(third, 1).click();
  await third.getByRole('button', { name: 'Remove the row' }).click();
  await expect.poll(() => page.locator('.sheet-count').textContent()).toContain('3 rows');
  await expect.poll(() => foot(other)).toContain('RH');
  await page.keyboard.press('Enter');
  await toe(other).press('Enter');
  const all = ['52.0 °', '43.0 °', '44.0 °'];
  for (const tab of [page, third]) await expect.poll(() => angles(tab)).toEqual(all);

  // The foot itself may be taken away; then what was typed goes nowhere, and that is said.
  await cell(page, 2).click();
  await page.keyboard.type('1');
  await toe(other).fill('2');
  await cell(third, 2).click();
  await third.keyboard.press('Shift+ArrowDown');
  await third.getByRole('button', { name: 'Remove 2 rows' }).click();
  await expect.poll(() => page.locator('.sheet-count').textContent()).toContain('1 row');
  await page.keyboard.press('Enter');
  expect(await page.locator('.sheet-count').textContent()).toContain('The row is gone; “1” was put nowhere');
  await expect.poll(() => foot(other)).toContain('RF');
  for (const tab of [page, third]) await expect.poll(() => angles(tab)).toEqual(['52.0 °']);
  expect(wrongs).toEqual([]);
});
