// The time of a process's first fit in milliseconds: `firstFit.ts HORSES VISITS`. Run by the mixed model's benchmark.
import { mixedModel } from '../../lib/stats/mixed/mixedModel.ts';
import { inventedIntervals, nestedModel } from './inventedIntervals.ts';

if (process.argv[1] === import.meta.filename) {
  const [horses, visits] = process.argv.slice(2).map(Number);
  const columns = inventedIntervals(horses, visits);
  const start = performance.now();
  mixedModel(columns, nestedModel);
  console.log(performance.now() - start);
}
