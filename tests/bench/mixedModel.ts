import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { mixedModel } from '../../lib/stats/mixed/mixedModel.ts';
import { against, type BenchRow, interleaved } from './interleaved.ts';
import { inventedIntervals, nestedModel } from './inventedIntervals.ts';

const inR = `suppressMessages({library(lme4); library(lmerTest)})
d <- read.csv(commandArgs(TRUE)[1])
cat("ready\\n"); flush(stdout())
con <- file("stdin"); open(con)
while (length(line <- readLines(con, n = 1)) > 0) {
  if (line == "lme4") m <- lme4::lmer(y ~ within + between + limb + (1 | horse/limb), d)
  else { m <- lmerTest::lmer(y ~ within + between + limb + (1 | horse/limb), d); s <- summary(m) }
  cat(sprintf("%.12f\\n", REMLcrit(m))); flush(stdout())
}`;

/**
 * The nested model against R's lme4, without and with Satterthwaite's degrees of freedom, where R has both packages: the
 * median of the fits of one process, and the first fit of a fresh one, when the engine has compiled nothing yet.
 */
export async function bench(): Promise<BenchRow[]> {
  const there = spawnSync('Rscript', ['-e', 'library(lme4); library(lmerTest)'], { stdio: 'ignore' }).status === 0;
  if (!there) return [];
  const folder = mkdtempSync(join(tmpdir(), 'evenhoof-bench-'));
  const rows: BenchRow[] = [];
  try {
    for (const [horses, visits, rounds] of [
      [248, 10, 15],
      [2365, 10, 7],
    ]) {
      const columns = inventedIntervals(horses, visits);
      const file = join(folder, `${horses}.csv`);
      const names = Object.keys(columns) as (keyof typeof columns)[];
      const lines = columns.horse.map((_, row) => names.map((name) => columns[name][row]).join(','));
      writeFileSync(file, `${names.join(',')}\n${lines.join('\n')}\n`);
      const script = join(folder, 'fit.R');
      writeFileSync(script, inR);
      const r = spawn('Rscript', [script, file], { stdio: ['pipe', 'pipe', 'inherit'] });
      const answers = createInterface({ input: r.stdout })[Symbol.asyncIterator]();
      await answers.next();
      const ask = async (what: string) => {
        r.stdin.write(`${what}\n`);
        return Number((await answers.next()).value);
      };
      const ours = () => mixedModel(columns, nestedModel);
      const start = performance.now();
      const theirs = await ask('lme4');
      const firstOfR = performance.now() - start;
      if (Math.abs(ours().criterion - theirs) > 1e-4)
        throw new Error(`Not the same model: ${ours().criterion}, ${theirs}`);
      const what = `mixed model with degrees of freedom, ${columns.y.length} rows`;
      const medians = await interleaved({ ours, lmer: () => ask('lme4'), lmerTest: () => ask('lmerTest') }, rounds);
      rows.push(...against(`${what}, fit after fit`, medians, { lmer: 'at most 0.1 × lmer' }));
      rows.push({
        what: `${what}, the first fit of a process`,
        peer: 'lmer',
        ours: first(horses, visits),
        theirs: firstOfR,
      });
      r.stdin.end();
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return rows;
}

function first(horses: number, visits: number): number {
  const script = join(import.meta.dirname, 'firstFit.ts');
  return Number(execFileSync(process.execPath, [...process.execArgv, script, `${horses}`, `${visits}`]));
}
