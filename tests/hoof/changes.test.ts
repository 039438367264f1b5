import { describe, expect, it } from 'vitest';
import { changesSince } from '../../lib/hoof/changes.ts';
import { herd } from '../../lib/hoof/herd.ts';
import { isoFromDays } from '../../lib/sheet/days.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';
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
  const { changed, compared, withoutError, once } = changesSince(occasions, 'Fern');
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
    expect([compared, withoutError]).toEqual([4, 0]);
    expect(once).toBe(1);
  });

  it('puts the surest change first', () => {
    const sureness = changed.map(({ change, error }) => Math.abs(change) / error);
    expect(sureness).toEqual([...sureness].sort((a, b) => b - a));
    expect(changed.length).toBeGreaterThan(1);
    const rows = [visit('2026-01-05', 'before', 50), visit('2026-02-16', 'before', 59)];
    const right = [visit('2026-01-05', 'before', 50, 'RF'), visit('2026-02-16', 'before', 80, 'RF')];
    const both = changesSince(herd({ feet: feet([...rows, ...right]) }).occasions, 'Fern').changed;
    expect(both.map(({ foot }) => foot.limb)).toEqual(['RF', 'RF', 'LF', 'LF']);
  });

  it('looks back to the last time before, and not to the first', () => {
    const levels = [50, 61, 80, 54];
    const dates = ['2026-01-05', '2026-03-02', '2026-03-30', '2026-02-16'];
    const { occasions } = herd({ feet: feet(dates.map((date, i) => visit(date, 'before', levels[i]))) });
    const [{ before, now, change, since }] = changesSince(occasions, 'Fern').changed;
    expect([before, now, change, isoFromDays(since)]).toEqual([11, 30, 19, '2026-03-02']);
  });

  it('lists what a pair of feet shares once, with the left foot', () => {
    const days = ['2026-01-05', '2026-02-16'];
    const toes = { LF: [50, 50], RF: [50, 40] } as const;
    const rows = days.flatMap((date, i) =>
      (['LF', 'RF'] as const).flatMap((limb) =>
        [1, 2].map((repeat) => ({
          ...{ horse_id: 'Fern', date, limb, moment: 'before', repeat },
          toe_angle_deg: toes[limb][i] + repeat / 10,
        })),
      ),
    );
    const { changed, compared } = changesSince(herd({ feet: columnsOf(rows) }).occasions, 'Fern');
    const shared = changed.filter(({ measure }) => measure.view === 'pair');
    expect(shared.map(({ foot, measure, change }) => [foot.limb, measure.name, Math.round(change)])).toEqual([
      ['LF', 'toe_angle_left_minus_right_deg', 10],
    ]);
    expect(compared).toBe(1);
  });

  it('compares what has no known error, counts it and says nothing of it', () => {
    const unknown = plainTable({
      horse_id: { values: ['Fern', 'Fern'] },
      date: { kind: 'date', values: Float64Array.of(20_000, 20_042) },
      limb: { values: ['LF', 'LF'] },
      moment: { values: ['before', 'before'] },
      wall_level_mm: { unit: 'mm', values: Float64Array.of(0, 30) },
    });
    expect(changesSince(unknown, 'Fern')).toEqual({ changed: [], compared: 1, withoutError: 1, once: 0 });
  });

  it('has nothing to say of a horse that was never measured', () => {
    expect(changesSince(occasions, 'Nobody')).toEqual({ changed: [], compared: 0, withoutError: 0, once: 0 });
  });
});
