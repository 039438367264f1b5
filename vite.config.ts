import { defineConfig } from 'vite';
import { documents, entries } from './scripts/documents.ts';

export default defineConfig({
  // Addresses are relative, so that the notebook runs from any folder of any server.
  base: './',
  appType: 'mpa',
  publicDir: false,
  plugins: [documents()],
  build: {
    outDir: 'dist/notebook',
    target: 'es2022',
    cssCodeSplit: false,
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1500,
    rolldownOptions: {
      input: { ...entries, 'service-worker': 'notebooks/shell/worker.ts' },
      output: {
        entryFileNames: ({ name }) => (name === 'service-worker' ? '[name].js' : 'assets/[name]-[hash].js'),
      },
    },
  },
});
