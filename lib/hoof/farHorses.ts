import type { TextColumn } from '../sheet/column.ts';
import { median } from '../stats/index.ts';
import { farFromOthers } from './farFromOthers.ts';

/** A horse whose value is far from those of the others. */
export interface FarHorse {
  readonly horse: string;
  /** Its median, where it was measured several times. */
  readonly value: number;
  /** The median of all horses. */
  readonly middle: number;
}

/**
 * The horses whose values of a column are far from those of the others, the farthest first.
 * @param horse  whose each row is
 * @param values  of a row each, `NaN` for missing
 */
export function farHorses({ codes, levels }: TextColumn, values: Float64Array): FarHorse[] {
  const own = levels.map((): number[] => []);
  codes.forEach((code, row) => {
    if (code >= 0) own[code].push(values[row]);
  });
  const medians = Float64Array.from(own, (all) => median(all));
  const middle = median(medians);
  return farFromOthers(medians).map((code) => ({ horse: levels[code], value: medians[code], middle }));
}
