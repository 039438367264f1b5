// How soon a record of a million rows is open, and how soon a typed cell is on the disk, in the browser of the tests.
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import chromium from '@sparticuz/chromium';
import { chromium as playwright } from 'playwright-core';
import { build } from 'vite';
import { serve } from '../pages/serve.ts';
import type { BenchRow } from './interleaved.ts';

const ROWS = 1_000_000;
const RUNS = 5;
const EDITS = 40;
const OPEN_MS = 3000;
const EDIT_MS = 50;

interface Large {
  fill(rows: number): Promise<void>;
  open(): Promise<number>;
  edit(row: number): Promise<number>;
  rows(): number;
}

/** A fresh page each time, over a profile on the disk: one that is kept in memory would be written too soon. */
export async function bench(): Promise<BenchRow[]> {
  const [site, profile] = await Promise.all(
    ['site', 'profile'].map((what) => mkdtemp(join(tmpdir(), `evenhoof-${what}-`))),
  );
  const entry = fileURLToPath(new URL('../fixtures/store/million.ts', import.meta.url));
  await build({
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    build: { outDir: site, emptyOutDir: true, lib: { entry, formats: ['es'], fileName: 'large' }, target: 'es2022' },
  });
  await writeFile(
    join(site, 'index.html'),
    '<!doctype html><title>Large</title><script type="module" src="large.js"></script>',
  );
  const served = await serve(site);
  const browser = await playwright.launchPersistentContext(profile, {
    executablePath: await chromium.executablePath(),
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run'],
  });
  const opened: number[] = [];
  const kept: number[] = [];
  const visit = async () => {
    const page = await browser.newPage();
    await page.goto(served.address);
    await page.waitForFunction(() => 'fill' in globalThis);
    return page;
  };
  try {
    const first = await visit();
    await first.evaluate((rows) => (globalThis as unknown as Large).fill(rows), ROWS);
    await first.close();
    for (let run = 0; run < RUNS; run++) {
      const page = await visit();
      opened.push(await page.evaluate(() => (globalThis as unknown as Large).open()));
      for (let i = 0; i < EDITS / RUNS; i++)
        kept.push(
          await page.evaluate((row) => (globalThis as unknown as Large).edit(row), (run * 193_939 + i * 7919) % ROWS),
        );
      if ((await page.evaluate(() => (globalThis as unknown as Large).rows())) !== ROWS)
        throw new Error('The record is not whole');
      await page.close();
    }
  } finally {
    await browser.close();
    await served.close();
    await Promise.all([site, profile].map((folder) => rm(folder, { recursive: true, force: true })));
  }
  console.error(`${ROWS} rows opened after ${words(opened)} ms; a typed cell kept after ${words(kept)} ms`);
  return [
    {
      what: '1,000,000 rows × 17 columns opened from the database',
      peer: `the limit of ${OPEN_MS} ms`,
      ours: median(opened),
      theirs: OPEN_MS,
      goal: '1',
    },
    {
      what: 'a typed cell among them on the disk',
      peer: `the limit of ${EDIT_MS} ms`,
      ours: median(kept),
      theirs: EDIT_MS,
      goal: '1',
    },
  ];
}

const words = (times: readonly number[]) => times.map((ms) => ms.toFixed(0)).join(', ');
const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1];
