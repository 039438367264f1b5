import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { herd, readTable } from '../../lib/index.ts';
import { steps, table } from '../../notebooks/tutorial.ts';

const folder = mkdtempSync(join(tmpdir(), 'evenhoof-tutorial-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('prints what the page says that it prints', { timeout: 120_000 }, () => {
  const library = new URL('../../lib/index.ts', import.meta.url).href;
  const code = steps()
    .map((step) => step.code)
    .join('\n');
  const program = `const table = ${JSON.stringify(table)};\nconst units = { length: 'mm', mass: 'kg' };\n${code}`;
  const file = join(folder, 'tutorial.mts');
  writeFileSync(file, program.replace("'evenhoof'", JSON.stringify(library)));
  const tsx = import.meta.resolve('tsx');
  const printed = execFileSync(process.execPath, ['--import', tsx, file], { encoding: 'utf8' }).trim().split('\n');
  expect(printed).toEqual(steps().map(({ prints }) => prints));
});

it('comes to what the table gives by hand', () => {
  const [read, level, steeper, growth] = steps().map(({ prints }) => prints);
  expect(read).toBe('feet 12 row 13: about 98');
  // 56 inside less 51 outside.
  expect(level).toMatch(/^\+5\.0 mm|^\+5 ± /);
  // 52 degrees on the near fore, 53 on the off.
  expect(steeper).toMatch(/^-1 deg /);
  // 9/42, 11/49, 9/42, 11/49 and 8/42 mm a day: the middle one is 9/42.
  expect(growth).toBe('6 0.21 mm/day');
  const { intervals } = herd({ feet: readTable(table).columns });
  const values = [...(intervals.column('toe_growth_mm_per_day').values as Float64Array)].filter(
    (each) => !Number.isNaN(each),
  );
  expect(values.toSorted((a, b) => a - b).map((each) => each.toFixed(4))).toEqual(
    [8 / 42, 9 / 42, 9 / 42, 11 / 49, 11 / 49].map((each) => each.toFixed(4)),
  );
});
