import { describe, expect, it } from 'vitest';
import { herd } from '../../lib/hoof/herd.ts';
import type { Range } from '../../lib/hoof/measure.ts';
import { measures } from '../../lib/hoof/measures/index.ts';
import { rangeShares } from '../../lib/hoof/rangeShares.ts';
import { builtInRanges, type Ranges } from '../../lib/hoof/ranges.ts';
import { type Cells, columnsOf } from '../hoof/feet.ts';
import { published } from './published.ts';

/** A herd rebuilt from a count: so many horses with one kind of foot, the others with another, some not measured. */
function rebuilt(count: number, of: number, [bad, good]: readonly [Cells, Cells], unmeasured = 0): Cells[] {
  return Array.from({ length: of }, (_, horse) => {
    const { left, ...cells } = horse < count ? bad : horse < of - unmeasured ? good : ({} as Cells);
    const foot = { horse_id: `horse ${horse}`, date: '2015-06-01', limb: 'LF', ...cells };
    if (left === undefined) return [foot];
    return [
      { ...foot, toe_angle_deg: 50 + Number(left) },
      { ...foot, limb: 'RF', toe_angle_deg: 50 },
    ];
  }).flat();
}

/** How many lie outside a measure's first range, of how many, counted as the pages count. */
function share(rows: readonly Cells[], name: string, ranges: Ranges = builtInRanges) {
  const { occasions } = herd({ feet: columnsOf(rows) }, { ranges });
  return rangeShares(occasions, ranges).find(({ measure }) => measure.name === name)!;
}

const underrun = [
  { toe_angle_deg: 52, heel_angle_deg: 46 },
  { toe_angle_deg: 52, heel_angle_deg: 49 },
] as const;
const long = [
  { weight_kg: 450, toe_length_mm: 92 },
  { weight_kg: 450, toe_length_mm: 80 },
] as const;
const crooked = [
  { medial_wall_mm: 67, lateral_wall_mm: 60 },
  { medial_wall_mm: 61, lateral_wall_mm: 60 },
] as const;
const uneven = [{ left: 3 }, { left: 1 }] as const;
const contracted = [
  { frog_width_mm: 40, frog_length_mm: 80 },
  { frog_width_mm: 60, frog_length_mm: 80 },
] as const;
const brokenBack = [
  { toe_angle_deg: 48, pastern_angle_deg: 52 },
  { toe_angle_deg: 52, pastern_angle_deg: 52 },
] as const;
const on = (limb: string, [bad, good]: readonly [Cells, Cells]): [Cells, Cells] => [
  { ...bad, limb },
  { ...good, limb },
];

describe('the counts of four published herds come again from rows', () => {
  it.each([
    ['long toes', 'dau-pct-long-toe', 'toe_over_guide_mm', 52, 58, long],
    ['underrun heels', 'dau-pct-underrun', 'toe_minus_heel_deg', 28, 58, underrun],
    ['unequal toe angles', 'dau-pct-mismatch', 'toe_angle_left_minus_right_deg', 16, 58, uneven],
    ['imbalance', 'dau-pct-ml', 'wall_level_mm', 9, 58, crooked],
    ['contracted heels', 'canto-pct-contracted', 'frog_ratio', 85, 97, contracted],
    ['imbalance', 'canto-pct-ml', 'wall_level_mm', 48, 97, crooked],
    ['mismatched angles', 'canto-pct-mismatch', 'toe_angle_left_minus_right_deg', 23, 97, uneven],
    ['a broken-back axis', 'canto-pct-broken-back', 'toe_minus_pastern_deg', 11, 97, brokenBack],
    ['unequal fore angles', 'schade-pct-mismatch-fore', 'toe_angle_left_minus_right_deg', 18, 44, uneven],
    ['a contracted right hind frog', 'schade-pct-contracted-rh', 'frog_ratio', 31, 44, on('RH', contracted)],
    ['a contracted left hind frog', 'schade-pct-contracted-lh', 'frog_ratio', 29, 44, on('LH', contracted)],
    ['contracted heels', 'vaquejada-pct-contracted', 'frog_ratio', 32, 50, contracted],
    ['imbalance', 'vaquejada-pct-ml', 'wall_level_mm', 15, 50, crooked],
  ] as const)('%s (%s)', (_, id, measure, count, of, kinds) => {
    const found = share(rebuilt(count, of, kinds), measure);
    const feet = measure === 'toe_angle_left_minus_right_deg' ? 2 : 1;
    expect([found.outside / feet, found.of / feet]).toEqual([count, of]);
    const { value, n } = published(id);
    expect(n).toBe(of);
    // One paper rounds 65.909 up to 66.0.
    expect(Math.abs((100 * found.outside) / found.of - value)).toBeLessThan(
      id === 'schade-pct-contracted-lh' ? 0.1 : 0.051,
    );
  });

  it('unequal hind angles, by a range of the user’s own, because the built-in one is for front pairs', () => {
    const [front] = builtInRanges.get('toe_angle_left_minus_right_deg')!;
    const hind: Range = { ...front, when: { end: 'hind' } };
    const rows = rebuilt(15, 44, uneven).map((row) => ({ ...row, limb: row.limb === 'LF' ? 'LH' : 'RH' }));
    const found = share(rows, 'toe_angle_left_minus_right_deg', new Map([['toe_angle_left_minus_right_deg', [hind]]]));
    expect(((100 * found.outside) / found.of).toFixed(1)).toBe(published('schade-pct-mismatch-hind').value.toFixed(1));
    expect(share(rows, 'toe_angle_left_minus_right_deg').of).toBe(0);
  });

  it('asymmetric feet, a plain count', () => {
    expect((100 * 27) / 50).toBe(published('vaquejada-pct-asymmetry').value);
  });
});

describe('the trap of a percentage whose denominator is smaller than the herd', () => {
  const printed = '33.3';
  const percent = (count: number, of: number): string => ((100 * count) / of).toFixed(1);

  it('fits no count of 58 horses', () => {
    expect(Array.from({ length: 59 }, (_, count) => percent(count, 58))).not.toContain(printed);
  });

  it('fits 19 of 57, where one foot was not measured and counts neither way', () => {
    const found = share(rebuilt(19, 58, contracted, 1), 'frog_ratio');
    expect(found).toMatchObject({ outside: 19, of: 57, missing: 1 });
    expect(percent(found.outside, found.of)).toBe(printed);
  });
});

describe('what stands beside a range as published', () => {
  const ids: Readonly<Record<string, readonly string[]>> = {
    'toe_over_guide_mm dau-2015': ['dau-pct-long-toe'],
    'toe_minus_heel_deg dau-2015': ['dau-pct-underrun'],
    'toe_angle_left_minus_right_deg dau-2015': ['dau-pct-mismatch'],
    'toe_angle_left_minus_right_deg canto-2004': ['canto-pct-mismatch'],
    'toe_angle_left_minus_right_deg schade-2013': ['schade-pct-mismatch-fore'],
    'wall_level_mm dau-2015': ['dau-pct-ml'],
    'wall_level_mm canto-2004': ['canto-pct-ml'],
    'wall_level_mm vaquejada': ['vaquejada-pct-ml'],
    'frog_ratio canto-2004': ['canto-pct-contracted'],
    'frog_ratio vaquejada': ['vaquejada-pct-contracted'],
    'frog_ratio schade-2013': ['schade-pct-contracted-rh', 'schade-pct-contracted-lh'],
    'toe_minus_pastern_deg canto-2004': ['canto-pct-broken-back'],
  };

  it.each(Object.keys(ids))('%s is what was printed', (key) => {
    const [name, source] = key.split(' ');
    const shares = measures
      .find((measure) => measure.name === name)!
      .ranges.flatMap(({ publishedOutside }) => publishedOutside ?? [])
      .filter((share) => share.source === source);
    expect(shares).toHaveLength(ids[key].length);
    shares.forEach(({ outside, of }, i) => {
      const { value, n } = published(ids[key][i]);
      expect(of).toBe(n);
      expect(Math.abs((100 * outside) / of - value)).toBeLessThan(0.1);
    });
  });

  it('leaves nothing out', () => {
    const stated = measures.flatMap(({ name, ranges }) =>
      ranges.flatMap(({ publishedOutside }) => (publishedOutside ?? []).map(({ source }) => `${name} ${source}`)),
    );
    const survey = stated.filter((key) => key.endsWith('sport-horse-survey'));
    // Printed as 97 and 95 percent of 120 horses; the counts are worked back.
    expect(survey).toHaveLength(2);
    expect([116, 114].map((count) => Math.round((100 * count) / 120))).toEqual([97, 95]);
    expect(new Set(stated.filter((key) => !survey.includes(key)))).toEqual(new Set(Object.keys(ids)));
  });
});
