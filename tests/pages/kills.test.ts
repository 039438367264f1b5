import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { BrowserContext } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Found } from '../fixtures/store/typist.ts';
import { notebook } from './browser.ts';
import { type Served, serve } from './serve.ts';

/** How often a tab is killed; `TAB_KILLS=500` takes minutes. */
const KILLS = Number(process.env.TAB_KILLS ?? 15);
/** From the page's first breath, so that opening, writing and writing the tables again are all hit. */
const LONGEST_MS = 1500;

interface Typist {
  found(): Promise<Found>;
  type(said: (n: number) => unknown): Promise<void>;
}

const site = notebook();
let folder = '';
let served: Served;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'evenhoof-typist-'));
  const entry = fileURLToPath(new URL('../fixtures/store/typist.ts', import.meta.url));
  await build({
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    build: { outDir: folder, lib: { entry, formats: ['es'], fileName: 'typist' }, target: 'es2022' },
  });
  await writeFile(
    join(folder, 'index.html'),
    '<!doctype html><title>Typist</title><script type="module" src="typist.js"></script>',
  );
  served = await serve(folder);
});
afterAll(async () => {
  await served?.close();
  await rm(folder, { recursive: true, force: true });
});

async function ready(context: BrowserContext) {
  const page = await context.newPage();
  await page.goto(served.address);
  await page.waitForFunction(() => 'type' in globalThis);
  return page;
}

/** Kills the process that a page lives in, as the system does where memory is short. */
async function kill(page: Awaited<ReturnType<typeof ready>>): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const crashed = page.waitForEvent('crash');
  session.send('Page.crash').catch(() => {});
  await crashed;
  await page.close();
}

test(
  `of ${KILLS} tabs killed while they type, none loses a change that was said to be kept, and none leaves half of one`,
  async () => {
    const context = await site.context();
    let kept = 0;
    let before = 0;
    const lost: string[] = [];
    const told = { changes: 0, killedBeforeFirst: 0, unsaidButKept: 0 };
    for (let round = 0; round < KILLS; round++) {
      const page = await ready(context);
      let said = 0;
      await page.exposeFunction('said', (n: number) => {
        said = n;
      });
      await page.evaluate(() => {
        const { type, said } = globalThis as unknown as Typist & { said: (n: number) => void };
        type(said).catch(console.error);
      });
      await page.waitForTimeout(Math.random() * LONGEST_MS);
      await kill(page);
      kept = Math.max(kept, said);

      const next = await ready(context);
      const { rows, entries, broken } = await next.evaluate(() => (globalThis as unknown as Typist).found());
      await next.close();
      const newest = Math.max(...rows.flat());
      if (newest < kept) lost.push(`round ${round}: ${kept} was said to be kept, ${newest} is there`);
      if (rows.some((cells) => new Set(cells).size > 1))
        lost.push(`round ${round}: half a change in ${JSON.stringify(rows)}`);
      // Every change is in the journal once, and every row holds its last one.
      const expected = rows.map((_, row) => (newest >= row ? newest - ((newest - row) % rows.length) : 0));
      if (rows.some(([n], row) => n !== expected[row])) lost.push(`round ${round}: a change in between is missing`);
      if (entries !== newest || broken > 0)
        lost.push(`round ${round}: ${entries} entries, ${broken} broken, ${newest} changes`);
      told.changes = newest;
      if (said === 0) told.killedBeforeFirst++;
      else if (newest > said) told.unsaidButKept++;
      before = newest;
    }
    console.info(
      `${KILLS} tabs killed, ${told.changes} changes: ${lost.length} wrong; ${told.killedBeforeFirst} killed before the first was kept, in ${told.unsaidButKept} the one under way was kept too`,
    );
    expect(lost).toEqual([]);
    expect(before).toBeGreaterThan(KILLS);
  },
  60_000 + KILLS * 20_000,
);
