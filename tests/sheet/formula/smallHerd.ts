import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { ColumnInput } from '../../../lib/sheet/column.ts';
import type { Relation } from '../../../lib/sheet/relation.ts';

export const relations: readonly Relation[] = [
  {
    name: 'opposite',
    words: 'the other side’s',
    match: ['horse_id', 'date'],
    optional: ['moment'],
    swap: { limb: { LF: 'RF', RF: 'LF', LH: 'RH', RH: 'LH' } },
  },
  { name: 'previous', words: 'the last visit’s', match: ['horse_id', 'limb'], optional: ['moment'], before: 'date' },
];

/** Numbers that are the same for the same seed: `uniform` from 0 to 1, `normal` with mean 0 and standard deviation 1. */
export function randomNumbers(seed: number): { uniform: () => number; normal: () => number } {
  const generator = xoroshiro128plus(seed);
  const uniform = () => uniformFloat64(generator);
  return {
    uniform,
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
  };
}

/**
 * An invented herd in random order: toe and heel angles (deg), length and width (mm) with errors, a weight without.
 * @param gaps the share of values that are missing
 */
export function smallHerd({ seed = 1, horses = 3, visits = 2, gaps = 0 } = {}): Record<string, ColumnInput> {
  const { uniform, normal } = randomNumbers(seed);
  const rows: { horse: string; limb: string; date: number; moment: string }[] = [];
  for (let horse = 0; horse < horses; horse++)
    for (let visit = 0; visit < visits; visit++)
      for (const limb of ['LF', 'RF', 'LH', 'RH'])
        for (const moment of visit === 0 ? ['after'] : ['before', 'after'])
          rows.push({ horse: `h${horse}`, limb, date: 20_000 + 40 * visit + horse, moment });
  for (let i = rows.length - 1; i > 0; i--) {
    const j = Math.floor(uniform() * (i + 1));
    [rows[i], rows[j]] = [rows[j], rows[i]];
  }
  const numbers = (middle: number, spread: number) =>
    Float64Array.from(rows, () => (uniform() < gaps ? Number.NaN : middle + spread * normal()));
  const errors = (size: number) => Float64Array.from(rows, () => size * (0.5 + uniform()));
  return {
    horse_id: { values: rows.map(({ horse }) => horse) },
    limb: { values: rows.map(({ limb }) => limb) },
    date: { kind: 'date', unit: 'd', values: Float64Array.from(rows, ({ date }) => date) },
    moment: { values: rows.map(({ moment }) => moment) },
    toe: { unit: 'deg', values: numbers(50, 4), error: errors(0.8) },
    heel: { unit: 'deg', values: numbers(45, 5), error: errors(1) },
    length: { unit: 'mm', values: numbers(85, 6), error: errors(1.5) },
    width: { unit: 'mm', values: numbers(120, 8), error: errors(2) },
    shod: { kind: 'boolean', unit: '1', values: Float64Array.from(rows, () => (uniform() < 0.5 ? 1 : 0)) },
    weight: { unit: 'kg', values: numbers(500, 40) },
  };
}
