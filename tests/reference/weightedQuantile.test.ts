import { it } from 'vitest';
import { mean } from '../../lib/stats/mean.ts';
import { quantile } from '../../lib/stats/quantile.ts';
import { variance } from '../../lib/stats/sd.ts';
import { weightedQuantile } from '../../lib/stats/weightedQuantile.ts';
import { closeTo, readCase } from './stats/read.ts';

it('weightedQuantile agrees with R on values written out as often as their weight, and with Hmisc', () => {
  const { x, weights, probs, quantiles, Hmisc, weighted_mean, weighted_variance_frequency } =
    readCase('quantile-weighted');
  const found = probs.map((q: number) => weightedQuantile(x, weights, q));
  closeTo(found, quantiles, 1e-12);
  closeTo(found, Hmisc, 1e-12);
  const written = x.flatMap((value: number, row: number) => Array.from({ length: weights[row] }, () => value));
  closeTo(quantile(written, probs), quantiles, 1e-12);
  closeTo(mean(written), weighted_mean, 1e-12);
  closeTo(variance(written), weighted_variance_frequency, 1e-12);
});
