// One process of the registry benchmark: `registryFit.ts WHAT HORSES VISITS [PART OF FILE | FILE …]`. It prints what it took.
import { readFileSync, writeFileSync } from 'node:fs';
import { IntervalSums } from '../../lib/hoof/intervalSums.ts';
import type { Columns } from '../../lib/sheet/column.ts';
import { ModelSums } from '../../lib/stats/mixed/modelSums.ts';
import { inventedRegistry } from './inventedRegistry.ts';

/** Horses and their feet vary, so that the memory goes by these alone. */
const feetModel = {
  response: 'change',
  fixed: ['weeks', 'limb', 'shod'],
  random: [{ by: ['horse', 'limb'] }, { by: ['horse'] }],
};

function columnsOf(table: Columns) {
  const numbers = (name: string) => table[name].values as Float64Array;
  const [start, end, before, after] = ['start_date', 'end_date', 'wall_level_start_mm', 'wall_level_end_mm'].map(
    numbers,
  );
  return {
    horse: table.horse_id.values,
    limb: table.limb.values,
    shod: numbers('shod'),
    weeks: end.map((day, row) => (day - start[row]) / 7),
    change: after.map((value, row) => value - before[row]),
  };
}

const kinds = {
  feet: {
    fresh: () => new ModelSums(feetModel),
    load: ModelSums.load,
    add: (sums: ModelSums, table: Columns) => sums.add(columnsOf(table)),
    merge: (sums: ModelSums, other: ModelSums) => sums.merge(other),
    answer: (sums: ModelSums) => {
      const { fixed, criterion } = sums.fit();
      return [...fixed.flatMap(({ estimate, se, df }) => [estimate, se, df]), criterion];
    },
  },
  question: {
    fresh: () => new IntervalSums({ outcome: 'wall_level_mm' }),
    load: IntervalSums.load,
    add: (sums: IntervalSums, table: Columns) => sums.add(table),
    merge: (sums: IntervalSums, other: IntervalSums) => sums.merge(other),
    answer: (sums: IntervalSums) => {
      const answer = sums.answer();
      if (answer.kind === 'too little') throw new Error(answer.reason);
      return answer.terms.flatMap(({ estimate, se, df }) => [estimate, se, df]);
    },
  },
};

/** What one process took, in milliseconds of wall clock and of computing, and MB at its peak. */
export interface Taken {
  readonly adding: number;
  readonly answering: number;
  readonly computing: number;
  readonly peak: number;
  readonly bytes?: number;
  readonly answer?: readonly number[];
}

function run<Sums extends { save(): Uint8Array }>(
  kind: {
    fresh: () => Sums;
    load: (bytes: Uint8Array) => Sums;
    add: (sums: Sums, table: Columns) => Sums;
    merge: (sums: Sums, other: Sums) => Sums;
    answer: (sums: Sums) => number[];
  },
  [horses, visits, part, of, ...files]: readonly string[],
): Taken {
  let [adding, answering] = [0, 0];
  const timed = <T>(work: () => T): [T, number] => {
    const started = performance.now();
    return [work(), performance.now() - started];
  };
  let sums = kind.fresh();
  let bytes: number | undefined;
  let answer: number[] | undefined;
  if (part === 'merged') {
    for (const file of [of, ...files]) {
      const [merged, time] = timed(() => kind.merge(sums, kind.load(readFileSync(file))));
      sums = merged;
      adding += time;
    }
  } else {
    // Making the rows up is not part of the work.
    let turn = 0;
    for (const table of inventedRegistry(Number(horses), Number(visits))) {
      if (part !== undefined && turn++ % Number(of) !== Number(part)) continue;
      adding += timed(() => kind.add(sums, table))[1];
    }
  }
  if (part !== undefined && part !== 'merged') {
    const [saved, time] = timed(() => sums.save());
    adding += time;
    bytes = saved.length;
    writeFileSync(files[0], saved);
  } else [answer, answering] = timed(() => kind.answer(sums));
  const { user, system } = process.cpuUsage();
  const peak = process.resourceUsage().maxRSS / 1024;
  return { adding, answering, computing: (user + system) / 1000, peak, bytes, answer };
}

if (process.argv[1] === import.meta.filename) {
  const [what, ...rest] = process.argv.slice(2);
  console.log(JSON.stringify(what === 'feet' ? run(kinds.feet, rest) : run(kinds.question, rest)));
}
