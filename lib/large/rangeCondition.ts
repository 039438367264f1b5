import { endOf, limbs } from '../hoof/limbs.ts';
import type { Range } from '../hoof/measure.ts';
import { text } from './engine.ts';

/**
 * Whether a range holds for a row, as `rangeFor` says it: a condition on what isn't known doesn't hold.
 * @param has  whether the table has a column
 * @returns SQL that is true or false, never missing
 */
export function rangeCondition({ when }: Range, has: (name: string) => boolean): string {
  const { end, build, exceptBuild, shod, weightKg } = when ?? {};
  const words = (values: readonly string[]) => values.map(text).join(', ');
  const known = (column: string, condition: string) => (has(column) ? condition : 'FALSE');
  const parts = [
    ...(end === undefined ? [] : [`limb IN (${words(limbs.filter((limb) => endOf(limb) === end))})`]),
    ...(build === undefined ? [] : [known('build', `build IN (${words(build)})`)]),
    ...(exceptBuild === undefined || !has('build') ? [] : [`COALESCE(build NOT IN (${words(exceptBuild)}), TRUE)`]),
    ...(shod === undefined ? [] : [known('shod', `shod = ${shod}`)]),
    ...(weightKg === undefined ? [] : [known('body_weight_kg', `body_weight_kg BETWEEN ${weightKg.join(' AND ')}`)]),
  ];
  return parts.length === 0 ? 'TRUE' : `COALESCE(${parts.join(' AND ')}, FALSE)`;
}
