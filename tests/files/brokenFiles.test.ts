import { expect, it } from 'vitest';
import { random } from '../../lib/stats/random.ts';
import { accountOf, brokenFile, readGuided } from './brokenFiles.ts';

/** `BROKEN_FILES=100000 npx vitest run tests/files/brokenFiles.test.ts` reads more, and says what it cost. */
const count = Number(process.env.BROKEN_FILES ?? 2000);
const seed = Number(process.env.SEED ?? 20_261_125);

it(`${count} broken files (seed ${seed}) are read without failing, within bounds, every cell read or reported`, () => {
  const source = random(seed);
  let slowest = { ms: 0, bytes: 0, at: 0 };
  let cells = 0;
  let problems = 0;
  let most = 0;
  for (let at = 0; at < count; at++) {
    const bytes = brokenFile(source);
    const started = performance.now();
    const account = accountOf(bytes);
    if (at % 5 === 0) readGuided(bytes);
    const ms = performance.now() - started;
    if (ms > slowest.ms) slowest = { ms, bytes: bytes.length, at };
    if (account.lost.length > 0) throw new Error(`file ${at} of seed ${seed} lost ${account.lost.join('; ')}`);
    cells += account.cells;
    problems += account.problems;
    if (at % 500 === 0) most = Math.max(most, process.memoryUsage().rss);
  }
  if (process.env.BROKEN_FILES)
    console.info(
      `${count} files, ${cells} cells compared, ${problems} problems reported; slowest ${slowest.ms.toFixed(0)} ms (file ${slowest.at}, ${slowest.bytes} bytes); most memory ${(most / 1e6).toFixed(0)} MB`,
    );
  expect(cells).toBeGreaterThan(count * 5);
  // Nothing here may take longer than a reader would wait, however slow the machine.
  expect(slowest.ms).toBeLessThan(10_000);
}, 3_600_000);
