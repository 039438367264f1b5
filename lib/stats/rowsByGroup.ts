import type { Numbers } from './numbers.ts';

/**
 * The rows of each group, in the order in which the groups first appear.
 * @param groups which group a row belongs to, any numbers, none missing
 * @example rowsByGroup([7, 3, 7]) // [[0, 2], [1]]
 */
export function rowsByGroup(groups: Numbers): Int32Array[] {
  const rowsOf = new Map<number, number[]>();
  for (let row = 0; row < groups.length; row++) {
    const rows = rowsOf.get(groups[row]);
    if (rows) rows.push(row);
    else rowsOf.set(groups[row], [row]);
  }
  return Array.from(rowsOf.values(), (rows) => Int32Array.from(rows));
}
