import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync } from 'node:fs';
import { cp, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import chromium from '@sparticuz/chromium';
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  type Locator,
  type Page,
  chromium as playwright,
} from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { buildSite } from '../../scripts/buildSite.ts';
import type { Pages } from '../../scripts/siteConfig.ts';
import { type Served, serve } from './serve.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const ownSite = join(root, 'dist/notebook');
const shots = join(root, 'tests/pages/shots');
const wanted = process.env.SHOTS !== undefined;
if (wanted) mkdirSync(shots, { recursive: true });

/** Takes a picture of a page or a part of it to look at, where `SHOTS=1` asks for pictures: whole pages take long. */
export async function shot(of: Page | Locator, name: string): Promise<void> {
  if (wanted) await of.screenshot({ path: join(shots, `${name}.png`), ...('goto' in of && { fullPage: true }) });
}

/** Where to leave a page on paper, if pictures are asked for. */
export const paperFile = (name: string) => (wanted ? join(shots, `${name}.pdf`) : undefined);

/** The browser an npm package ships, with the web's safeguards on, which that package's own arguments switch off. */
async function launch(): Promise<Browser> {
  const packed = process.platform === 'linux' && process.arch === 'x64';
  const browser = await playwright.launch({
    ...(packed ? { executablePath: await chromium.executablePath() } : { channel: 'chrome' }),
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--no-first-run',
    ],
  });
  // The package unpacks into the temporary folder and takes what lies there, of whatever version.
  if (packed && !browser.version().startsWith('147.'))
    throw new Error(`Chromium ${browser.version()} lies in the temporary folder where 147 was expected; take it away`);
  return browser;
}

/** A page of the notebook, and everything that went wrong on it so far. */
export interface Opened {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Errors, policy violations, requests to other hosts, answers that failed. */
  readonly wrongs: string[];
}

export interface Notebook {
  /** The notebook's address, with a `/` at its end. */
  readonly address: string;
  /** Opens a page in a context of its own, with nothing kept from before, and waits until its blocks are drawn. */
  open(path: string, options?: BrowserContextOptions): Promise<Opened>;
  /** A fresh context of the same browser, for what is not a page of the notebook. */
  context(options?: BrowserContextOptions): Promise<BrowserContext>;
}

/** The built notebook, served to a real browser for the tests of one file. */
export function notebook(): Notebook {
  return siteIn(builtNotebook);
}

/** A copy of it in a folder that a test may change. */
export function changingNotebook(): Notebook & { readonly folder: () => string } {
  let folder = '';
  afterAll(() => rm(folder, { recursive: true, force: true }));
  const site = siteIn(async () => {
    folder = await mkdtemp(join(tmpdir(), 'evenhoof-notebook-'));
    await cp(builtNotebook(), folder, { recursive: true });
    return folder;
  });
  return Object.assign(site, { folder: () => folder });
}

function builtNotebook(): string {
  if (!existsSync(join(ownSite, 'index.html'))) {
    const { status } = spawnSync('node', ['scripts/build.mjs', 'notebook'], { cwd: root, stdio: 'inherit' });
    if (status !== 0) throw new Error('The notebook could not be built');
  }
  return ownSite;
}

/** Pages made for tests alone, served in the same way. */
export function fixturePages(): Notebook {
  const folder = join(root, 'tests/fixtures/pages');
  return notebookOf({ list: join(folder, 'index.ts'), folder });
}

/** A notebook of other pages or other words, built into a folder of its own. */
export function notebookOf(pages: Pages): Notebook {
  let outDir = '';
  afterAll(() => rm(outDir, { recursive: true, force: true }));
  return siteIn(async () => {
    outDir = await mkdtemp(join(tmpdir(), 'evenhoof-pages-'));
    await buildSite(outDir, pages);
    return outDir;
  });
}

function siteIn(find: () => string | Promise<string>): Notebook {
  let browser: Browser;
  let served: Served;
  const contexts: BrowserContext[] = [];
  const fresh = async (options?: BrowserContextOptions) => {
    const context = await browser.newContext({ reducedMotion: 'reduce', ...options });
    contexts.push(context);
    return context;
  };
  beforeAll(async () => {
    [served, browser] = await Promise.all([serve(await find()), launch()]);
  });
  afterAll(async () => {
    await Promise.all(contexts.map((context) => context.close()));
    await browser?.close();
    await served?.close();
  });
  return {
    get address() {
      return served.address;
    },
    context: fresh,
    async open(path, options) {
      const context = await fresh(options);
      const page = await context.newPage();
      const wrongs = watch(page, served.address);
      await page.goto(served.address + path);
      await drawn(page);
      return { page, context, wrongs };
    },
  };
}

/** Waits until the page stands where it said that it reads. */
export async function drawn(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const blocks = document.getElementById('blocks');
    return blocks !== null && blocks.childElementCount > 0 && !blocks.querySelector('.waiting, .working');
  });
}

/** The rules of WCAG 2.2 AA that axe can test. */
export const axeRules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** How many px the page is wider than its window, and what sticks out; what scrolls by itself may. */
export function overflow(page: Page): Promise<{ over: number; out: string[] }> {
  return page.evaluate(() => {
    const scrolls = '.grid, .still-sheet, .linked .picture, .form-table, pre';
    const room = document.documentElement.clientWidth;
    const out = [...document.querySelectorAll('body *')]
      .filter((element) => !element.parentElement!.closest(scrolls))
      .filter((element) => element.getBoundingClientRect().right > room + 1);
    return {
      over: document.documentElement.scrollWidth - room,
      out: out.map((element) => element.outerHTML.slice(0, 120)),
    };
  });
}

function watch(page: Page, address: string): string[] {
  const wrongs: string[] = [];
  const { origin } = new URL(address);
  page.on('pageerror', (error) => wrongs.push(`error: ${error.message}`));
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) wrongs.push(`${message.type()}: ${message.text()}`);
  });
  page.on('request', (request) => {
    const { protocol, origin: asked } = new URL(request.url());
    if (!['data:', 'blob:'].includes(protocol) && asked !== origin) wrongs.push(`request to ${request.url()}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) wrongs.push(`${response.status()} for ${response.url()}`);
  });
  return wrongs;
}
