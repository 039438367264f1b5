import { execFileSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, rmSync, writeFileSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BenchRow } from './interleaved.ts';
import { inventedRegistry } from './inventedRegistry.ts';
import type { Taken } from './registryFit.ts';

/** Minutes long: only where it is named. */
export const onDemand = true;

const visits = 5;
const sizes = [500, 5_000, 50_000];
const parts = 4;
/** What the largest table may take: a second for 50,000 rows. */
const limit = 20_000;

// Each model in R's words; it prints the estimates with their errors, seconds of the fit alone, and its peak in MB.
const inR = (model: string, prepared = '') => `suppressMessages(library(lme4))
d <- read.csv(commandArgs(TRUE)[1], stringsAsFactors = TRUE)
${prepared}
took <- system.time(m <- lmer(${model}, d, control = lmerControl(calc.derivs = FALSE)))
peak <- sub("[^0-9]*([0-9]+).*", "\\\\1", grep("VmHWM", readLines("/proc/self/status"), value = TRUE))
cat(took[["elapsed"]], as.numeric(peak) / 1024, c(rbind(fixef(m), sqrt(diag(as.matrix(vcov(m)))))))
`;
const models = {
  feet: inR('change ~ weeks + limb + shod + (1 | horse/limb)'),
  question: inR(
    'change ~ within + mean + limb + season + iron + (1 | horse) + (1 | horse:limb) + (1 | horse:interval)',
    'd$mean <- ave(d$weeks, d$horse); d$within <- d$weeks - d$mean; d$interval <- factor(d$start)\nd$iron <- ifelse(d$shod == 1, "shod", "bare")',
  ),
};
type What = keyof typeof models;
const titles: Record<What, string> = {
  feet: 'horses and their feet vary',
  question: 'the question of longer intervals, intervals of a horse vary too',
};

/**
 * Mixed models of registries of 10,000 to 1,000,000 intervals, rows streamed through sums that are then fitted, each in a
 * process of its own; against R's lmer on the same rows in the same run, its reading of the file left out. Where answers differ
 * it ends with an error. Then the largest in four processes whose sums are merged.
 */
export async function bench(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'evenhoof-registry-'));
  const rows: BenchRow[] = [];
  try {
    for (const horses of sizes) {
      const csv = join(folder, 'intervals.csv');
      writeRows(csv, horses);
      const n = (horses * visits * 4).toLocaleString('en');
      for (const what of Object.keys(models) as What[]) {
        const rounds = horses < 50_000 ? 3 : 1;
        const [ours, theirs]: [Taken[], number[][]] = [[], []];
        for (let round = 0; round < rounds; round++) {
          ours.push(ownProcess(what, `${horses}`, `${visits}`));
          theirs.push(askR(folder, what, csv));
        }
        agree(ours[0].answer!, theirs[0].slice(2), `${what}, ${n} rows`);
        const total = median(ours.map(({ adding, answering }) => adding + answering));
        const title = `${n} streamed intervals of ${horses.toLocaleString('en')} horses, ${titles[what]}`;
        rows.push(
          { what: title, peer: 'lmer, rows in memory', ours: total, theirs: 1000 * median(theirs.map(([s]) => s)) },
          { what: `${title}: peak memory in MB`, peer: 'lmer', ours: ours[0].peak, theirs: theirs[0][1] },
        );
        if (horses === sizes[sizes.length - 1])
          rows.push({ what: title, peer: 'the time it may take', ours: total, theirs: limit, goal: 'below 1' });
      }
    }
    const horses = sizes[sizes.length - 1];
    const whole = ownProcess('feet', `${horses}`, `${visits}`);
    const more = ownProcess('feet', `${horses}`, `${4 * visits}`);
    rows.push({
      what: `peak memory in MB for ${horses.toLocaleString('en')} horses, four times the rows`,
      ...{ peer: 'the rows once', ours: more.peak, theirs: whole.peak, goal: 'near 1' },
    });
    const files = Array.from({ length: parts }, (_, part) => join(folder, `part ${part}`));
    const each = files.map((file, part) => ownProcess('feet', `${horses}`, `${visits}`, `${part}`, `${parts}`, file));
    const merged = ownProcess('feet', `${horses}`, `${visits}`, 'merged', ...files);
    if (JSON.stringify(merged.answer) !== JSON.stringify(whole.answer)) throw new Error('The parts don’t add up');
    rows.push({
      what: `the same in ${parts} processes: the slowest part, loading, merging and the fit`,
      peer: 'in one',
      ours: Math.max(...each.map(({ adding }) => adding)) + merged.adding + merged.answering,
      theirs: whole.adding + whole.answering,
    });
    console.error(`sums of a part: ${each.map(({ bytes }) => (bytes! / 1e6).toFixed(1)).join(', ')} MB`);
    return rows;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function ownProcess(...words: readonly string[]): Taken {
  const script = join(import.meta.dirname, 'registryFit.ts');
  return JSON.parse(execFileSync(process.execPath, [...process.execArgv, script, ...words], { encoding: 'utf8' }));
}

function askR(folder: string, what: What, csv: string): number[] {
  const script = join(folder, `${what}.R`);
  writeFileSync(script, models[what]);
  return execFileSync('Rscript', [script, csv], { encoding: 'utf8' }).trim().split(/\s+/).map(Number);
}

function writeRows(csv: string, horses: number): void {
  const file = openSync(csv, 'w');
  writeSync(file, 'horse,limb,start,weeks,season,shod,change\n');
  for (const table of inventedRegistry(horses, visits)) {
    const [start, end, shod, before, after] = [
      ...['start_date', 'end_date', 'shod', 'wall_level_start_mm', 'wall_level_end_mm'],
    ].map((name) => table[name].values as Float64Array);
    const lines = Array.from(start, (day, row) => {
      const quarter = Math.floor(new Date(((day + end[row]) / 2) * 86_400_000).getUTCMonth() / 3);
      // The quarters in the order of their names, which decides what they are held against.
      const season = ['b', 'a', 'c', 'd'][quarter];
      const { horse_id, limb } = table;
      return [
        horse_id.values[row],
        limb.values[row],
        day,
        (end[row] - day) / 7,
        season,
        shod[row],
        after[row] - before[row],
      ].join(',');
    });
    writeSync(file, `${lines.join('\n')}\n`);
  }
  closeSync(file);
}

/** Estimates and errors to the digits that R's optimiser settles; ours come with degrees of freedom and a criterion besides. */
function agree(ours: readonly number[], theirs: readonly number[], who: string): void {
  for (let i = 0; 2 * i < theirs.length; i++) {
    const [estimate, se] = [ours[3 * i], ours[3 * i + 1]];
    const same = Math.abs(estimate - theirs[2 * i]) < 1e-3 * se && Math.abs(se / theirs[2 * i + 1] - 1) < 1e-3;
    if (!same) throw new Error(`${who}: ${estimate} ± ${se} where R has ${theirs[2 * i]} ± ${theirs[2 * i + 1]}`);
  }
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1];
}
