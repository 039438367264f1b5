import { groupRows } from '../groups.ts';
import type { Groups } from '../table.ts';
import { type Changes, type ColumnStage, Stage } from './stage.ts';

/** The groups of rows that are equal in some key columns; a key that changes groups all rows anew. */
export class GroupsStage extends Stage {
  groups: Groups = { codes: new Int32Array(0), count: 0 };
  #members: { starts: Int32Array; rows: Int32Array } | undefined;

  constructor(
    readonly keys: readonly ColumnStage[],
    readonly rows: number,
  ) {
    super(keys);
  }

  refresh(): Changes {
    this.groups = groupRows(
      this.keys.map(({ column }) => column),
      this.rows,
    );
    this.#members = undefined;
    return 'all';
  }

  /** The rows of one group, in order. */
  members(group: number): Int32Array {
    this.#members ??= listed(this.groups.codes, this.groups.count);
    const { starts, rows } = this.#members;
    return rows.subarray(starts[group], starts[group + 1]);
  }
}

/** For each code from 0 the rows that have it; a negative code has none. */
export function listed(codes: Int32Array, count: number): { starts: Int32Array; rows: Int32Array } {
  const starts = new Int32Array(count + 1);
  for (let row = 0; row < codes.length; row++) if (codes[row] >= 0) starts[codes[row] + 1]++;
  for (let code = 0; code < count; code++) starts[code + 1] += starts[code];
  const rows = new Int32Array(starts[count]);
  const next = starts.slice();
  for (let row = 0; row < codes.length; row++) if (codes[row] >= 0) rows[next[codes[row]]++] = row;
  return { starts, rows };
}
