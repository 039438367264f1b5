import { effects } from '../../data/effects.ts';
import { inventHerd, toColumns } from '../../data/inventHerd.ts';
import { herd } from '../../lib/hoof/herd.ts';
import { type IntervalData, type IntervalQuestion, intervalData } from '../../lib/hoof/intervalData.ts';
import { intervalEffect } from '../../lib/hoof/intervalModel.ts';

/** An effect of a week within a horse that is known of every invented herd. */
export interface KnownEffect {
  readonly name: string;
  readonly question: IntervalQuestion;
  readonly shod?: 'shod' | 'bare';
  /** Whether horses differ in it, so that each gets a slope of its own. */
  readonly ownSlopes?: boolean;
  /** In the outcome's unit a week. */
  readonly truth: number;
}

const [slow, fast] = effects.growthPerMonth;

export const knownEffects: readonly KnownEffect[] = [
  {
    name: 'level from the front, front feet',
    question: { outcome: 'wall_level_mm', limbs: ['LF', 'RF'] },
    truth: effects.wallLevelPerWeek.front,
  },
  {
    name: 'level from the front, hind feet',
    question: { outcome: 'wall_level_mm', limbs: ['LH', 'RH'] },
    truth: effects.wallLevelPerWeek.hind,
  },
  { name: 'level from behind', question: { outcome: 'heel_level_mm' }, truth: effects.heelLevelPerWeek },
  {
    name: 'toe angle, shod',
    question: { outcome: 'toe_angle_deg' },
    shod: 'shod',
    truth: effects.toeAnglePerWeek.shod,
  },
  {
    name: 'toe angle, bare',
    question: { outcome: 'toe_angle_deg' },
    shod: 'bare',
    truth: effects.toeAnglePerWeek.bare,
  },
  {
    name: 'toe angle less heel angle',
    question: { outcome: 'toe_minus_heel_deg' },
    truth: effects.toeMinusHeelPerWeek,
  },
  {
    name: 'toe length, horses with slopes of their own',
    question: { outcome: 'toe_length_mm' },
    ownSlopes: true,
    truth: (((slow + fast) / 2) * 7) / 30,
  },
];

export interface Covered {
  readonly effect: string;
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
  readonly truth: number;
}

/** What the model says of each known effect in the herd of a seed. */
export function coveredIn(seed: number): Covered[] {
  const { feet, horses, visits } = inventHerd(seed);
  const yard = herd({ feet: toColumns(feet), horses: toColumns(horses), visits: toColumns(visits) });
  return knownEffects.map(({ name, question, shod, ownSlopes, truth }) => {
    const all = intervalData(yard, question);
    const effect = intervalEffect(shod === undefined ? all : where(all, (row) => all.shod[row] === shod), {
      ownSlopes,
    });
    if (!('estimate' in effect)) throw new Error(`Seed ${seed}, ${name}: ${effect.reason}`);
    const { estimate, lower, upper } = effect;
    return { effect: name, estimate, lower, upper, truth };
  });
}

/** Some of the rows. */
function where(data: IntervalData, wanted: (row: number) => boolean): IntervalData {
  const some = <Values extends Float64Array | readonly string[]>(values: Values): Values =>
    values.filter((_: unknown, row: number) => wanted(row)) as Values;
  return {
    ...data,
    horse: some(data.horse),
    limb: some(data.limb),
    start: some(data.start),
    end: some(data.end),
    change: some(data.change),
    changeError: some(data.changeError),
    atStart: some(data.atStart),
    shod: some(data.shod),
    farrier: some(data.farrier),
    season: some(data.season),
  };
}

export interface Share {
  readonly effect: string;
  readonly covered: number;
  readonly herds: number;
  /** The mean of the estimates less the truth, and how that would scatter by chance. */
  readonly bias: number;
  readonly biasError: number;
}

/** How often the intervals held the truth, effect by effect. */
export function shares(results: readonly Covered[]): Share[] {
  return knownEffects.map(({ name }) => {
    const own = results.filter(({ effect }) => effect === name);
    const errors = own.map(({ estimate, truth }) => estimate - truth);
    const bias = errors.reduce((sum, error) => sum + error, 0) / own.length;
    const spread = Math.sqrt(errors.reduce((sum, error) => sum + (error - bias) ** 2, 0) / (own.length - 1));
    return {
      effect: name,
      covered: own.filter(({ lower, upper, truth }) => lower <= truth && truth <= upper).length,
      herds: own.length,
      bias,
      biasError: spread / Math.sqrt(own.length),
    };
  });
}
