import type { Limb } from './limbs.ts';
import { endOf } from './limbs.ts';
import type { Range } from './measure.ts';
import { measures } from './measures/index.ts';

/** The ranges that count, by the name of the measure they are for. */
export type Ranges = ReadonlyMap<string, readonly Range[]>;

/** What decides which range holds for a foot; what is not known is left out. */
export interface Foot {
  readonly limb?: Limb;
  readonly build?: string;
  readonly shod?: boolean;
  readonly weightKg?: number;
}

/** The ranges that ship with the measures. */
export const builtInRanges: Ranges = new Map(
  measures.filter(({ ranges }) => ranges.length > 0).map(({ name, ranges }) => [name, ranges]),
);

/**
 * The range that holds for a foot.
 * @param ranges  those of one measure
 * @returns the first whose conditions all hold; a condition on something that isn't known of this foot doesn't hold,
 *   but an exception for some builds stands only where the build is known; `undefined` where none holds
 * @example rangeFor([{ atMost: 5, when: { end: 'hind' }, ... }], { limb: 'LF' }) // undefined
 */
export function rangeFor(ranges: readonly Range[], foot: Foot): Range | undefined {
  return ranges.find(({ when }) => {
    if (when === undefined) return true;
    const { end, build, exceptBuild, shod, weightKg } = when;
    if (end !== undefined && (foot.limb === undefined || endOf(foot.limb) !== end)) return false;
    if (build !== undefined && !build.includes(foot.build ?? '')) return false;
    if (exceptBuild?.includes(foot.build ?? '')) return false;
    if (shod !== undefined && foot.shod !== shod) return false;
    const weight = foot.weightKg ?? Number.NaN;
    return weightKg === undefined || (weight >= weightKg[0] && weight <= weightKg[1]);
  });
}

/**
 * How far a value lies outside a range.
 * @param value  in the measure's unit
 * @returns below zero under `atLeast`, above zero over `atMost`, 0 inside, `NaN` for a missing value. Where the limits
 *   themselves lie outside, a value on the limit returns the smallest number away from zero on that side.
 * @example beyond({ atMost: 5, ... }, 7) // 2
 */
export function beyond(range: Range, value: number): number {
  if (Number.isNaN(value)) return value;
  const { atLeast = -Infinity, atMost = Infinity, limitsOutside = false } = range;
  if (value < atLeast) return value - atLeast;
  if (value > atMost) return value - atMost;
  if (limitsOutside && value === atLeast) return -Number.MIN_VALUE;
  if (limitsOutside && value === atMost) return Number.MIN_VALUE;
  return 0;
}
