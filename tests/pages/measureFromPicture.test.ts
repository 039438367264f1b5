import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { landmarkView, scaleLandmarks } from '../../lib/hoof/landmarks/views.ts';
import { type Trial, trialScene, trials } from '../../notebooks/shell/trialPictures.ts';
import { axeRules, drawn, notebook, overflow, shot } from './browser.ts';

const site = notebook();

const wide: BrowserContextOptions = { viewport: { width: 1280, height: 900 } };
const phone: BrowserContextOptions = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

const PICTURE = { width: 4000, height: 3000 };
const SLOW = { timeout: 240_000 };

async function opened(options = wide) {
  const found = await site.open('measure-from-picture.html', options);
  await ready(found.page);
  return { ...found, ...tools(found.page) };
}

/** Goes to the picture, whose code is fetched when it comes near the screen. */
async function ready(page: Page): Promise<void> {
  await page.locator('.picture-part').scrollIntoViewIfNeeded();
  await page.getByLabel('Choose a photograph').waitFor({ state: 'attached' });
}

/** What a reader does on the page. */
function tools(page: Page) {
  const room = page.locator('.picture-room').first();
  const next = () => page.locator('.picture-next').textContent();
  /** Where a px of the whole picture is in the room. */
  const placeOf = async (x: number, y: number, { width, height } = PICTURE) => {
    const { w, h } = await room.evaluate(({ clientWidth: w, clientHeight: h }) => ({ w, h }));
    const scale = Math.min(w / width, h / height);
    return { x: 1 + (w - width * scale) / 2 + x * scale, y: 1 + (h - height * scale) / 2 + y * scale };
  };
  const click = async (x: number, y: number) => room.click({ position: await placeOf(x, y) });
  const draw = async (title: string) => {
    await page.getByLabel(/invented, to try it on/).selectOption({ label: title });
    await page.getByRole('button', { name: 'Draw it' }).click();
    await page.locator('.picture-next').getByText('Lower left corner').waitFor({ timeout: 120_000 });
  };
  /** Which point is asked for: the landmark, and which of the many on it. */
  const asked = async (view: Trial['view']) => {
    const title = await page.locator('.picture-next strong').textContent();
    const [, name, count] = /^(.*?)(?:, (\d+))?$/.exec(title!)!;
    const all = [...scaleLandmarks.board, ...landmarkView(view).landmarks];
    return { code: all.find((one) => one.title === name)?.code, count: Number(count ?? 1) };
  };
  /** Places every point that is asked for where it lies, and leaves out what the picture doesn't show. */
  const placeAll = async (trial: Trial, place: (x: number, y: number) => Promise<void> = click) => {
    const scene = trialScene(trial);
    await room.scrollIntoViewIfNeeded();
    for (let step = 0; step < 80; step++) {
      const before = await next();
      const { code, count } = await asked(trial.view);
      if (!code) return;
      const spot = scene.points.filter(({ point }) => point === code)[count - 1];
      const seen = spot && spot.x_px > 0 && spot.x_px < PICTURE.width && spot.y_px > 0 && spot.y_px < PICTURE.height;
      if (seen) await place(spot.x_px, spot.y_px);
      else await page.getByRole('button', { name: /^(Leave this one out|That is enough of these)$/ }).click();
      await expect.poll(next).not.toBe(before);
    }
    throw new Error('There was no end to the points');
  };
  const measures = () =>
    page
      .locator('.picture-measures > div')
      .evaluateAll((all) => all.map((one) => [...one.children].map(({ textContent }) => textContent!)));
  const point = (name: string) => page.locator('.picture-points').getByRole('button', { name: new RegExp(`^${name}`) });
  const where = async (name: string) =>
    (await point(name).locator('.picture-where').textContent())!.split(', ').map(Number);
  const said = () => page.locator('.picture-desk > [role=status]').textContent();
  const choose = (name: string, buffer: Buffer) =>
    page.getByLabel('Choose a photograph').setInputFiles({ name, mimeType: 'image/jpeg', buffer });
  return { room, next, placeOf, click, draw, placeAll, measures, point, where, said, choose };
}

/** A small photograph, a bright mark in its upper left quarter. */
async function photograph(page: Page, width = 600, height = 400): Promise<Buffer> {
  const bytes = await page.evaluate(
    async ([width, height]) => {
      const canvas = new OffscreenCanvas(width, height);
      const context = canvas.getContext('2d')!;
      context.fillStyle = '#6d6556';
      context.fillRect(0, 0, width, height);
      context.fillStyle = '#fffdf9';
      context.fillRect(0, 0, width / 2, height / 2);
      const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 });
      return [...new Uint8Array(await blob.arrayBuffer())];
    },
    [width, height],
  );
  return Buffer.from(bytes);
}

/** The photograph with what a phone writes beside it: how it was held (a quarter turn), where, and by what. */
function asFromPhone(jpeg: Buffer): Buffer {
  const tiff = Buffer.alloc(140);
  const entry = (at: number, tag: number, type: number, count: number, value: number) => {
    tiff.writeUInt16LE(tag, at);
    tiff.writeUInt16LE(type, at + 2);
    tiff.writeUInt32LE(count, at + 4);
    tiff.writeUInt32LE(value, at + 8);
  };
  tiff.write('II*\0', 0, 'latin1');
  tiff.writeUInt32LE(8, 4);
  tiff.writeUInt16LE(3, 8);
  entry(10, 0x010f, 2, 12, 100);
  entry(22, 0x0112, 3, 1, 6);
  entry(34, 0x8825, 4, 1, 50);
  tiff.writeUInt16LE(2, 50);
  entry(52, 0x0001, 2, 2, 0x4e);
  entry(64, 0x0002, 5, 3, 112);
  tiff.write('Secretphone\0', 100, 'latin1');
  for (const [index, value] of [51, 1, 30, 1, 0, 1].entries()) tiff.writeUInt32LE(value, 112 + index * 4);
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
  const head = Buffer.from([0xff, 0xe1, (body.length + 2) >> 8, (body.length + 2) & 0xff]);
  return Buffer.concat([jpeg.subarray(0, 2), head, body, jpeg.subarray(2)]);
}

/** The markers of a JPEG before its pixels, and whether anything of the phone is left. */
function beside(jpeg: Buffer) {
  return { exif: jpeg.includes('Exif'), phone: jpeg.includes('Secretphone'), isJpeg: jpeg.readUInt16BE(0) === 0xffd8 };
}

async function saved(page: Page, name: string): Promise<Buffer> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name }).click()]);
  return readFile(await download.path());
}

async function violations(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).withTags(axeRules).analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 200)).join('\n')}`);
}

test(
  'every point of a drawn foot is placed, its known measures are read, and stand in the sheet with the way back to the points',
  SLOW,
  async () => {
    const { page, draw, placeAll, measures, wrongs } = await opened();
    const trial = trials[0];
    await draw(trial.title);
    await page.getByText('It is invented, and so is everything that is measured from it').waitFor();
    await placeAll(trial);
    const { truth } = trialScene(trial);
    const known: Record<string, number | undefined> = {
      'Heel angle': truth.heel_angle_deg,
      'Pastern angle': truth.pastern_angle_deg,
      'Toe length': truth.toe_length_mm,
      'Heel length': truth.heel_length_mm,
    };
    const read = await measures();
    const entered = new Map<string, number>();
    for (const [title, words] of read) {
      const [, value, error] = /^([\d.]+) ± ([\d.]+)/.exec(words)!.map(Number);
      entered.set(title, value);
      if (known[title] !== undefined) expect(Math.abs(value - known[title]), title).toBeLessThan(2.5 * error + 0.5);
    }
    expect(Object.keys(known).filter((title) => entered.has(title)).length).toBeGreaterThanOrEqual(3);
    expect(entered.has('Toe length')).toBe(true);
    expect(await page.locator('.picture-square').textContent()).toContain('The camera stood');

    await page.getByText('for a new row: Drawn foot, LF').waitFor();
    await page.getByRole('button', { name: 'Enter into the record' }).click();
    await page.getByText('in the record as Drawn foot, LF').waitFor();
    await page.getByRole('button', { name: 'Take back: adding a row' }).click();
    await page.getByText('for a new row: Drawn foot, LF').waitFor();
    await page.getByRole('button', { name: 'Enter into the record' }).click();
    await page.getByText('in the record as Drawn foot, LF').waitFor();

    await page.getByRole('link', { name: 'To the record' }).click();
    await page.getByRole('grid', { name: 'Every reading' }).waitFor();
    await page.getByLabel('Keep rows by').selectOption({ label: 'Horse' });
    await page.locator('.sheet-bar input').first().fill('Drawn foot');
    await page.locator('.sheet-bar input').first().press('Enter');
    await page.getByText(/^1 of/).waitFor();
    const grid = page.getByRole('grid', { name: 'Every reading' });
    await grid.locator('[tabindex="0"]').focus();
    await page.keyboard.press('Control+Home');
    for (let step = 0; step < 30; step++) {
      const column = await page.evaluate(() =>
        document.activeElement!.closest('[aria-colindex]')!.getAttribute('aria-colindex'),
      );
      const title = await grid.locator(`[role=columnheader][aria-colindex="${column}"]`).textContent();
      if (title!.startsWith('Toe length')) break;
      await page.keyboard.press('ArrowRight');
    }
    const cell = await page.locator('[role=gridcell][tabindex="0"]').textContent();
    expect(Number.parseFloat(cell!)).toBeCloseTo(entered.get('Toe length')!, 0);
    const origin = page.getByRole('region', { name: 'The picture the chosen cell was measured from' });
    await origin.getByText('drawn LF side').waitFor();
    const words = await origin.textContent();
    expect(words).toContain('from the side');
    for (const title of ['Toe at the ground', 'Toe at the hairline', 'Lower left corner'])
      expect(words).toContain(title);

    await origin.getByRole('link').click();
    await page.locator('.picture-part').scrollIntoViewIfNeeded();
    await page.locator('.picture-next').getByText('Every point is placed').waitFor({ timeout: 60_000 });
    expect(await measures()).toEqual(read);
    expect(wrongs).toEqual([]);
  },
);

test('a tap places, a drag moves, keys nudge, and every change is taken back and done again', SLOW, async () => {
  const { page, room, choose, where, point, next, said, placeOf } = await opened();
  const small = { width: 600, height: 400 };
  await choose('IMG_1.jpg', await photograph(page));
  await page.locator('.picture-next').getByText('One end of the bar').waitFor();
  const at = async (x: number, y: number) => room.click({ position: await placeOf(x, y, small) });
  await at(100, 300);
  await page.locator('.picture-next').getByText('Other end of the bar').waitFor();
  const [x, y] = await where('One end of the bar');
  expect([x, y]).toEqual([expect.closeTo(100, -0.5), expect.closeTo(300, -0.5)]);
  await expect.poll(() => next()).toContain('Other end of the bar');
  await expect.poll(() => said()).toContain('placing One end of the bar. Next: Other end of the bar');

  await room.focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowUp');
  await expect.poll(async () => (await where('One end of the bar'))[1]).toBeLessThanOrEqual(y - 10);
  const [right, up] = await where('One end of the bar');
  expect(right).toBe(x + 1);
  expect(y - up).toBeGreaterThanOrEqual(10);
  await page.keyboard.press('Control+z');
  await expect.poll(() => where('One end of the bar')).toEqual([x, y]);
  await page.keyboard.press('Control+Shift+z');
  await expect.poll(() => where('One end of the bar')).toEqual([right, up]);

  const from = await placeOf(right, up, small);
  const box = (await room.boundingBox())!;
  await page.mouse.move(box.x + from.x + 3, box.y + from.y + 3);
  await page.mouse.down();
  await page.mouse.move(box.x + from.x + 63, box.y + from.y + 33, { steps: 6 });
  await page.locator('.picture-lens').waitFor();
  await page.mouse.up();
  await expect.poll(() => where('One end of the bar')).not.toEqual([right, up]);
  const moved = await where('One end of the bar');
  const scale = (await room.evaluate(({ clientWidth }) => clientWidth)) / 600;
  expect(moved[0] - right).toBeCloseTo(60 / Math.min(scale, 10), -1);
  await page.getByRole('button', { name: 'Take back: moving One end of the bar' }).click();
  await expect.poll(() => where('One end of the bar')).toEqual([right, up]);
  await page.getByRole('button', { name: 'Do again: moving One end of the bar' }).click();
  await expect.poll(() => where('One end of the bar')).toEqual(moved);

  await page.getByLabel('px from the left').fill('123.4');
  await page.getByLabel('px from the left').press('Enter');
  await expect.poll(async () => (await where('One end of the bar'))[0]).toBe(123);
  await page.getByRole('button', { name: 'Leave this one out' }).click();
  expect(await point('Other end of the bar').textContent()).toContain('left out');
  await expect.poll(() => next()).toContain('The ground, 1');
  await page.getByRole('button', { name: 'Place it after all: Other end of the bar' }).click();
  await expect.poll(() => next()).toContain('Other end of the bar');
  await point('One end of the bar').click();
  await page.keyboard.press('Delete');
  await expect.poll(() => next()).toContain('One end of the bar');
});

test('all is done by keys alone: Enter places, arrows move, and what was done is said', SLOW, async () => {
  const { page, room, choose, where, next, said } = await opened();
  await choose('keys.jpg', await photograph(page));
  await page.locator('.picture-next').getByText('One end of the bar').waitFor();
  await room.focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => where('One end of the bar')).toEqual([300, 200]);
  await page.keyboard.press('ArrowLeft');
  await expect.poll(() => where('One end of the bar')).toEqual([299, 200]);
  await page.keyboard.press('+');
  await page.keyboard.press(' ');
  await expect.poll(() => next()).toContain('The ground, 1');
  await expect.poll(() => said()).toContain('placing Other end of the bar');
  await page.keyboard.press('0');
  const list = page.getByRole('list', { name: 'Points' });
  await list.getByRole('button', { name: /^One end of the bar/ }).focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowDown');
  await expect.poll(() => where('One end of the bar')).toEqual([299, 201]);
  expect(await violations(page)).toEqual([]);
});

test(
  'a photograph is shown as it was held, and nothing that the phone wrote beside it is kept or saved',
  SLOW,
  async () => {
    const { page, choose, wrongs } = await opened();
    const phoneFile = asFromPhone(await photograph(page));
    expect(beside(phoneFile)).toEqual({ exif: true, phone: true, isJpeg: true });
    await choose('IMG_2.jpg', phoneFile);
    await page.locator('.picture-next').getByText('One end of the bar').waitFor();
    const save = await saved(page, 'Save this picture without its place');
    expect(beside(save)).toEqual({ exif: false, phone: false, isJpeg: true });
    const kept = await page.evaluate(async () => {
      const database = await new Promise<IDBDatabase>((resolve) => {
        const request = indexedDB.open('evenhoof pictures');
        request.onsuccess = () => resolve(request.result);
      });
      const request = database.transaction('pictures').objectStore('pictures').getAll();
      await new Promise((resolve) => {
        request.onsuccess = resolve;
      });
      database.close();
      return (request.result as { bytes: ArrayBuffer }[]).map(({ bytes }) => [...new Uint8Array(bytes)]);
    });
    expect(kept.map((bytes) => beside(Buffer.from(bytes)))).toEqual([{ exif: false, phone: false, isJpeg: true }]);
    const upright = await page.evaluate(
      async (bytes) => {
        const bitmap = await createImageBitmap(new Blob([Uint8Array.from(bytes)], { type: 'image/jpeg' }));
        const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
        const context = canvas.getContext('2d', { willReadFrequently: true })!;
        context.drawImage(bitmap, 0, 0);
        const light = (x: number, y: number) => context.getImageData(x, y, 1, 1).data[0] > 180;
        return {
          size: [bitmap.width, bitmap.height],
          corners: [light(40, 40), light(360, 40), light(40, 560), light(360, 560)],
        };
      },
      [...save],
    );
    // A quarter turn to the right takes the upper left corner to the upper right.
    expect(upright).toEqual({ size: [400, 600], corners: [false, true, false, false] });
    expect(wrongs).toEqual([]);
  },
);

test('what is no picture is refused in words, and what was open stays open', async () => {
  const { page, choose } = await opened();
  await choose('notes.jpg', Buffer.from('no picture at all'));
  await page.getByRole('alert').getByText('notes.jpg can’t be shown by this browser').waitFor();
});

test('points are kept with their picture, saved as a tidy table, and laid on the picture again', SLOW, async () => {
  const { page, context, choose, click, where, point, wrongs } = await opened();
  const file = await photograph(page, 4000, 3000);
  await choose('IMG_3.jpg', file);
  await page.locator('.picture-next').getByText('One end of the bar').waitFor({ timeout: 60_000 });
  await page.getByLabel('Horse', { exact: true }).fill('Thistle, the "grey"');
  await click(1000, 2000);
  await click(3000, 2000);
  const places = [await where('One end of the bar'), await where('Other end of the bar')];
  const csv = await saved(page, 'Save all points as tidy CSV');
  const [heading, first] = csv.toString('utf8').split('\n');
  expect(heading).toMatch(/^photo,horse_id,date,limb,moment,repeat,view,point,x_px,y_px,/);
  expect(first).toMatch(/^IMG_3,"Thistle, the ""grey""",\d{4}-\d\d-\d\d,LF,between,,side,bar_start,/);

  await page.reload();
  await drawn(page);
  await ready(page);
  await page.locator('.picture-next').getByText('The ground, 1').waitFor({ timeout: 60_000 });
  expect([await where('One end of the bar'), await where('Other end of the bar')]).toEqual(places);
  expect(await page.getByLabel('Horse', { exact: true }).inputValue()).toBe('Thistle, the "grey"');

  await page.getByRole('button', { name: 'Take off: One end of the bar' }).click();
  const open = (buffer: Buffer) =>
    page.getByLabel('Open saved points').setInputFiles({ name: 'points.csv', mimeType: 'text/csv', buffer });
  await open(csv);
  await expect.poll(() => where('One end of the bar')).toEqual(places[0]);

  await page.getByRole('button', { name: 'Remove this picture from the device' }).click();
  await point('One end of the bar').waitFor({ state: 'detached' });
  await open(csv);
  await page.getByText('Choose the photograph IMG_3 now').waitFor();
  await choose('IMG_3.jpg', file);
  await page.locator('.picture-next').getByText('The ground, 1').waitFor({ timeout: 60_000 });
  expect([await where('One end of the bar'), await where('Other end of the bar')]).toEqual(places);
  await open(Buffer.from('horse,limb\nBella,LF\n'));
  await page.getByRole('alert').getByText('is no table of points').waitFor();
  await context.close();
  expect(wrongs).toEqual([]);
});

test('squareness shows with the board alone; a picture from the side is refused with what to do', SLOW, async () => {
  const { page, draw, placeAll } = await opened();
  const trial = trials.find(({ title }) => title.includes('too far'))!;
  await draw(trial.title);
  const scene = trialScene(trial);
  const { click } = tools(page);
  for (const { code } of scaleLandmarks.board) {
    const { x_px, y_px } = scene.points.find(({ point }) => point === code)!;
    await click(x_px, y_px);
  }
  await expect
    .poll(() => page.locator('.picture-square').textContent())
    .toContain('too far off square to measure from');
  await placeAll(trial);
  expect(await page.locator('.picture-measures').count()).toBe(0);
  const refused = await page.locator('.picture-refused').textContent();
  expect(refused).toMatch(/Toe angle, heel angle, .*off square.*Step to the right/);
  expect(await page.getByRole('button', { name: 'Enter into the record' }).count()).toBe(0);
});

test(
  'left and right feet know inside from outside: the sides are named, and points on the wrong side are doubted',
  SLOW,
  async () => {
    const { page, draw, placeAll, measures } = await opened();
    const trial = trials.find(({ view }) => view === 'front')!;
    await draw(trial.title);
    expect(await page.locator('.picture-sides').textContent()).toMatch(/^inside\s*outside$/);
    await placeAll(trial);
    const read = new Map((await measures()).map(([title, words]) => [title, Number.parseFloat(words)]));
    expect(read.get('Inside wall height')! - read.get('Outside wall height')!).toBeGreaterThan(0);
    await page.getByLabel('Right fore').check();
    expect(await page.locator('.picture-sides').textContent()).toMatch(/^outside\s*inside$/);
    await page.getByRole('alert').getByText('Is it the right foot, or has the picture been mirrored?').waitFor();
  },
);

test('two pictures of one foot are laid over each other, by a slider and never by colour alone', SLOW, async () => {
  const { page, draw, placeAll } = await opened();
  for (const trial of trials.slice(0, 2)) {
    await draw(trial.title);
    await placeAll(trial);
  }
  await page.getByLabel('Lay over it').selectOption({ index: 1 });
  const both = page.locator('.picture-both');
  await both.locator('path.second').first().waitFor({ timeout: 60_000 });
  const ends = (which: string): Promise<string[]> =>
    both.locator(`path.${which}`).evaluateAll((all) => all.map((one) => one.getAttribute('d')!));
  const toes = async (which: string) =>
    (await ends(which))
      .map((d) => d.match(/-?[\d.]+/g)!.map(Number))
      .filter(([x, y, u, v]) => Math.abs(v - y) > Math.abs(u - x) / 2);
  const [[first], [second]] = [await toes('first'), await toes('second')];
  // Both stand on one ground line, and the longer toe is the longer line.
  const length = ([x, y, u, v]: number[]) => Math.hypot(u - x, v - y);
  expect(length(first) / length(second)).toBeCloseTo(92 / 82, 1);
  const dashes = await both
    .locator('path.second')
    .first()
    .evaluate((line) => getComputedStyle(line).strokeDasharray);
  expect(dashes).not.toBe('none');
  expect(await page.locator('.picture-key li').count()).toBe(2);
  await page.getByLabel('How much of the other shows').fill('100');
  expect(await page.getByLabel('How much of the other shows').getAttribute('aria-valuetext')).toBe('100 of 100');
  expect(await violations(page)).toEqual([]);
  await shot(page.locator('.picture-over'), 'measure-from-picture-over');
});

test(
  'with a finger: a tap places, a drag moves the picture, a resting finger aims under the magnifier, two fingers zoom',
  SLOW,
  async () => {
    const { page, room, choose, where, next, placeOf } = await opened(phone);
    await choose('touch.jpg', await photograph(page, 4000, 3000));
    await page.locator('.picture-next').getByText('One end of the bar').waitFor({ timeout: 60_000 });
    await room.evaluate((element) => scrollTo(0, element.getBoundingClientRect().top + scrollY - 250));
    const box = (await room.boundingBox())!;
    const touch = await page.context().newCDPSession(page);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...touchPoints: { x: number; y: number }[]) =>
      touch.send('Input.dispatchTouchEvent', { type, touchPoints: touchPoints.map((one, id) => ({ ...one, id })) });
    const at = async (x: number, y: number) => {
      const place = await placeOf(x, y);
      return { x: box.x + place.x, y: box.y + place.y };
    };
    await room.tap({ position: await placeOf(1000, 2000) });
    expect((await where('One end of the bar'))[0]).toBeCloseTo(1000, -2);

    // A finger rests beside the goal and slides onto it under the magnifier.
    await send('touchStart', await at(2800, 1500));
    await page.locator('.picture-lens').waitFor();
    await expect.poll(() => page.locator('.picture-lens').getAttribute('class')).toContain('left');
    await send('touchMove', await at(3000, 1800));
    await send('touchEnd');
    await expect.poll(next).toContain('The ground, 1');
    const [x, y] = await where('Other end of the bar');
    expect(Math.abs(x - 3000) + Math.abs(y - 1800)).toBeLessThan(60);

    const dots = () =>
      page
        .locator('.picture-marks .dot rect.ring')
        .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().x));
    const apart = async () => {
      const [a, b] = await dots();
      return Math.abs(a - b);
    };
    const before = await apart();
    await send('touchStart', await at(1500, 900), await at(2500, 900));
    await send('touchMove', await at(1000, 900), await at(3000, 900));
    await send('touchEnd');
    await expect.poll(apart).toBeGreaterThan(before * 1.6);
    const [left] = await dots();
    await send('touchStart', await at(2000, 600));
    for (const x of [1900, 1800, 1600]) await send('touchMove', await at(x, 600));
    await send('touchEnd');
    await expect.poll(async () => (await dots())[0]).toBeLessThan(left - 15);
    await expect.poll(() => next()).toContain('The ground, 1');
  },
);

test.each([
  ['a desk', wide],
  ['a phone', phone],
])(
  'with a picture open on %s the page is clean by axe, nothing sticks out and nothing is too small to touch',
  SLOW,
  async (_, options) => {
    const { page, choose, room } = await opened(options);
    await choose('small.jpg', await photograph(page));
    await page.locator('.picture-next').getByText('One end of the bar').waitFor();
    await room.focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    expect(await violations(page)).toEqual([]);
    expect(await overflow(page)).toEqual({ over: 0, out: [] });
    await shot(page, `measure-from-picture-open-${page.viewportSize()!.width}`);
    if (options === wide) return;
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('.picture-desk :is(button, select, .chooser, input:not([type=file]))')]
        .map((part) => (part.matches('label input[type=radio]') ? part.closest('label')! : part))
        .filter((part) => part.checkVisibility())
        .filter((part) => part.getBoundingClientRect().height < 43.5)
        .map((part) => part.outerHTML.slice(0, 120)),
    );
    expect(small).toEqual([]);
  },
);

test(
  'a hand is known by its repeats: the same points once more, and the page reckons with how closely they were placed',
  SLOW,
  async () => {
    const { page, draw, placeAll } = await opened();
    const trial = trials[0];
    await draw(trial.title);
    await placeAll(trial);
    await page.getByText('Place the same points twice to know your own').waitFor();
    await page.getByRole('button', { name: 'Place the points once more, to know your hand' }).click();
    await page.getByText('drawn LF side once more.').waitFor();
    const { click } = tools(page);
    let step = 0;
    await placeAll(trial, (x, y) => click(x + (step++ % 2 === 0 ? 14 : -14), y));
    await expect
      .poll(() => page.locator('.picture-readings .note').first().textContent())
      .toContain('by your own repeats');
    const [, px] = /to within ([\d.]+) pixels/.exec((await page.locator('.picture-readings').textContent())!)!;
    expect(Number(px)).toBeGreaterThan(5);
    expect(await page.getByRole('button', { name: 'Enter into the record' }).count()).toBe(0);
  },
);

test('where the browser keeps nothing it says so, and measuring works all the same', SLOW, async () => {
  const { context } = await site.open('cautions.html', wide);
  await context.addInitScript(() => {
    Object.defineProperty(IDBFactory.prototype, 'open', {
      value() {
        throw new DOMException('Denied', 'SecurityError');
      },
    });
  });
  const page = await context.newPage();
  await page.goto(`${site.address}measure-from-picture.html`);
  await drawn(page);
  await ready(page);
  const { choose, click, where } = tools(page);
  await choose('private.jpg', await photograph(page));
  await page.locator('.picture-next').getByText('One end of the bar').waitFor();
  await page.getByText('The browser keeps nothing').waitFor();
  await click(2000, 1500);
  await expect.poll(() => where('One end of the bar')).toEqual([300, 200].map((value) => expect.closeTo(value, -0.5)));
});
