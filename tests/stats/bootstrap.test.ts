import { describe, expect, it } from 'vitest';
import { bcaLimits, bootstrapLimits } from '../../lib/stats/bootstrapLimits.ts';
import { clusterBootstrap } from '../../lib/stats/clusterBootstrap.ts';
import { mean } from '../../lib/stats/mean.ts';
import { random } from '../../lib/stats/random.ts';
import { rowsByGroup } from '../../lib/stats/rowsByGroup.ts';

const y = [3, 5, 1, 8, 9, 7, 4];
const meanOf = (rows: ArrayLike<number>) => mean(Array.from(rows, (row) => y[row]));

describe('clusterBootstrap', () => {
  it('brings all rows of a drawn cluster', () => {
    const clusters = [4, 4, 9, 9, 9, 2, 2];
    const members = rowsByGroup(clusters).map((rows) => [...rows].join());
    const found = clusterBootstrap(
      clusters,
      (rows) => {
        let left = [...rows].join();
        for (const part of [...members, ...members, ...members])
          left = left.replace(part, '').replace(/^,|,$|,(?=,)/g, '');
        expect(left).toBe('');
        return rows.length;
      },
      { draws: 50 },
    );
    expect([found.clusters, found.observed, found.draws]).toEqual([3, 7, 50]);
    expect([...found.jackknife]).toEqual([5, 4, 5]);
    expect(found.replicates).toHaveLength(50);
  });
  it('is the same for the same seed and tells how far it is', () => {
    const told: [number, number][] = [];
    const run = (seed: number) =>
      clusterBootstrap(Array.from(y.keys()), meanOf, { draws: 200, seed, onProgress: (...at) => told.push(at) });
    expect([...run(3).replicates]).toEqual([...run(3).replicates]);
    expect([...run(3).replicates]).not.toEqual([...run(4).replicates]);
    expect(told).toHaveLength(400);
    expect(told[0]).toEqual([2, 200]);
    expect(told[99]).toEqual([200, 200]);
  });
  it('of a mean has a standard error near σ/√n', () => {
    const { normal } = random(12);
    const values = Array.from({ length: 60 }, normal);
    const found = clusterBootstrap(Array.from(values.keys()), (rows) => mean(Array.from(rows, (row) => values[row])), {
      seed: 2,
      level: 0.9,
    });
    expect(found.se).toBeCloseTo(1 / Math.sqrt(60), 1);
    for (const interval of [found.normal, found.basic, found.percentile, found.bca]) {
      expect(interval.lower).toBeLessThan(found.observed);
      expect(interval.upper).toBeGreaterThan(found.observed);
    }
  });
});

describe('bootstrapLimits', () => {
  const replicates = Array.from({ length: 99 }, (_, i) => i + 1);
  it('percentiles of 99 replicates are the numbered ones', () => {
    const { percentile, basic, bias } = bootstrapLimits(replicates, 40, 0.9);
    expect(percentile).toEqual({ lower: 5, upper: 95 });
    expect(basic).toEqual({ lower: 80 - 95, upper: 80 - 5 });
    expect(bias).toBe(10);
  });
  it('end at the outermost replicates and leave out missing ones', () => {
    expect(bootstrapLimits([1, 2, NaN, 3], 2, 0.99).percentile).toEqual({ lower: 1, upper: 3 });
    expect(bootstrapLimits([], 2).percentile).toEqual({ lower: NaN, upper: NaN });
  });
  it('BCa without bias and skewness is the percentile interval', () => {
    // 49 of 99 below would be a little off the middle: 98 replicates, 49 on each side.
    const even = replicates.filter((value) => value !== 50);
    const { lower, upper, z0, acceleration, probabilities } = bcaLimits(even, 50, [49, 51, 48, 52], 0.9);
    expect(z0).toBe(0);
    expect(acceleration).toBe(0);
    expect(probabilities[0]).toBeCloseTo(0.05, 12);
    const { percentile } = bootstrapLimits(even, 50, 0.9);
    expect(lower).toBeCloseTo(percentile.lower, 9);
    expect(upper).toBeCloseTo(percentile.upper, 9);
  });
  it('BCa moves up where most replicates lie below what was observed', () => {
    const { lower, upper, z0 } = bcaLimits(replicates, 70.5, [70.5, 70.5], 0.9);
    expect(z0).toBeGreaterThan(0);
    expect(lower).toBeGreaterThan(5);
    expect(upper).toBeGreaterThan(95);
  });
  it('BCa has no limits where all replicates lie on one side', () => {
    const { lower, upper } = bcaLimits(replicates, 1000, [1, 2]);
    expect([lower, upper]).toEqual([NaN, NaN]);
  });
});

it('rowsByGroup keeps the order in which groups appear', () => {
  expect(rowsByGroup([7, 3, 7, 7, 3]).map((rows) => [...rows])).toEqual([
    [0, 2, 3],
    [1, 4],
  ]);
  expect(rowsByGroup([])).toEqual([]);
});
