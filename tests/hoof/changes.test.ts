import { describe, expect, it } from 'vitest';
import { changesSince } from '../../lib/hoof/changes.ts';
import { herd } from '../../lib/hoof/herd.ts';
import { columnsOf } from './feet.ts';

/** Two readings a foot and day that differ by `apart`, so that the error of measuring is known from them. */
function feet(
  rows: readonly { horse: string; date: string; limb: string; moment: string; medial: number; apart?: number }[],
) {
  return columnsOf(
    rows.flatMap(({ horse, date, limb, moment, medial, apart = 1 }) =>
      [-0.5, 0.5].map((side, i) => ({
        ...{ horse_id: horse, date, limb, moment, repeat: i + 1 },
        ...{ medial_wall_mm: medial + side * apart, lateral_wall_mm: 50 },
      })),
    ),
  );
}

const visit = (date: string, moment: string, medial: number, limb = 'LF', horse = 'Fern') => ({
  ...{ horse, date, limb, moment, medial },
});

const { occasions } = herd({
  feet: feet([
    visit('2026-01-05', 'before', 50),
    visit('2026-01-05', 'after', 70),
    visit('2026-02-16', 'before', 59),
    visit('2026-01-05', 'before', 50, 'RF'),
    visit('2026-02-16', 'before', 50.5, 'RF'),
    visit('2026-02-16', 'before', 52, 'LH'),
    visit('2026-01-05', 'before', 50, 'LF', 'Moss'),
    visit('2026-02-16', 'before', 80, 'LF', 'Moss'),
  ]),
});

describe('changesSince', () => {
  const { changed, compared, once } = changesSince(occasions, 'Fern');
  const level = changed.filter(({ measure }) => measure.name === 'wall_level_mm');

  it('compares like moments: before the work with before the work, whatever was measured after it', () => {
    expect(level.map(({ foot, before, now, change }) => [foot.limb, before, now, change])).toEqual([['LF', 0, 9, 9]]);
    expect(level[0].foot.moment).toBe('before');
  });

  it('leaves out what changed by no more than 1.96 standard errors', () => {
    expect(changed.every(({ change, error }) => Math.abs(change) > 1.96 * error)).toBe(true);
    expect(changed.some(({ foot }) => foot.limb === 'RF')).toBe(false);
  });

  it('counts what it compared, and feet that were measured only once', () => {
    // Two feet have an earlier time: level from the front in mm and in percent of each.
    expect(compared).toBe(4);
    expect(once).toBe(1);
  });

  it('puts the surest change first', () => {
    const sureness = changed.map(({ change, error }) => Math.abs(change) / error);
    expect(sureness).toEqual([...sureness].sort((a, b) => b - a));
    expect(changed.length).toBeGreaterThan(1);
  });

  it('has nothing to say of a horse that was never measured', () => {
    expect(changesSince(occasions, 'Nobody')).toEqual({ changed: [], compared: 0, withoutError: 0, once: 0 });
  });
});
