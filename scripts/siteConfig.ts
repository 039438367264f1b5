import { fileURLToPath } from 'node:url';
import type { UserConfig } from 'vite';
import { documents } from './documents.ts';
import type { Words } from './words/inLanguage.ts';
import { saying } from './words/languages.ts';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Which pages to build: the notebook's own where left out. */
export interface Pages {
  /** The module that exports `pages`, and the folder their files stand in. */
  readonly list?: string;
  readonly folder?: string;
  /** Pages that may run generated code are built by themselves: only they carry what needs it. */
  readonly policy?: 'strict' | 'generated';
  /** The words of another language; English where left out. */
  readonly words?: Words;
}

/** What a file stands for is in its exports; what Node alone needs drops out of the pages with its importer. */
const ours = { moduleSideEffects: (id: string) => !/\/lib\/|\/node_modules\/linkedom\//.test(id) };

/** What nearly all pages share is one file: many small ones would pack worse, and come one by one. Charts are for some. */
const groups = [
  // Charts need it too, and pages without one should not have to fetch all that charts need.
  { name: 'arrays', test: /node_modules\/(d3-array|internmap)\//, priority: 2 },
  { name: 'plot', test: /node_modules\/@observablehq\/plot\//, priority: 1 },
  { name: 'shared', test: (id: string) => !/\/lib\/views\//.test(id), minShareCount: 9 },
];

/** How Vite builds the notebook. Addresses are relative, so that it runs from any folder of any server. */
export function siteConfig({
  list = here('../notebooks/index.ts'),
  folder = here('../notebooks'),
  policy = 'strict',
  words = {},
}: Pages = {}): UserConfig {
  return {
    root: here('..'),
    base: './',
    appType: 'mpa',
    publicDir: false,
    plugins: [saying(words), documents({ list, folder, policy, words })],
    worker: {
      format: 'es',
      plugins: () => [saying(words)],
      rolldownOptions: {
        treeshake: ours,
        output: { entryFileNames: 'assets/worker/[name]-[hash].js', chunkFileNames: 'assets/worker/[name]-[hash].js' },
      },
    },
    build: {
      outDir: 'dist/notebook',
      emptyOutDir: policy === 'strict',
      target: 'es2022',
      cssCodeSplit: false,
      modulePreload: false,
      assetsInlineLimit: 0,
      chunkSizeWarningLimit: 1500,
      rolldownOptions: {
        treeshake: ours,
        checks: { pluginTimings: false },
        output: {
          codeSplitting: { groups },
          entryFileNames: ({ name }) => (name === 'service-worker' ? '[name].js' : 'assets/[name]-[hash].js'),
        },
      },
    },
  };
}
