import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { build, mergeConfig, runnerImport } from 'vite';
import type { HerdPage } from '../lib/index.ts';
import { type Pages, siteConfig } from './siteConfig.ts';
import { languages, wordsOf } from './words/languages.ts';

/** Builds the whole notebook in English, and in every other language as a folder within it. */
export async function buildNotebook(outDir: string): Promise<void> {
  await buildSite(outDir);
  for (const language of languages()) await buildSite(join(outDir, language), { words: wordsOf(language) });
}

/** Builds a notebook of static files: a document a page, and the service worker that keeps them for offline. */
export async function buildSite(outDir: string, pages: Pages = {}): Promise<void> {
  const { NODE_ENV } = process.env;
  // Vite takes it over from whoever calls, and a page for development is a third larger.
  process.env.NODE_ENV = 'production';
  try {
    const site = { configFile: false, logLevel: 'warn', build: { outDir } } as const;
    await build(mergeConfig(siteConfig({ ...pages, policy: 'strict' }), site));
    if (await hasGenerated(pages.list)) await build(mergeConfig(siteConfig({ ...pages, policy: 'generated' }), site));
  } finally {
    if (NODE_ENV === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = NODE_ENV;
  }
  finishWorker(outDir);
}

async function hasGenerated(list = 'notebooks/index.ts'): Promise<boolean> {
  const { module } = await runnerImport<{ pages: readonly HerdPage[] }>(list);
  return module.pages.some(({ policy }) => policy === 'generated');
}

/** Writes into the service worker which files there are, and a fingerprint that changes when any of them does. */
function finishWorker(outDir: string): void {
  const worker = join(outDir, 'service-worker.js');
  const files = readdirSync(outDir, { recursive: true, encoding: 'utf8' })
    .map((name) => join(outDir, name))
    .filter((file) => file !== worker && statSync(file).isFile())
    .sort();
  const print = createHash('sha256');
  for (const file of files) print.update(relative(outDir, file)).update(readFileSync(file));
  const names = files.map((file) => relative(outDir, file).split(sep).join('/'));
  const text = readFileSync(worker, 'utf8')
    .replace(/\bFILES\b/g, JSON.stringify(names))
    .replace(/\bVERSION\b/g, JSON.stringify(print.digest('hex').slice(0, 16)));
  writeFileSync(worker, text);
}
