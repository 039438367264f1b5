import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import AxeBuilder from '@axe-core/playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Herd, herd, readTable, type TableName } from '../../lib/index.ts';
import { htmlPage } from '../../lib/report.ts';
import { pages } from '../../notebooks/index.ts';
import { axeRules, notebook, overflow, paperFile, shot } from './browser.ts';

const site = notebook();
let folder = '';
let demo: Herd;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'evenhoof-written-'));
  const read = async (schema: TableName) =>
    readTable(await readFile(new URL(`../../data/${schema}.csv`, import.meta.url)), { schema }).columns;
  demo = herd({ feet: await read('feet'), horses: await read('horses'), visits: await read('visits') });
});
afterAll(() => rm(folder, { recursive: true, force: true }));

describe.each(pages.map((page) => [page.title, page] as const))('%s as a file', (_, page) => {
  let address = '';
  beforeAll(async () => {
    const path = join(folder, `${page.name}.html`);
    await writeFile(path, await htmlPage(page, { herd: demo, source: 'From the demo herd' }));
    address = pathToFileURL(path).href;
  });

  test('opens from the disk with scripts switched off, and needs nothing beside it', async () => {
    const context = await site.context({ javaScriptEnabled: false, viewport: { width: 1280, height: 800 } });
    const opened = await context.newPage();
    const asked: string[] = [];
    opened.on('request', (request) => asked.push(request.url()));
    await opened.goto(address);
    expect(await opened.locator('h1').textContent()).toBe(page.title);
    expect(await opened.locator('.trouble').count()).toBe(0);
    expect(asked.filter((address) => !address.startsWith('data:'))).toEqual([address]);
    await shot(opened, `written-${page.name}`);
  });

  test('is clean by axe, fits a narrow window and prints', async () => {
    const context = await site.context({ viewport: { width: 360, height: 800 } });
    const opened = await context.newPage();
    await opened.goto(address);
    expect(await overflow(opened)).toEqual({ over: 0, out: [] });
    const { violations } = await new AxeBuilder({ page: opened }).withTags(axeRules).analyze();
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 200)).join('\n')}`),
    ).toEqual([]);
    await opened.setViewportSize({ width: 680, height: 900 });
    await opened.emulateMedia({ media: 'print' });
    expect(await overflow(opened)).toEqual({ over: 0, out: [] });
    await opened.pdf({ format: 'A4', path: paperFile(`written-${page.name}`) });
  });
});
