import { describe, expect, it } from 'vitest';
import { random } from '../../lib/stats/random.ts';
import { theilSenWithin } from '../../lib/stats/theilSenWithin.ts';

describe('theilSenWithin', () => {
  it('is the weighted median of the slopes between rows of one group', () => {
    // Slopes 1 (one apart), 3 (two apart) and 5 (one apart): half the weight of 4 lies at 3.
    expect(theilSenWithin([0, 1, 2], [0, 1, 6], [0, 0, 0]).slope).toBe(3);
    // Two groups, slopes 1 and 2 of equal weight: half-way.
    expect(theilSenWithin([0, 1, 0, 1], [0, 1, 9, 11], [0, 0, 1, 1]).slope).toBe(1.5);
    // The pair further apart outweighs the other.
    expect(theilSenWithin([0, 1, 0, 3], [0, 1, 9, 15], [0, 0, 1, 1]).slope).toBe(2);
  });

  it('ignores what groups differ by on the whole, and pairs that do not differ in x', () => {
    const { slope, pairs, n } = theilSenWithin([1, 1, 2, 5, 5, 6], [0, 2, 5, 100, 100, 104], [0, 0, 0, 1, 1, 1]);
    expect({ slope, pairs, n }).toEqual({ slope: 4, pairs: 4, n: 6 });
  });

  it('leaves out rows with anything missing and counts them', () => {
    const { slope, missing, n } = theilSenWithin([1, 2, Number.NaN, 3], [2, 4, 7, Number.NaN], [0, 0, 0, 0]);
    expect({ slope, missing, n }).toEqual({ slope: 2, missing: 2, n: 2 });
  });

  it('has no slope where x varies in no group', () => {
    const none = theilSenWithin([1, 1, 2, 2], [1, 2, 3, 4], [0, 0, 1, 1]);
    expect(none.slope).toBeNaN();
    expect(none.lower).toBeNaN();
    expect(none.pairs).toBe(0);
    expect(theilSenWithin([], [], []).slope).toBeNaN();
  });

  it('holds a slope that a quarter of wild outcomes would bend', () => {
    const { normal, below } = random(5);
    const [x, y, group]: number[][] = [[], [], []];
    for (let g = 0; g < 30; g++)
      for (let i = 0; i < 8; i++) {
        x.push(normal());
        y.push(2 * x[x.length - 1] + 10 * g + 0.3 * normal() + (below(5) === 0 ? 50 * normal() : 0));
        group.push(g);
      }
    const { slope, lower, upper } = theilSenWithin(x, y, group);
    expect(Math.abs(slope - 2)).toBeLessThan(0.15);
    expect(lower).toBeLessThan(2);
    expect(upper).toBeGreaterThan(2);
    expect(upper - lower).toBeLessThan(0.5);
  });

  it('draws clusters as wholes, so that groups which move together widen the interval', () => {
    const { normal } = random(6);
    const [x, y, group, cluster]: number[][] = [[], [], [], []];
    for (let c = 0; c < 8; c++) {
      const own = normal();
      for (let g = 0; g < 6; g++)
        for (let i = 0; i < 4; i++) {
          x.push(i);
          y.push(own * i + 0.1 * normal());
          group.push(6 * c + g);
          cluster.push(c);
        }
    }
    const width = (options: object) => {
      const { lower, upper } = theilSenWithin(x, y, group, options);
      return upper - lower;
    };
    expect(width({ clusters: cluster })).toBeGreaterThan(1.5 * width({}));
  });

  it('gives the same for the same seed, and a wider interval for a higher level', () => {
    const { normal } = random(7);
    const rows = Array.from({ length: 40 }, (_, i) => i);
    const [x, y] = [rows.map(() => normal()), rows.map(() => normal())];
    const group = rows.map((i) => Math.floor(i / 4));
    const one = theilSenWithin(x, y, group, { draws: 300, seed: 3 });
    expect(theilSenWithin(x, y, group, { draws: 300, seed: 3 })).toEqual(one);
    expect(theilSenWithin(x, y, group, { draws: 300, seed: 4 })).not.toEqual(one);
    const wide = theilSenWithin(x, y, group, { draws: 300, seed: 3, level: 0.99 });
    expect(wide.upper - wide.lower).toBeGreaterThan(one.upper - one.lower);
  });
});
