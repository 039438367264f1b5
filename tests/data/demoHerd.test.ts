import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inventHerd, toColumns } from '../../data/inventHerd.ts';
import { demoFiles, demoSeed } from '../../data/makeHerd.ts';
import { readTable } from '../../lib/files/readTable.ts';
import { herd, intervalSheet } from '../../lib/hoof/herd.ts';
import { ranking } from '../../lib/hoof/ranking.ts';
import { linearRegression, mean, median } from '../../lib/stats/index.ts';
import { numbers, texts } from '../hoof/feet.ts';

const file = (name: string): string => readFileSync(new URL(`../../data/${name}`, import.meta.url), 'utf8');
const truth = JSON.parse(file('truth.json'));

const read = (['feet', 'horses', 'visits'] as const).map((name) =>
  readTable(file(`${name}.csv`), { file: `${name}.csv` }),
);
const [feet, horses, visits] = read.map(({ columns }) => columns);
const problems = read.flatMap((table) => table.problems);
const demo = herd({ feet, horses, visits }, { problems });

describe('the files of the demo herd', () => {
  it.each(Object.entries(demoFiles()))('%s is what the script makes afresh', (name, text) => {
    expect(file(name)).toBe(text);
  });

  it('say that they are invented', () => {
    expect(truth.invented).toBe(true);
    expect(file('README.md')).toMatch(/Everything here is invented/);
  });

  it('hold the horses, the time and the farriers that they should', () => {
    expect(demo.horses.rows).toBe(24);
    expect(new Set(texts(demo.horses, 'build'))).toEqual(new Set(['pony', 'riding', 'heavy', 'gaited']));
    expect(new Set(texts(demo.visits, 'farrier')).size).toBe(2);
    const days = numbers(demo.visits, 'date');
    expect(Math.max(...days) - Math.min(...days)).toBeGreaterThan(365);
    const gaps = numbers(demo.intervals, 'days');
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(28);
    expect(Math.max(...gaps)).toBeLessThanOrEqual(70);
    expect(new Set(numbers(demo.feet, 'shod'))).toEqual(new Set([0, 1]));
    expect(new Set(texts(demo.intervals, 'compared'))).toEqual(
      new Set(['after to before', 'before to before', 'after to after', 'between to between', '']),
    );
  });

  it('have the spoilt cells that the truth names: unreadable ones are problems, readable ones are read', () => {
    const unreadable = truth.mishaps.filter(({ what }: { what: string }) => !/readable|nobody/.test(what));
    expect(demo.problems.map(({ file, row, column, value }) => ({ file, row, column, value }))).toEqual(
      unreadable.map(({ row, column, cell }: { row: number; column: string; cell: string }) => ({
        file: 'feet.csv',
        row,
        column,
        value: cell,
      })),
    );
    const angle = truth.mishaps.find(({ cell }: { cell: string }) => cell.endsWith('°'));
    expect(numbers(demo.feet, angle.column)[angle.row - 2]).toBe(angle.meant);
    const cm = truth.mishaps.find(({ cell }: { cell: string }) => cell.endsWith(' cm'));
    expect(numbers(demo.feet, cm.column)[cm.row - 2]).toBeCloseTo(Number.parseFloat(cm.cell) * 10, 9);
  });
});

describe('the analysis finds what was put in', () => {
  it('the faults that changed lead the list of what is worth raising', () => {
    const { raise, onPurpose } = ranking(demo.occasions, demo.ranges);
    const changed = truth.faults.filter((fault: { changed: boolean }) => fault.changed);
    const ranked = changed.filter((fault: { therapeutic?: boolean }) => !fault.therapeutic);
    const named = raise.map(({ foot, measure }) => `${foot.horse} ${foot.limb} ${measure.name}`);
    expect(named.slice(0, ranked.length).sort()).toEqual(
      ranked
        .map(
          (fault: { horse_id: string; limb: string; column: string }) =>
            `${fault.horse_id} ${fault.limb} ${fault.column}`,
        )
        .sort(),
    );
    expect(raise.length).toBeLessThanOrEqual(8);
    expect(onPurpose.map(({ foot }) => `${foot.horse} ${foot.limb}`)).toContain('Pike LF');
  });

  it('the faults that were always there are not in it', () => {
    const { raise } = ranking(demo.occasions, demo.ranges);
    const steady = truth.faults.filter((fault: { changed: boolean }) => !fault.changed);
    const named = raise.map(({ foot }) => `${foot.horse} ${foot.limb}`);
    for (const { horse_id, limb } of steady) expect(named).not.toContain(`${horse_id} ${limb}`);
  });

  it('the error of one reading, from the repeats', () => {
    const errorOf = (name: string): number => demo.errors.find((error) => error.name === name)!.value;
    // The second observer reads a little higher, which is part of the error.
    const angle = Math.hypot(truth.effects.reading.angle, truth.effects.observerToeAngle / Math.SQRT2);
    expect(errorOf('toe_angle_deg') / angle).toBeCloseTo(1, 0.8);
    expect(errorOf('medial_wall_mm') / truth.effects.reading.length).toBeCloseTo(1, 0.8);
    for (const { from } of demo.errors.filter(({ degrees }) => degrees >= 10)) expect(from).toBe('repeats');
  });

  it('each horse’s growth', () => {
    const names = texts(demo.intervals, 'horse_id');
    const growth = numbers(demo.intervals, 'toe_growth_mm_per_day');
    for (const { horse_id, growthPerMonth } of truth.horses) {
      const own = growth.filter((value, row) => names[row] === horse_id && !Number.isNaN(value));
      if (own.length < 8) continue;
      expect(Math.abs(median(own) * 30 - growthPerMonth)).toBeLessThan(1);
    }
  });

  it('the shod foot’s drift', () => {
    const drift = numbers(demo.intervals, 'toe_angle_drift_deg_per_week');
    const shod = numbers(demo.intervals, 'shod');
    const compared = texts(demo.intervals, 'compared');
    const of = (state: number): number =>
      median(drift.filter((_, row) => shod[row] === state && compared[row] === 'after to before'));
    expect(Math.abs(of(1) - truth.effects.toeAnglePerWeek.shod)).toBeLessThan(0.06);
    expect(Math.abs(of(0) - truth.effects.toeAnglePerWeek.bare)).toBeLessThan(0.06);
  });
});

describe('the question of the interval', () => {
  /** The slope of a front foot's change of level on weeks, within horses and over all of them. */
  function slopes(seed: number): { within: number; pooled: number } {
    const { feet, horses, visits, truth } = inventHerd(seed);
    const intervals = intervalSheet(
      herd({ feet: toColumns(feet), horses: toColumns(horses), visits: toColumns(visits) }),
      ['wall_level_mm'],
    );
    const [names, limbs, compared] = ['horse_id', 'limb', 'compared'].map((name) => texts(intervals, name));
    const changes = numbers(intervals, 'wall_level_change_mm');
    const sick = truth.faults.find(({ column }) => column === 'wall_level_mm')!.horse_id;
    const rows = names.flatMap((name, row) =>
      name !== sick && limbs[row].endsWith('F') && compared[row] === 'after to before' && !Number.isNaN(changes[row])
        ? [row]
        : [],
    );
    const horse = rows.map((row) => names[row]);
    const weeks = rows.map((row) => numbers(intervals, 'days')[row] / 7);
    const change = rows.map((row) => changes[row]);
    const centred = (values: readonly number[]): number[] =>
      values.map((value, i) => value - mean(values.filter((_, k) => horse[k] === horse[i])));
    const slope = (x: number[], y: number[]): number => linearRegression(x, y).coefficients[1].estimate;
    return { within: slope(centred(weeks), centred(change)), pooled: slope(weeks, change) };
  }
  const found = Array.from({ length: 8 }, (_, seed) => slopes(seed + 1));

  it('has the true answer within horses, herd after herd', () => {
    expect(Math.abs(mean(found.map(({ within }) => within)) - 0.4)).toBeLessThan(0.06);
  });

  it('has a much smaller one where horses are thrown together, as the trap was set', () => {
    expect(mean(found.map(({ pooled }) => pooled))).toBeLessThan(0.25);
  });
});

it('the seed of the demo is the one in the truth', () => {
  expect(truth.seed).toBe(demoSeed);
});
