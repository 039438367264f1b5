import { describe, expect, it } from 'vitest';
import { herd } from '../../lib/hoof/herd.ts';
import { rangeShares } from '../../lib/hoof/rangeShares.ts';
import { ranking } from '../../lib/hoof/ranking.ts';
import { findingWords } from '../../lib/hoof/sentences.ts';
import { type Cells, columnsOf } from './feet.ts';

const mm = { length: 'mm', mass: 'kg' } as const;
const days = ['2026-01-05', '2026-02-16', '2026-03-30', '2026-05-11', '2026-06-22'];
const limbs = ['LF', 'RF', 'LH', 'RH'];

/** Twelve horses, five visits, small differences that no one need notice; `change` is what a test makes of one cell. */
function calmHerd(change: (row: Record<string, string | number>, horse: number, visit: number) => void = () => {}) {
  const rows: Cells[] = [];
  for (let horse = 0; horse < 12; horse++)
    for (let visit = 0; visit < days.length; visit++)
      for (const limb of limbs) {
        const own = ((horse * 7 + limbs.indexOf(limb) * 3) % 11) / 5 - 1;
        const wobble = ((horse * 5 + visit * 3 + limbs.indexOf(limb)) % 7) / 7 - 0.5;
        const row: Record<string, string | number> = {
          horse_id: `horse ${horse}`,
          date: days[visit],
          limb,
          moment: 'after',
          toe_angle_deg: 51,
          heel_angle_deg: 48,
          medial_wall_mm: 60 + own + wobble,
          lateral_wall_mm: 60,
        };
        change(row, horse, visit);
        rows.push(row);
      }
  return rows;
}

const rank = (feet: readonly Cells[], tables: { horses?: readonly Cells[]; visits?: readonly Cells[] } = {}) => {
  const { occasions, ranges } = herd({
    feet: columnsOf(feet),
    horses: tables.horses && columnsOf(tables.horses),
    visits: tables.visits && columnsOf(tables.visits),
  });
  return ranking(occasions, ranges);
};
const raised = (feet: readonly Cells[]): string[] =>
  rank(feet).raise.map(({ foot, measure }) => `${foot.horse} ${foot.limb} ${measure.name}`);

/** The left fore of horse 3 becomes 9 mm higher on the inside at the last visit. */
const jump = (row: Record<string, string | number>, horse: number, visit: number): void => {
  if (horse === 3 && visit === 4 && row.limb === 'LF') row.medial_wall_mm = 69;
};

describe('worth raising', () => {
  it('is nothing in a herd where nothing changed', () => {
    expect(rank(calmHerd())).toMatchObject({ raise: [], onPurpose: [], feet: 48, once: 0 });
  });

  it('is a foot that became unusual by more than the error of measuring', () => {
    const { raise } = rank(calmHerd(jump));
    expect(raise).toHaveLength(1);
    expect(raise[0]).toMatchObject({ state: 'raise', value: 9, foot: { horse: 'horse 3', limb: 'LF', date: 20626 } });
    expect(raise[0].measure.name).toBe('wall_level_mm');
    expect(raise[0].own!.earlier).toBe(4);
    expect(raise[0].herd!.feet).toBe(24);
  });

  it('is not a foot that always was so, however far outside its range', () => {
    const always = (row: Record<string, string | number>, horse: number): void => {
      if (horse === 3 && row.limb === 'LF') row.medial_wall_mm = 69;
    };
    expect(raised(calmHerd(always))).toEqual([]);
  });

  it('is not a foot that came nearer to the rest of the herd', () => {
    const better = (row: Record<string, string | number>, horse: number, visit: number): void => {
      if (horse === 3 && visit < 4 && row.limb === 'LF') row.medial_wall_mm = 69;
    };
    expect(raised(calmHerd(better))).toEqual([]);
  });

  it('is not a change within the error of a poor view', () => {
    const blurred = (row: Record<string, string | number>, horse: number, visit: number): void => {
      jump(row, horse, visit);
      if (horse === 3 && row.limb === 'LF') row.view_quality = 'poor';
      if (horse === 3 && visit === 4 && row.limb === 'LF') row.medial_wall_mm = 68.5;
    };
    expect(raised(calmHerd(blurred))).toEqual([]);
    const clear = (row: Record<string, string | number>, horse: number, visit: number): void => {
      blurred(row, horse, visit);
      row.view_quality = 'good';
    };
    expect(raised(calmHerd(clear))).toEqual(['horse 3 LF wall_level_mm']);
  });

  it('moves on the good side of the only limit are not', () => {
    const steeper = (row: Record<string, string | number>, horse: number, visit: number): void => {
      row.heel_angle_deg = 48 + ((horse * 5 + visit * 3) % 7) / 5;
      if (horse === 3 && visit === 4 && row.limb === 'LF') row.heel_angle_deg = 57;
    };
    expect(raised(calmHerd(steeper))).toEqual([]);
    const flatter = (row: Record<string, string | number>, horse: number, visit: number): void => {
      steeper(row, horse, visit);
      if (horse === 3 && visit === 4 && row.limb === 'LF') row.heel_angle_deg = 40;
    };
    expect(raised(calmHerd(flatter))).toEqual(['horse 3 LF toe_minus_heel_deg']);
  });

  it('never ranks a foot that vet and farrier set so on purpose, and lets it say nothing of the herd', () => {
    const visits = [{ horse_id: 'horse 3', date: days[4], therapeutic: 'yes' }];
    const { raise, onPurpose } = rank(calmHerd(jump), { visits });
    expect(raise).toEqual([]);
    expect(onPurpose.map(({ foot, state }) => [foot.horse, state])).toEqual([['horse 3', 'on purpose']]);
    expect(findingWords(onPurpose[0], mm).notes.join(' ')).toMatch(/on purpose: it is not ranked/);
  });

  it('can’t be told of a foot that was measured once, and says so', () => {
    const once = calmHerd((row, horse) => {
      if (horse === 3 && row.limb === 'LF') row.medial_wall_mm = 75;
    }).filter(({ date }) => date === days[0]);
    const { raise, unsure, once: feet } = rank(once);
    expect([raise.length, feet]).toEqual([0, 48]);
    expect(unsure.map(({ foot }) => `${foot.horse} ${foot.limb}`)).toEqual(['horse 3 LF']);
    expect(findingWords(unsure[0], mm).sentence).toMatch(
      /measured once at this moment, so whether it changed can’t be told yet/,
    );
  });

  it('tells a pair’s difference of one of its feet', () => {
    const uneven = (row: Record<string, string | number>, horse: number, visit: number): void => {
      row.toe_angle_deg = 51 + ((horse * 5 + visit * 3 + limbs.indexOf(String(row.limb)) * 4) % 7) / 5;
      row.heel_angle_deg = Number(row.toe_angle_deg) - 3;
      if (horse === 3 && visit === 4 && row.limb === 'RF') row.toe_angle_deg = 60;
      if (horse === 3 && visit === 4 && row.limb === 'RF') row.heel_angle_deg = 57;
    };
    const { raise } = rank(calmHerd(uneven));
    expect(raise.map(({ foot, measure }) => [foot.limb, measure.name])).toEqual([
      ['LF', 'toe_angle_left_minus_right_deg'],
    ]);
    expect(findingWords(raise[0], mm).subject).toBe('horse 3, front pair');
  });

  it('gives each foot one place, its most unusual first, with the rest beside it', () => {
    const both = (row: Record<string, string | number>, horse: number, visit: number): void => {
      row.heel_angle_deg = 48 + ((horse * 5 + visit * 3) % 7) / 5;
      jump(row, horse, visit);
      if (horse === 3 && visit === 4 && row.limb === 'LF') row.heel_angle_deg = 40;
    };
    const { raise } = rank(calmHerd(both));
    expect(raise).toHaveLength(1);
    expect(raise[0].also).toHaveLength(1);
    expect(raise[0].score).toBeGreaterThanOrEqual(raise[0].also[0].score);
  });

  it('plays no part of the farrier', () => {
    const by = (farrier: string) => days.map((date) => ({ horse_id: 'horse 3', date, farrier }));
    const [a, b] = ['M. Alder', 'J. Birch'].map((name) => rank(calmHerd(jump), { visits: by(name) }).raise);
    expect(a).toEqual(b);
  });
});

describe('the words of a finding', () => {
  const horses = [{ horse_id: 'horse 3', birth_year: 2015, build: 'gaited' }];
  const words = findingWords(rank(calmHerd(jump), { horses }).raise[0], mm);

  it('name the foot, say what was found and by how much it changed', () => {
    expect(words.subject).toBe('horse 3, left fore');
    expect(words.sentence).toMatch(
      /^Seen from the front the inside is 9\.0 mm higher than the outside, a change of 8 ± 3 mm from what is usual for this foot\./,
    );
    expect(words.value).toMatch(/^\+9 ± 2 mm$/);
  });

  it('say of a grown horse that crookedness will not be trimmed straight, and not of a young one', () => {
    expect(words.sentence).toMatch(/In a horse of 5 years or more crookedness will not be trimmed straight/);
    const young = [{ horse_id: 'horse 3', birth_year: 2023 }];
    expect(findingWords(rank(calmHerd(jump), { horses: young }).raise[0], mm).sentence).not.toMatch(/trimmed straight/);
  });

  it('say against what: the range with its source, the other foot, its own past, the herd', () => {
    const [range, other, own, all] = words.against;
    expect(range).toMatch(
      /^Range: −5\.0 mm to 5\.0 mm — 4\.0 mm outside the range \(inside high\), but can’t tell from these measurements; 2 readings in all would tell\. Source: M\. Baus/,
    );
    expect(other).toMatch(/^The other foot at the same time: /);
    expect(own).toMatch(/^This foot on 2026-05-11: .* the middle of its 4 earlier measurements: /);
    expect(all).toMatch(/^The herd’s 24 front feet after the farrier’s work: middle .* times the usual spread away\.$/);
  });

  it('follow the units that the reader chose', () => {
    const inches = findingWords(rank(calmHerd(jump)).raise[0], { length: 'in', mass: 'lb' });
    expect(inches.sentence).toMatch(/the inside is 0\.35 in higher/);
  });

  it('say of a gaited horse that it carries longer feet on purpose', () => {
    const long = calmHerd((row, horse, visit) => {
      row.toe_length_mm = 80 + ((horse * 5 + visit * 3) % 7) / 5;
      row.heel_length_mm = 40;
      if (horse === 3 && visit === 4 && row.limb === 'LF') row.toe_length_mm = 100;
    });
    const [finding] = rank(long, { horses }).raise;
    expect(finding.measure.name).toBe('toe_to_heel');
    expect(findingWords(finding, mm).notes).toContain('Gaited builds carry longer feet on purpose.');
  });

  it('mark a foot that was seen poorly', () => {
    const poor = calmHerd((row, horse, visit) => {
      if (horse !== 3 || visit !== 4 || row.limb !== 'LF') return;
      row.medial_wall_mm = 75;
      row.hair_over_hairline = 'yes';
    });
    expect(findingWords(rank(poor).raise[0], mm).notes.join(' ')).toMatch(/poor view or with hair over the hairline/);
  });
});

it('beside each range stands how many feet of the herd lie outside it, by the number and by more than the error', () => {
  const { occasions, ranges } = herd({
    feet: columnsOf(
      calmHerd((row, horse) => {
        if (horse < 6) row.heel_angle_deg = 45;
        if (horse < 3) row.heel_angle_deg = 35;
        if (horse === 11) row.heel_angle_deg = Number.NaN;
      }),
    ),
  });
  const underrun = rangeShares(occasions, ranges).find(({ measure }) => measure.name === 'toe_minus_heel_deg')!;
  expect(underrun).toMatchObject({ of: 44, outside: 24, beyond: 12, missing: 4 });
  expect(underrun.range.publishedOutside).toEqual([{ outside: 28, of: 58, source: 'dau-2015' }]);
});
