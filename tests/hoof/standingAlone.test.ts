import { describe, expect, it } from 'vitest';
import { standingAlone } from '../../lib/hoof/standingAlone.ts';

describe('horses that can be told from all others', () => {
  it('are counted by each column, by each two, and by all together', () => {
    const found = standingAlone({
      build: ['pony', 'pony', 'pony', 'heavy', 'pony', 'pony', 'pony'],
      year: ['2010', '2010', '2011', '2011', '', '2012', '2012'],
      use: ['trail', 'trail', 'trail', 'trail', 'trail', 'show', 'trail'],
    });
    const by = (...columns: string[]) => found.find((one) => one.columns.join() === columns.join());
    expect(found.map(({ columns }) => columns.length)).toEqual([1, 1, 1, 2, 2, 2, 3]);
    expect(by('build')).toEqual({ columns: ['build'], told: 7, alone: [3], few: 0 });
    expect(by('year')).toEqual({ columns: ['year'], told: 6, alone: [], few: 6 });
    expect(by('build', 'year')).toEqual({ columns: ['build', 'year'], told: 6, alone: [2, 3], few: 4 });
    expect(by('build', 'year', 'use')?.alone).toEqual([2, 3, 5, 6]);
  });

  it('are none where nothing is known of them', () => {
    expect(standingAlone({})).toEqual([]);
    expect(standingAlone({ build: ['', ''] })).toEqual([{ columns: ['build'], told: 0, alone: [], few: 0 }]);
  });
});
