import { expect, it } from 'vitest';
import { mad } from '../../lib/stats/mad.ts';
import { median } from '../../lib/stats/median.ts';
import { type QuantileType, quantile } from '../../lib/stats/quantile.ts';
import { closeTo, readCase } from './stats/read.ts';

const precip = readCase('quantile-type7');

it('quantile agrees with R on all nine types', () => {
  expect(precip.all_types).toHaveLength(9);
  for (const { type, quantiles } of precip.all_types)
    closeTo(quantile(precip.data, precip.probs, type as QuantileType), quantiles, 1e-12);
});

it('median, mad and the quartiles agree with R', () => {
  closeTo(median(precip.data), precip.quantiles[4], 1e-12);
  closeTo(mad(precip.data), precip.mad, 1e-12);
  const [low, high] = quantile(precip.data, [0.25, 0.75]);
  closeTo(high - low, precip.iqr, 1e-12);
});
