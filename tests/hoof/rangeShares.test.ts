import { expect, it } from 'vitest';
import type { Range } from '../../lib/hoof/measure.ts';
import { rangeShares } from '../../lib/hoof/rangeShares.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';

const from = { source: 'my vet', firmness: 'published' } as const;
const [fronts, hinds]: Range[] = [
  { atMost: 5, ...from, when: { end: 'front' } },
  { atMost: 3, ...from, when: { end: 'hind' } },
];
const ranges = new Map<string, Range[]>([
  ['wall_level_mm', [fronts, hinds]],
  ['body_weight_kg', [{ atMost: 1, ...from }]],
  ['frog_ratio', [{ atLeast: 0.67, ...from }]],
]);

/** Feet by limb and value; each of a horse of its own. */
const occasions = (feet: readonly (readonly [limb: string, value: number])[], error?: number) =>
  plainTable({
    horse_id: { values: feet.map((_, i) => `horse ${i}`) },
    limb: { values: feet.map(([limb]) => limb) },
    moment: { values: feet.map(() => 'after') },
    date: { kind: 'date', values: Float64Array.from(feet, () => 9) },
    body_weight_kg: { unit: 'kg', values: Float64Array.from(feet, () => 500) },
    wall_level_mm: {
      unit: 'mm',
      values: Float64Array.from(feet, ([, value]) => value),
      ...(error !== undefined && { error: Float64Array.from(feet, () => error) }),
    },
  });
const feet = [
  ['LF', 4],
  ['RF', 6],
  ['LF', 9],
  ['LF', Number.NaN],
  ['LH', 4],
  ['RH', 2],
] as const;

it('counts feet outside each range of their own, by the number and by more than the error', () => {
  const shares = rangeShares(occasions(feet, 1), ranges);
  expect(shares.map(({ measure, ...share }) => [measure.name, share])).toEqual([
    ['wall_level_mm', { range: fronts, of: 3, outside: 2, beyond: 1, missing: 1 }],
    ['wall_level_mm', { range: hinds, of: 2, outside: 1, beyond: 0, missing: 0 }],
  ]);
});

it('counts none as beyond where the error is unknown', () => {
  expect(rangeShares(occasions(feet), ranges).map(({ outside, beyond }) => [outside, beyond])).toEqual([
    [2, 0],
    [1, 0],
  ]);
});

it('has no shares of a measure without ranges, of horses, or of what the table lacks', () => {
  expect(rangeShares(occasions(feet), new Map())).toEqual([]);
});
