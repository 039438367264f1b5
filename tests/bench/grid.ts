// How soon a sheet of 100,000 rows and 20 columns stands on the screen, and how it scrolls, in the browser of the tests.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import chromium from '@sparticuz/chromium';
import { chromium as playwright } from 'playwright-core';
import { buildSite } from '../../scripts/buildSite.ts';
import { serve } from '../pages/serve.ts';
import type { BenchRow } from './interleaved.ts';

const RUNS = 5;
const LIMIT_MS = 150;
const STEPS = 60;
/** A notch of a wheel. */
const NOTCH_PX = 120;

/** In the page: when the first rows are on the screen, and how long each frame took. As text, so that nothing is added to it. */
const WATCH = `
  new MutationObserver((_, observer) => {
    if (!document.querySelector('[role=gridcell]')) return;
    observer.disconnect();
    requestAnimationFrame(() => setTimeout(() => performance.mark('shown')));
  }).observe(document, { childList: true, subtree: true });
  globalThis.gaps = [];
  let last = performance.now();
  requestAnimationFrame(function frame(now) {
    globalThis.gaps.push(now - last);
    last = now;
    requestAnimationFrame(frame);
  });
`;

interface Watched {
  readonly gaps: number[];
}

/** From the data being there to the first frame that shows rows; frames over 33 ms while a wheel turns. */
export async function bench(): Promise<BenchRow[]> {
  const folder = fileURLToPath(new URL('../fixtures/pages', import.meta.url));
  const site = await mkdtemp(join(tmpdir(), 'evenhoof-grid-'));
  await buildSite(site, { list: join(folder, 'index.ts'), folder });
  const served = await serve(site);
  const browser = await playwright.launch({
    executablePath: await chromium.executablePath(),
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run'],
  });
  const shown: number[] = [];
  const slow: number[] = [];
  const still: number[] = [];
  try {
    for (let run = 0; run < RUNS; run++) {
      const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
      await page.addInitScript({ content: WATCH });
      await page.goto(`${served.address}tall-sheet.html`);
      await page.waitForFunction(() => performance.getEntriesByName('shown').length > 0);
      shown.push(
        await page.evaluate(
          () => performance.getEntriesByName('shown')[0].startTime - performance.getEntriesByName('data')[0].startTime,
        ),
      );
      await page.getByRole('grid').hover();
      const steps = async (px: number) => {
        await page.evaluate(() => (globalThis as unknown as Watched).gaps.splice(0));
        for (let step = 0; step < STEPS; step++) {
          if (px > 0) await page.mouse.wheel(0, px);
          await page.waitForTimeout(16);
        }
        return page.evaluate(() => (globalThis as unknown as Watched).gaps.filter((gap) => gap > 33).length);
      };
      // What the machine drops by itself stands beside what is dropped while the sheet scrolls.
      still.push(await steps(0));
      slow.push(await steps(NOTCH_PX));
      await page.close();
    }
  } finally {
    await browser.close();
    await served.close();
    await rm(site, { recursive: true, force: true });
  }
  console.error(
    `Rows shown after ${shown.map((ms) => ms.toFixed(0)).join(', ')} ms; frames over 33 ms in ${STEPS} wheel steps: ${slow.join(', ')}, in as many steps without a wheel: ${still.join(', ')}`,
  );
  return [
    {
      what: '100,000 rows × 20 columns on the screen',
      peer: `the limit of ${LIMIT_MS} ms`,
      ours: median(shown),
      theirs: LIMIT_MS,
      goal: '1',
    },
  ];
}

const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1];
