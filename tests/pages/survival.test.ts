import type { BrowserContextOptions, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { drawn, notebook } from './browser.ts';

const site = notebook();
const wide: BrowserContextOptions = { viewport: { width: 1280, height: 900 } };

async function opened() {
  const { page, context, wrongs } = await site.open('record.html', wide);
  return { page, context, wrongs };
}

const grid = (page: Page) => page.getByRole('grid', { name: 'Every reading' });

/** Puts the focus into the first row of a column, by keys alone. */
async function go(page: Page, heading: string): Promise<void> {
  await grid(page).locator('[tabindex="0"]').focus();
  await page.keyboard.press('Control+Home');
  for (let step = 0; step < 70; step++) {
    const column = await page.evaluate(() =>
      document.activeElement!.closest('[aria-colindex]')!.getAttribute('aria-colindex'),
    );
    const title = await grid(page).locator(`[role=columnheader][aria-colindex="${column}"]`).textContent();
    if (title!.startsWith(heading)) return;
    await page.keyboard.press('ArrowRight');
  }
  throw new Error(`There is no column ${heading}`);
}

async function type(page: Page, text: string): Promise<void> {
  await go(page, 'Toe angle');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

async function read(page: Page): Promise<string | null> {
  await go(page, 'Toe angle');
  return page.locator('[role=gridcell][tabindex="0"]').textContent();
}

const kept = (page: Page) => page.locator('.kept').getByText('Kept on this device.').waitFor();

async function reopened(page: Page): Promise<void> {
  await page.goto(`${site.address}record.html`);
  await drawn(page);
}

test('a storage that is full is said to be, what was typed stays, and is kept once there is room', async () => {
  const context = await site.context(wide);
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  const { origin } = new URL(site.address);
  // Before anything is written: for a while a browser remembers how much room there was.
  await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
  await reopened(page);
  await type(page, '62');
  await page.getByRole('alert').getByText('there is no room left on this device').waitFor();
  expect(await read(page)).toBe('62.0 °');
  await session.send('Storage.overrideQuotaForOrigin', { origin });
  await kept(page);
  await reopened(page);
  expect(await read(page)).toBe('62.0 °');
});

test('a change of the journal that can’t be read any more is told of, and everything else stands', async () => {
  const { page } = await opened();
  for (const text of ['61', '62', '63']) await type(page, text);
  await kept(page);
  await page.evaluate(async () => {
    const done = <Result>(request: IDBRequest<Result>) =>
      new Promise<Result>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const base = await done(indexedDB.open('evenhoof'));
    const store = base.transaction('entries', 'readwrite').objectStore('entries');
    const [key] = (await done(store.getAllKeys())).slice(1);
    const entry = await done(store.get(key));
    entry.entry.edits[0].after[0] = 99;
    await done(store.put(entry, key));
    base.close();
  });
  await reopened(page);
  await page.getByRole('alert').getByText('One change in this record’s journal can’t be read any more').waitFor();
  expect(await read(page)).toBe('63.0 °');
  await type(page, '64');
  await kept(page);
});

test('a clock set back changes no order, and a cell’s history shows what came last first', async () => {
  const { page } = await opened();
  await type(page, '61');
  await kept(page);
  await page.evaluate(() => {
    Date.now = () => Date.UTC(2001, 0, 1);
  });
  await type(page, '62');
  await kept(page);
  await reopened(page);
  expect(await read(page)).toBe('62.0 °');
  const history = page.getByRole('region', { name: 'What stood in the chosen cell before' });
  await history.getByText('became 62').waitFor();
  const lines = await history.locator('li').allTextContents();
  expect(lines).toHaveLength(2);
  expect(lines[0]).toMatch(/2001.+61\.0.+became 62\.0/);
  expect(lines[1]).toMatch(/became 61\.0/);
});

test('two tabs type into one cell: the later wins in both, and both are in its history', async () => {
  const { page, context } = await opened();
  await type(page, '60');
  await kept(page);
  const other = await context.newPage();
  await reopened(other);
  await Promise.all([type(page, '61'), type(other, '62')]);
  await Promise.all([kept(page), kept(other)]);
  await expect.poll(() => read(page)).toBe(await read(other));
  const last = await read(page);
  expect(['61.0 °', '62.0 °']).toContain(last);
  await reopened(page);
  expect(await read(page)).toBe(last);
  const history = page.getByRole('region', { name: 'What stood in the chosen cell before' });
  await expect.poll(() => history.locator('li').count()).toBe(3);
  const words = (await history.textContent())!;
  expect(words).toContain('became 61');
  expect(words).toContain('became 62');
  await other.bringToFront();
  await type(other, '63');
  await kept(other);
  await expect.poll(() => read(page)).toBe('63.0 °');
});

/** The layout of before there was a journal, as an older notebook left it. */
const OLDER = `new Promise((resolve, reject) => {
  const request = indexedDB.open('evenhoof', 2);
  request.onupgradeneeded = () => {
    const made = request.result;
    made.createObjectStore('heads');
    made.createObjectStore('columns');
    const rows = 20000;
    const columns = {
      horse_id: { codes: new Int32Array(rows), levels: ['Bramble'] },
      date: { kind: 'date', unit: 'd', values: Float64Array.from({ length: rows }, (_, row) => 19000 + 7 * (row >> 2)) },
      limb: { codes: Int32Array.from({ length: rows }, (_, row) => row % 4), levels: ['LF', 'RF', 'LH', 'RH'] },
      toe_angle_deg: { kind: 'number', unit: 'deg', values: new Float64Array(rows).fill(57) },
    };
    const head = { problems: [], file: 'older.csv', names: Object.keys(columns) };
    request.transaction.objectStore('heads').put({ feet: head }, 'own');
    Object.values(columns).forEach((column, place) =>
      request.transaction.objectStore('columns').put(column, ['own', 'feet', place]));
  };
  request.onsuccess = () => { request.result.close(); resolve(); };
  request.onerror = () => reject(request.error);
})`;

test('a page that is reloaded again and again while it changes the layout loses nothing of it', async () => {
  const context = await site.context(wide);
  const page = await context.newPage();
  await page.goto(`${site.address}icon.svg`);
  await page.evaluate(OLDER);
  for (let time = 0; time < 8; time++) {
    await page.goto(`${site.address}record.html`, { waitUntil: 'commit' });
    await page.waitForTimeout(Math.random() * 400);
  }
  await reopened(page);
  expect(await page.textContent('.whose')).toContain('older.csv');
  expect(await grid(page).getAttribute('aria-rowcount')).toBe('20001');
  expect(await read(page)).toBe('57.0 °');
  await type(page, '58');
  await kept(page);
});

test('a record that a newer notebook wrote is left as it is, and the page says so', async () => {
  const context = await site.context(wide);
  const page = await context.newPage();
  await page.goto(`${site.address}icon.svg`);
  await page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        const request = indexedDB.open('evenhoof', 99);
        request.onupgradeneeded = () => request.result.createObjectStore('newer').put('precious', 'x');
        request.onsuccess = () => {
          request.result.close();
          resolve();
        };
      }),
  );
  await page.goto(`${site.address}record.html`);
  await page.getByRole('alert').getByText('written by a newer Evenhoof').waitFor();
  const still = await page.evaluate(
    () =>
      new Promise((resolve) => {
        const request = indexedDB.open('evenhoof');
        request.onsuccess = () => {
          const got = request.result.transaction('newer').objectStore('newer').get('x');
          got.onsuccess = () => resolve([request.result.version, got.result]);
        };
      }),
  );
  expect(still).toEqual([99, 'precious']);
});

test('the record as it stood on another day is shown, and taken back to as a change of its own', async () => {
  const { page } = await opened();
  const before = await read(page);
  await page.evaluate(() => {
    const { now } = Date;
    Date.now = () => now() - 3 * 86_400_000;
  });
  await type(page, '61');
  await kept(page);
  await reopened(page);
  await type(page, '62');
  await kept(page);
  await page.getByText('The record as it stood on another day').click();
  const day = await page.evaluate(() => new Intl.DateTimeFormat('sv-SE').format(Date.now() - 2 * 86_400_000));
  await page.getByLabel('As it stood at the end of').fill(day);
  await page.getByText('Since then 1 cell has changed.').waitFor();
  await page.getByRole('grid', { name: 'Every reading as it stood on' }).getByText('61.0').first().waitFor();
  await page.getByRole('button', { name: 'Take the record back to' }).click();
  await expect.poll(() => read(page)).toBe('61.0 °');
  await kept(page);
  await page.getByRole('button', { name: /^Take back: going back to/ }).click();
  await expect.poll(() => read(page)).toBe('62.0 °');
  expect(before).not.toBe('61.0 °');
});
