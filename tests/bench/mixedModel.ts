import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { mixedModel } from '../../lib/stats/mixed/mixedModel.ts';
import { random } from '../../lib/stats/random.ts';
import { against, type BenchRow, interleaved } from './interleaved.ts';

/** Invented intervals: horses with four limbs each, their lengths around each horse's own habit. */
function invented(horses: number, visits: number) {
  const { normal } = random(11);
  const n = horses * 4 * visits;
  const columns = {
    horse: new Array<string>(n),
    limb: new Array<string>(n),
    within: new Float64Array(n),
    between: new Float64Array(n),
    y: new Float64Array(n),
  };
  let row = 0;
  for (let h = 0; h < horses; h++) {
    const habit = 42 + 6 * normal();
    const horse = 1.4 * normal();
    for (const limb of ['LF', 'RF', 'LH', 'RH']) {
      const foot = 0.9 * normal();
      for (let visit = 0; visit < visits; visit++, row++) {
        const within = 5 * normal();
        columns.horse[row] = `h${h}`;
        columns.limb[row] = limb;
        columns.within[row] = within;
        columns.between[row] = habit;
        columns.y[row] = 0.05 * within + 0.02 * habit + horse + foot + 1.5 * normal();
      }
    }
  }
  return columns;
}

const spec = {
  response: 'y',
  fixed: ['within', 'between', 'limb'],
  random: [{ by: ['horse'] }, { by: ['horse', 'limb'] }],
};

const inR = `suppressMessages({library(lme4); library(lmerTest)})
d <- read.csv(commandArgs(TRUE)[1])
cat("ready\\n"); flush(stdout())
con <- file("stdin"); open(con)
while (length(line <- readLines(con, n = 1)) > 0) {
  if (line == "lme4") m <- lme4::lmer(y ~ within + between + limb + (1 | horse/limb), d)
  else { m <- lmerTest::lmer(y ~ within + between + limb + (1 | horse/limb), d); s <- summary(m) }
  cat(sprintf("%.12f\\n", REMLcrit(m))); flush(stdout())
}`;

/** The nested model against R's lme4, without and with Satterthwaite's degrees of freedom, where R has both packages. */
export async function bench(): Promise<BenchRow[]> {
  const there = spawnSync('Rscript', ['-e', 'library(lme4); library(lmerTest)'], { stdio: 'ignore' }).status === 0;
  if (!there) return [];
  const folder = mkdtempSync(join(tmpdir(), 'evenhoof-bench-'));
  const rows: BenchRow[] = [];
  try {
    for (const [horses, visits] of [
      [248, 10],
      [2365, 10],
    ]) {
      const columns = invented(horses, visits);
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
      const ours = () => mixedModel(columns, spec);
      const theirs = await ask('lme4');
      if (Math.abs(ours().criterion - theirs) > 1e-4)
        throw new Error(`Not the same model: ${ours().criterion}, ${theirs}`);
      const medians = await interleaved({ ours, lmer: () => ask('lme4'), lmerTest: () => ask('lmerTest') }, 5);
      rows.push(
        ...against(`mixed model with degrees of freedom, ${columns.y.length} rows`, medians, {
          lmer: 'at most 0.1 × lmer',
        }),
      );
      r.stdin.end();
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return rows;
}
