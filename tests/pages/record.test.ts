import AxeBuilder from '@axe-core/playwright';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { axeRules, drawn, notebook, overflow, shot } from './browser.ts';

const site = notebook();

const wide: BrowserContextOptions = {
  viewport: { width: 1280, height: 900 },
  permissions: ['clipboard-read', 'clipboard-write'],
};
const phone: BrowserContextOptions = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

async function opened(options = wide) {
  const notebook = await site.open('record.html', options);
  const { page } = notebook;
  return { ...notebook, ...tools(page) };
}

/** What a test does on the page, by the headings that a reader sees. */
function tools(page: Page) {
  const grid = page.getByRole('grid', { name: 'Every reading' });
  const said = () => page.locator('.sheet-count').textContent();
  const place = () =>
    page.evaluate(() => {
      const cell = document.activeElement!.closest('[aria-colindex]')!;
      return [cell.parentElement!.getAttribute('aria-rowindex'), cell.getAttribute('aria-colindex')].map(Number);
    });
  /** Puts the focus into a row, counted from 1, of a column, by keys alone. */
  const go = async (heading: string, row = 1) => {
    await grid.locator('[tabindex="0"]').focus();
    await page.keyboard.press('Control+Home');
    for (let down = 1; down < row; down++) await page.keyboard.press('ArrowDown');
    for (let step = 0; step < 70; step++) {
      const [, column] = await place();
      const title = await grid.locator(`[role=columnheader][aria-colindex="${column}"]`).textContent();
      if (title!.replace(/^∴ worked out: /, '').startsWith(heading)) return;
      await page.keyboard.press('ArrowRight');
    }
    throw new Error(`There is no column ${heading}`);
  };
  /** What stands in the cell that has the focus. */
  const here = () => page.locator('[role=gridcell][tabindex="0"]').textContent();
  const read = async (heading: string, row = 1) => {
    await go(heading, row);
    return here();
  };
  const kept = () => page.getByText('Kept on this device.').waitFor();
  const copy = (text: string) => page.evaluate((text) => navigator.clipboard.writeText(text), text);
  return { grid, said, place, go, here, read, kept, copy };
}

test('typing begins in the cell; Enter goes down, Tab to the side, Escape gives up, F2 changes what stands there', async () => {
  const { page, go, here, place, wrongs } = await opened();
  await go('Toe angle');
  const [row, column] = await place();
  await page.keyboard.type('51,25°');
  await page.keyboard.press('Enter');
  expect(await place()).toEqual([row + 1, column]);
  await page.keyboard.press('ArrowUp');
  expect(await here()).toBe('51.25 °');
  await page.keyboard.type('99');
  await page.keyboard.press('Escape');
  expect(await here()).toBe('51.25 °');
  await page.keyboard.press('F2');
  await page.keyboard.press('Backspace');
  await page.keyboard.press('Tab');
  expect(await place()).toEqual([row, column + 1]);
  await page.keyboard.press('ArrowLeft');
  expect(await here()).toBe('51.2 °');
  await page.keyboard.press('Delete');
  expect(await here()).toBe('–missing');
  expect(wrongs).toEqual([]);
});

test('what is worked out follows at once, and can’t be typed in', async () => {
  const { page, go, here, read, said } = await opened();
  for (const [heading, value] of [
    ['Inside wall height', '60'],
    ['Outside wall height', '50'],
  ]) {
    await go(heading);
    await page.keyboard.type(value);
    await page.keyboard.press('Enter');
  }
  expect(await read('Level from the front')).toMatch(/^10\.0 ± \d/);
  await page.keyboard.type('5');
  expect(await here()).toMatch(/^10\.0/);
  expect(await said()).toContain('is worked out and can’t be typed in');
  expect(await page.locator(':focus').getAttribute('aria-readonly')).toBe('true');
});

test('a block is pasted at once, units and decimal commas understood, filled down, taken back and done again', async () => {
  const { page, grid, go, here, read, said, copy } = await opened();
  const before = await read('Heel length', 3);
  await copy('8,5 cm\t3 1/4 in\n84,5\tlong\n');
  await go('Toe length');
  await page.keyboard.press('Control+v');
  await expect.poll(said).toContain('1 cell can’t be used and is marked');
  expect(await read('Toe length')).toBe('85.0 mm');
  expect(await read('Heel length')).toBe('82.55 mm');
  expect(await read('Heel length', 2)).toContain('long');
  await go('Heel length');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Shift+ArrowDown');
  expect(await grid.locator('[aria-selected=true]').count()).toBe(3);
  await page.keyboard.press('Control+d');
  expect(await here()).toBe('82.55 mm');
  await page.keyboard.press('Control+z');
  expect(await here()).toBe(before);
  await page.getByRole('button', { name: 'Take back: pasting into Toe length and Heel length, 2 rows' }).click();
  expect(await read('Heel length')).not.toBe('82.55 mm');
  await page.keyboard.press('Control+Shift+z');
  await page.keyboard.press('Control+y');
  expect(await read('Heel length', 3)).toBe('82.55 mm');
});

test('a cell that can’t be used keeps its text, says at the cell what was expected, and blocks nothing', async () => {
  const { page, go, here, read } = await opened();
  await go('Toe angle');
  await page.keyboard.type('about 50');
  await page.keyboard.press('Enter');
  await page.keyboard.type('52');
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowUp');
  expect(await here()).toBe('52.0 °');
  expect(await read('Toe angle')).toContain('about 50');
  const cell = page.locator(':focus');
  expect(await cell.getAttribute('aria-invalid')).toBe('true');
  const note = page.locator('.cell-note');
  expect(await note.textContent()).toContain('Expected an angle in degrees, such as 52 or 52.5°. Correct the cell');
  const [box, at] = [await note.boundingBox(), await cell.boundingBox()];
  expect(Math.abs(box!.y - (at!.y + at!.height))).toBeLessThan(4);
  expect(await read('Toe angle against pastern angle')).toBe('–missing');
  await page.getByText('cells could not be used').click();
  await page.getByRole('grid', { name: 'Cells that could not be used' }).getByText('about 50').waitFor();
});

test('a block is drawn out with the mouse and copied as tab-separated text', async () => {
  const { page, grid, go, place } = await opened();
  await go('Toe angle', 2);
  const [row, column] = await place();
  const cell = (down: number, right: number) =>
    grid.locator(`[aria-rowindex="${row + down}"] [aria-colindex="${column + right}"]`);
  await cell(0, 0).hover();
  await page.mouse.down();
  await cell(1, 1).hover();
  await page.mouse.up();
  expect(await grid.locator('[aria-selected=true]').count()).toBe(4);
  await page.keyboard.press('Control+c');
  const lines = (await page.evaluate(() => navigator.clipboard.readText())).split('\n');
  expect(lines.map((line) => line.split('\t').length)).toEqual([2, 2]);
});

test('rows are added and removed, and both can be taken back', async () => {
  const { page, grid, go, here } = await opened();
  const rows = Number(await grid.getAttribute('aria-rowcount'));
  await go('Limb');
  const limb = await here();
  await page.getByRole('button', { name: 'Add a row' }).click();
  await expect.poll(() => grid.getAttribute('aria-rowcount')).toBe(String(rows + 1));
  expect(await grid.locator('[aria-rowindex="3"] [aria-colindex="3"]').textContent()).not.toBe(limb);
  await page.getByRole('button', { name: 'Remove the row' }).click();
  await expect.poll(() => grid.getAttribute('aria-rowcount')).toBe(String(rows));
  await grid.locator('[tabindex="0"]').focus();
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect.poll(() => grid.getAttribute('aria-rowcount')).toBe(String(rows));
  await page.getByRole('button', { name: 'Do again: adding a row' }).waitFor();
});

test('a column is added by keyboard: completion, unit, first values, a fault at its place; it stays, and goes when nobody needs it', async () => {
  const { page, grid, read, said, kept } = await opened();
  await page.getByText('Add a column that is worked out').focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  await page.keyboard.type('frog share');
  await page.keyboard.press('Tab');
  await page.keyboard.type('frog_w');
  const field = page.getByRole('combobox', { name: 'Formula' });
  await page.getByRole('option', { name: /^frog_width_mm/ }).waitFor();
  expect(await field.getAttribute('aria-expanded')).toBe('true');
  await page.keyboard.press('Enter');
  expect(await field.inputValue()).toBe('frog_width_mm');
  await page.keyboard.type(' + toe_angle_deg ');
  await page.locator('.own-preview').getByText("can't be added").waitFor();
  expect(await page.locator('.formula-mirror .fault').textContent()).toBe('frog_width_mm + toe_angle_deg');
  for (let back = 0; back < ' + toe_angle_deg '.length; back++) await page.keyboard.press('Backspace');
  await page.keyboard.press('Escape');
  await page.keyboard.type(' / foot_width');
  await page.keyboard.press('Tab');
  await page
    .locator('.own-preview')
    .getByText(/In plain numbers\. First rows: 0\.\d\d/)
    .waitFor();
  await page.keyboard.press('Enter');
  await expect.poll(said).toContain('The column frog share is added');
  expect(await read('frog share')).toMatch(/^0\.\d/);

  await page.getByLabel('Name', { exact: true }).fill('twice');
  await field.fill('2 * column("frog share")');
  await page.getByRole('button', { name: 'Keep this column' }).click();
  await page.getByRole('button', { name: 'Remove frog share' }).click();
  await page.getByRole('alert').getByText('twice is made from it').waitFor();
  await kept();
  await page.reload();
  await drawn(page);
  expect(await read('frog share')).toMatch(/^0\.\d/);
  await page.getByText('Add a column that is worked out').click();
  await page.getByRole('button', { name: 'Remove twice' }).click();
  await page.getByRole('button', { name: 'Remove frog share' }).click();
  await grid.locator('[tabindex="0"]').focus();
  await expect(read('frog share')).rejects.toThrow('no column');
});

test('the focus is never nowhere when what was pressed goes away, and a long name takes lines of its own', async () => {
  const { page, go, said } = await opened();
  const focused = () => page.evaluate(() => document.activeElement!.tagName);
  await page.getByLabel('Keep rows by').selectOption({ label: 'Horse' });
  await page.getByLabel('containing', { exact: true }).fill('Thistle');
  await page.keyboard.press('Enter');
  expect(await focused()).toBe('SELECT');
  await page.getByRole('button', { name: 'Take off: Horse' }).click();
  expect(await focused()).toBe('SELECT');
  await go('Toe angle');
  await page.keyboard.type('66');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Take back: typing' }).focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  expect(await focused()).toBe('BUTTON');
  expect(await said()).toContain('There is nothing to take back');
  await page.getByText('Add a column that is worked out').click();
  await page.getByLabel('Name', { exact: true }).fill('long'.repeat(80));
  await page.getByRole('combobox', { name: 'Formula' }).fill('toe_length_mm / 10');
  await page.getByRole('button', { name: 'Keep this column' }).click();
  const remove = page.getByRole('button', { name: 'Remove long' });
  await remove.waitFor();
  expect(await overflow(page)).toEqual({ over: 0, out: [] });
  await remove.click();
  expect(await focused()).toBe('SUMMARY');
});

test('a computed cell says where it came from', async () => {
  const { page, go } = await opened();
  await go('Inside wall height');
  await page.keyboard.type('60');
  await page.keyboard.press('Tab');
  await page.keyboard.type('50');
  await page.keyboard.press('Enter');
  await go('Level from the front');
  const origin = page.getByRole('region', { name: 'Where the chosen cell came from' });
  await origin.getByText('60.0 mm − 50.0 mm gives 10.0 mm').waitFor();
  const words = (await origin.textContent())!;
  expect(words).toContain('Inside wall height minus Outside wall height');
  expect(words).toMatch(/10\.0 ± \d/);
  expect(words).toMatch(/Range.+mm/);
  expect(await origin.locator('svg').count()).toBe(1);
  expect(await origin.locator('.origin-tree').textContent()).toMatch(
    /Inside wall height 60\.0 ± \d.+Outside wall height 50\.0 ± \d/,
  );
  await go('Toe angle');
  await origin.getByText(/about \d.*one standard error/).waitFor();
});

test('what is typed over the demo herd makes a changed copy that every page shows, survives a reload, and can be given up', async () => {
  const { page, context, go, read, kept } = await opened();
  await go('Toe angle');
  await page.keyboard.type('77');
  await page.keyboard.press('Enter');
  await page.keyboard.type('steep');
  await page.keyboard.press('Enter');
  await page.getByText('A changed copy of the invented demo herd').waitFor();
  await kept();
  await page.reload();
  await drawn(page);
  expect(await read('Toe angle')).toBe('77.0 °');
  expect(await read('Toe angle', 2)).toContain('steep');
  const other = await context.newPage();
  await other.goto(`${site.address}herd.html`);
  await drawn(other);
  expect(await other.textContent('.whose')).toContain('None of these horses exists');
  await other.getByText(/cells could not be used/).click();
  await other.getByRole('grid', { name: 'Cells that could not be used' }).getByText('steep').waitFor();
  await page.getByRole('button', { name: 'Back to the demo herd as it was' }).click();
  await page.getByText('Invented demo herd.').waitFor();
  await expect.poll(() => read('Toe angle')).not.toBe('77.0 °');
  await page.reload();
  await drawn(page);
  expect(await page.textContent('.whose')).toContain('Invented demo herd');
});

test('what was typed last is kept when the page is left at once', async () => {
  const { page, go, read } = await opened();
  await go('Toe angle');
  await page.keyboard.type('66');
  await page.keyboard.press('Enter');
  await page.goto(`${site.address}cautions.html`);
  await page.goto(`${site.address}record.html`);
  await drawn(page);
  expect(await read('Toe angle')).toBe('66.0 °');
});

test('where the browser keeps nothing it says so, and typing works all the same', async () => {
  const { context } = await site.open('cautions.html', wide);
  await context.addInitScript(() => {
    Object.defineProperty(IDBFactory.prototype, 'open', {
      value() {
        throw new DOMException('Denied', 'SecurityError');
      },
    });
  });
  const page = await context.newPage();
  await page.goto(`${site.address}record.html`);
  await drawn(page);
  const { go, read } = tools(page);
  await go('Toe angle');
  await page.keyboard.type('66');
  await page.keyboard.press('Enter');
  await page.getByRole('alert').getByText('Not kept: this browser keeps nothing').waitFor();
  expect(await read('Toe angle')).toBe('66.0 °');
});

test('on a phone one foot at a time is typed in, with last time beside it and a doubt at once', async () => {
  const { page, said, kept } = await opened(phone);
  expect(await page.getByLabel('One foot at a time').isChecked()).toBe(true);
  const field = page.getByLabel('Toe angle', { exact: true });
  expect(await field.getAttribute('inputmode')).toBe('decimal');
  const first = await page.locator('.foot-form h3').textContent();
  for (let foot = 0; foot < 4; foot++) await page.getByRole('button', { name: 'Next foot' }).first().tap();
  await page
    .getByText(/^last time \d/)
    .first()
    .waitFor();
  expect(await said()).toContain((await page.locator('.foot-form h3').textContent())!);
  await field.fill('520');
  await field.press('Enter');
  await page.locator('.doubted').getByText('Expected 15 to 110 deg').waitFor();
  expect(await page.evaluate(() => document.activeElement?.closest('.foot-field')?.textContent)).toContain(
    'Heel angle',
  );
  await field.fill('52,5');
  await field.press('Enter');
  expect(await page.locator('.doubted').count()).toBe(0);
  expect(await field.inputValue()).toBe('52.5');
  await kept();
  for (let foot = 0; foot < 4; foot++) await page.getByRole('button', { name: 'Foot before' }).first().tap();
  expect(await page.locator('.foot-form h3').textContent()).toBe(first);
});

test('a swipe turns to the next foot and back, and a new foot begins with the next limb', async () => {
  const { page } = await opened(phone);
  const name = () => page.locator('.foot-form h3').textContent();
  const first = await name();
  const touch = await page.context().newCDPSession(page);
  const swipe = async (from: number, to: number) => {
    const y = 420;
    await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x: from, y }] });
    for (let step = 1; step <= 8; step++)
      await touch.send('Input.dispatchTouchEvent', {
        type: 'touchMove',
        touchPoints: [{ x: from + ((to - from) * step) / 8, y }],
      });
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  };
  await page.locator('.foot-form').evaluate((form) => scrollTo(0, form.getBoundingClientRect().top + scrollY - 100));
  await swipe(330, 60);
  await expect.poll(name).not.toBe(first);
  await swipe(60, 330);
  await expect.poll(name).toBe(first);
  await page.getByRole('button', { name: 'New foot' }).click();
  await expect.poll(name).toContain(', RF,');
  expect(await page.getByLabel('Toe angle', { exact: true }).inputValue()).toBe('');
});

test('on a phone nothing is too small to hit, and nothing sticks out', async () => {
  const { page } = await opened(phone);
  const small = await page.evaluate(() =>
    [
      ...document.querySelectorAll(
        '.foot-form button, .foot-form input, .foot-form select, .foot-form summary, .ways label',
      ),
    ]
      .filter((part) => part.checkVisibility())
      .filter((part) => part.getBoundingClientRect().height < 48)
      .map((part) => part.outerHTML.slice(0, 100)),
  );
  expect(small).toEqual([]);
  expect(await overflow(page)).toEqual({ over: 0, out: [] });
  await shot(page, 'record-phone');
});

test.each([
  ['as a sheet, with a marked cell, a panel and a list of columns', wide],
  ['one foot at a time', phone],
])(
  'the page is clean by axe %s',
  async (_, options) => {
    const { page, go } = await opened(options);
    if (options === wide) {
      await go('Toe angle');
      await page.keyboard.type('about 50');
      await page.keyboard.press('Enter');
      await page.keyboard.press('ArrowUp');
      await page.getByText('Add a column that is worked out').click();
      await page.getByRole('combobox', { name: 'Formula' }).fill('toe');
      await page.locator('.offered [role=option]').first().waitFor();
    }
    const { violations } = await new AxeBuilder({ page }).withTags(axeRules).analyze();
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 200)).join('\n')}`),
    ).toEqual([]);
  },
  180_000,
);
