import { mixedModel } from '../../lib/stats/mixed/mixedModel.ts';
import { parametricBootstrap } from '../../lib/stats/mixed/parametricBootstrap.ts';
import { permuteWithin } from '../../lib/stats/permuteWithin.ts';
import type { BenchRow } from './interleaved.ts';
import { inventedIntervals, nestedModel } from './inventedIntervals.ts';

/** A thousand refits of the mixed model, and ten thousand shuffles within horses, each against the time it may take. */
export async function bench(): Promise<BenchRow[]> {
  const columns = inventedIntervals(248, 10);
  const model = mixedModel(columns, nestedModel);
  const horses = Float64Array.from(columns.horse, (horse) => Number(horse.slice(1)));
  const rows = `${columns.y.length} rows`;
  return [
    against(`1,000 parametric bootstrap refits, ${rows}`, 3000, () =>
      parametricBootstrap(model, { replicates: 1000, seed: 1 }),
    ),
    against(`10,000 permutations of the slope within horses, ${rows}`, 2000, () =>
      permuteWithin(columns.within, columns.y, horses, { draws: 10_000, seed: 1 }),
    ),
  ];
}

function against(what: string, most: number, work: () => unknown): BenchRow {
  const times = [0, 1, 2].map(() => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  const ours = times.sort((a, b) => a - b)[1];
  return { what, peer: 'the time it may take', ours, theirs: most, goal: 'below 1' };
}
