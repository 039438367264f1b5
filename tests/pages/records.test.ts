import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { axeRules, drawn, notebook, overflow } from './browser.ts';

const site = notebook();

async function panel(page: Page) {
  await page.getByText('Records on this device').click();
  await page.getByLabel('Begin a new record, called').waitFor();
}

async function begin(page: Page, name: string) {
  await page.getByLabel('Begin a new record, called').fill(name);
  await page.getByRole('button', { name: 'Begin it' }).click();
  await page.locator('.whose').getByText(`“${name}”`).waitFor();
}

test('records are begun, named, changed between, and deleted after asking twice', async () => {
  const { page, context, wrongs } = await site.open('record.html');
  await panel(page);
  await page.getByText('No record of your own yet.').waitFor();
  await begin(page, 'North <b>yard</b>');
  await page
    .getByRole('button', { name: 'New foot' })
    .or(page.getByRole('button', { name: 'Add a row' }))
    .click();
  await expect.poll(() => page.getByRole('grid', { name: 'Every reading' }).getAttribute('aria-rowcount')).toBe('2');
  await page.locator('.kept').getByText('Kept on this device.').waitFor();
  await begin(page, 'South yard');
  await expect.poll(() => page.getByRole('grid', { name: 'Every reading' }).getAttribute('aria-rowcount')).toBe('1');
  const other = await context.newPage();
  await other.goto(`${site.address}cautions.html`);
  await drawn(other);
  expect(await other.textContent('.whose')).toContain('South yard');
  await page.getByRole('button', { name: 'Show North <b>yard</b>' }).click();
  await other.getByText('North <b>yard</b>').first().waitFor();
  await expect.poll(() => page.getByRole('grid', { name: 'Every reading' }).getAttribute('aria-rowcount')).toBe('2');
  await page.getByRole('button', { name: 'Rename South yard' }).click();
  await page.getByLabel('Its new name').fill('Hill');
  await page.getByRole('button', { name: 'Rename it' }).click();
  await page.getByRole('button', { name: 'Delete Hill' }).click();
  await page.getByRole('button', { name: 'Yes, delete it', exact: true }).click();
  await page.getByText('There is no way back').waitFor();
  await page.getByRole('button', { name: 'No, keep it' }).click();
  await page.getByRole('button', { name: 'Delete Hill' }).click();
  await page.getByRole('button', { name: 'Yes, delete it', exact: true }).click();
  await page.getByRole('button', { name: 'Yes, delete it for good' }).click();
  await expect.poll(() => page.getByRole('button', { name: 'Delete Hill' }).count()).toBe(0);
  await page.reload();
  await drawn(page);
  expect(await page.textContent('.whose')).toContain('North <b>yard</b>');
  expect(wrongs).toEqual([]);
});

test('a name that was given stands in the history', async () => {
  const { page } = await site.open('record.html', { viewport: { width: 1280, height: 900 } });
  await panel(page);
  await page.getByLabel('Your name, for the history').fill('Mia');
  await page.getByRole('button', { name: 'Remember it' }).click();
  const grid = page.getByRole('grid', { name: 'Every reading' });
  await grid.locator('[tabindex="0"]').focus();
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Delete');
  const history = page.getByRole('region', { name: 'What stood in the chosen cell before' });
  await history.getByText(/, Mia: .+ became nothing/).waitFor();
});

test('the panel of records is clean by axe and fits a phone', async () => {
  const { page } = await site.open('record.html', { viewport: { width: 390, height: 844 } });
  await panel(page);
  await begin(page, 'North yard');
  await page.getByRole('button', { name: 'Delete North yard' }).click();
  const { violations } = await new AxeBuilder({ page }).include('.records').withTags(axeRules).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join('\n')}`)).toEqual([]);
  expect(await overflow(page)).toEqual({ over: 0, out: [] });
});
