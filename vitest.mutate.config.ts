import { defineConfig } from 'vitest/config';

// What a mutant is put to: the tests of the four folders, without browsers, benchmarks or house rules.
export default defineConfig({
  test: {
    include: ['tests/{geometry,stats,sheet,hoof,reference}/**/*.test.ts'],
    testTimeout: 60_000,
    pool: 'forks',
  },
});
