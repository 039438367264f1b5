// Types, lint, the build, then every test; the last line counts them: `N passed, N failed`.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const scratch = mkdtempSync(join(tmpdir(), 'evenhoof-test-'));
const report = join(scratch, 'vitest.json');
let passed = 0;
let failed = 0;

function step(name, command, args) {
  console.log(`\n— ${name}`);
  const ok = spawnSync('npx', ['--no-install', command, ...args], { stdio: 'inherit' }).status === 0;
  ok ? passed++ : failed++;
  return ok;
}

step('types', 'tsc', ['--noEmit']);
step('lint', 'biome', ['check', '.', '--error-on-warnings']);
const built = spawnSync('node', ['scripts/build.mjs'], { stdio: 'inherit' }).status === 0;
built ? passed++ : failed++;

console.log('\n— unit, reference, house and pages');
const run = spawnSync(
  'npx',
  ['--no-install', 'vitest', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`],
  { stdio: 'inherit' },
);
try {
  const results = JSON.parse(readFileSync(report, 'utf8'));
  passed += results.numPassedTests;
  // A file that fails to load counts although none of its tests ran; a skipped test is a failure here.
  const unloaded = results.testResults.filter((f) => f.status === 'failed' && f.assertionResults.length === 0).length;
  failed += results.numFailedTests + results.numPendingTests + results.numTodoTests + unloaded;
} catch (error) {
  console.error(`The tests left no report: ${error.message}`);
  failed++;
}
if (run.status !== 0 && failed === 0) failed++;
rmSync(scratch, { recursive: true, force: true });
console.log(`\n${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
