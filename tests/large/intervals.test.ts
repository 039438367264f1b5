import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inventHerd, toColumns } from '../../data/inventHerd.ts';
import { readParquet, writeParquet } from '../../lib/files/columnar/parquet.ts';
import { herd } from '../../lib/hoof/herd.ts';
import { IntervalSums } from '../../lib/hoof/intervalSums.ts';
import { effectSentence } from '../../lib/hoof/intervalWords.ts';
import { largeIntervals, largeIntervalsPage } from '../../lib/large.ts';
import { htmlPage } from '../../lib/report.ts';

const folder = mkdtempSync(join(tmpdir(), 'evenhoof-intervals-test-'));
const file = join(folder, 'intervals.parquet');
const question = { outcome: 'wall_level_mm', size: true };

beforeAll(async () => {
  const { feet, horses, visits } = inventHerd(7);
  const yard = herd({ feet: toColumns(feet), horses: toColumns(horses), visits: toColumns(visits) });
  writeFileSync(file, await writeParquet(yard.intervals));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the question of longer intervals of a large table', () => {
  it('is answered as from the rows themselves, and its page says so', async () => {
    const { columns } = await readParquet(await readFile(file));
    const wanted = new IntervalSums(question).add(columns).answer();
    const answer = await largeIntervals(file, question);
    expect(answer).toEqual(wanted);
    if (answer.kind !== 'fitted') throw new Error(answer.reason);
    const page = await htmlPage(largeIntervalsPage, { herd: answer });
    expect(page).toContain(effectSentence(answer, answer, { length: 'mm', mass: 'kg' }));
  });

  it('says in words where there is too little', async () => {
    const answer = await largeIntervals(file, { ...question, limbs: [] });
    expect(answer.kind).toBe('too little');
    expect(await htmlPage(largeIntervalsPage, { herd: answer })).toContain('Too little to go by yet');
  });

  it('needs the start and end of what is asked about', async () => {
    await expect(largeIntervals(file, { outcome: 'frog_ratio' })).rejects.toThrow(
      /no columns frog_ratio_start and frog_ratio_end/,
    );
  });
});
