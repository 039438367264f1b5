import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    testTimeout: 60_000,
    hookTimeout: 120_000,
    pool: 'forks',
    projects: [
      { extends: true, test: { name: 'unit', include: ['tests/**/*.test.ts'], exclude: ['tests/pages/**'] } },
      // One file at a time: each drives a whole browser, and on a busy machine a step may come too early.
      {
        extends: true,
        test: { name: 'pages', include: ['tests/pages/**/*.test.ts'], fileParallelism: false },
      },
    ],
  },
});
