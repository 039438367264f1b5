import { isLimb, type Limb, limbs } from '../hoof/limbs.ts';
import { TextColumn } from '../sheet/column.ts';
import type { Readable } from './footShape.ts';

/** One foot's mean over the rows that were asked for. */
export interface FootMean {
  readonly horse: string;
  readonly limb: Limb;
  /** In the column's unit. */
  readonly value: number;
  /** One standard error of the mean from the errors of the readings; `NaN` where one of them is unknown. */
  readonly error: number;
  readonly readings: number;
}

/**
 * The mean of a column for each foot of each horse.
 * @param feet  with `horse_id` and `limb`
 * @param rows  which rows count; all where left out
 * @returns the feet in order of horse and limb; `missing` counts those of whom every row lacks the value
 */
export function footMeans(
  feet: Readable,
  column: string,
  rows?: Iterable<number>,
): { means: FootMean[]; missing: number } {
  const horse = textOf(feet, 'horse_id');
  const limb = textOf(feet, 'limb');
  const { values, error } = numbersOf(feet, column);
  const size = horse.levels.length * limbs.length;
  const [sums, squares, counts, seen] = Array.from({ length: 4 }, () => new Float64Array(size));
  for (const row of rows ?? Array(feet.rows).keys()) {
    const code = limb.at(row);
    if (horse.codes[row] < 0 || !isLimb(code)) continue;
    const foot = horse.codes[row] * limbs.length + limbs.indexOf(code);
    seen[foot]++;
    if (Number.isNaN(values[row])) continue;
    sums[foot] += values[row];
    squares[foot] += (error?.[row] ?? Number.NaN) ** 2;
    counts[foot]++;
  }
  const means: FootMean[] = [];
  let missing = 0;
  for (let foot = 0; foot < size; foot++) {
    if (counts[foot] === 0) missing += seen[foot] > 0 ? 1 : 0;
    else
      means.push({
        horse: horse.levels[Math.floor(foot / limbs.length)],
        limb: limbs[foot % limbs.length],
        value: sums[foot] / counts[foot],
        error: Math.sqrt(squares[foot]) / counts[foot],
        readings: counts[foot],
      });
  }
  return { means, missing };
}

/** A text column of a table; a `TypeError` where it holds numbers. */
export function textOf(table: Readable, name: string): TextColumn {
  const column = table.column(name);
  if (column instanceof TextColumn) return column;
  throw new TypeError(`The column ${name} holds numbers where words are needed`);
}

/** A column of numbers; a `TypeError` where it holds words. */
export function numbersOf(table: Readable, name: string): { unit: string; values: Float64Array; error?: Float64Array } {
  const column = table.column(name);
  if (column instanceof TextColumn) throw new TypeError(`The column ${name} holds words where numbers are needed`);
  return column;
}
