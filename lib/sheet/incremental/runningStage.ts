import type { Column } from '../column.ts';
import type { GroupsStage } from './groupsStage.ts';
import { OrderedGroups } from './orderedGroups.ts';
import { RunningSums } from './runningSums.ts';
import { type Changes, type ColumnStage, type Delta, numberBefore, numbersOf, Stage } from './stage.ts';

/** Something about each group's values that follows single changes. Its own rows are the groups. */
abstract class RunningStage extends Stage {
  constructor(
    readonly source: ColumnStage,
    readonly groups: GroupsStage,
  ) {
    super([source, groups]);
  }

  refresh(): Changes {
    const { changes } = this.source;
    if (this.fresh || changes === 'all' || this.groups.changes !== 'none') {
      this.start();
      return 'all';
    }
    if (changes === 'none') return 'none';
    this.follow(changes, this.source.column);
    const { codes } = this.groups.groups;
    const touched = new Set<number>();
    for (let i = 0; i < changes.rows.length; i++) touched.add(codes[changes.rows[i]]);
    return { rows: [...touched], before: [] };
  }

  protected abstract start(): void;
  protected abstract follow(delta: Delta, column: Column): void;
}

/** Counts and sums of each group's values, or of their squares. */
export class SumsStage extends RunningStage {
  #sums: RunningSums | undefined;

  constructor(
    source: ColumnStage,
    groups: GroupsStage,
    readonly power: 1 | 2,
  ) {
    super(source, groups);
  }

  get sums(): RunningSums {
    return this.#sums!;
  }

  protected start(): void {
    this.#sums = new RunningSums(numbersOf(this.source.column), this.groups.groups, this.power);
  }

  protected follow({ rows, before }: Delta, column: Column): void {
    const values = numbersAt(column);
    const { codes } = this.groups.groups;
    const afresh = new Set<number>();
    for (let i = 0; i < rows.length; i++) {
      const group = codes[rows[i]];
      if (this.sums.replace(group, numberBefore(column, before[i]), values(rows[i]))) afresh.add(group);
    }
    if (afresh.size === 0) return;
    const all = numbersOf(column);
    for (const group of afresh) this.sums.restart(group, this.groups.members(group), all);
  }
}

/** Each group's values in order; put in order when first asked for. */
export class OrderStage extends RunningStage {
  #ordered: OrderedGroups | undefined;

  get ordered(): OrderedGroups {
    this.#ordered ??= new OrderedGroups(numbersOf(this.source.column), this.groups.groups);
    return this.#ordered;
  }

  protected start(): void {
    this.#ordered = undefined;
  }

  protected follow({ rows, before }: Delta, column: Column): void {
    if (this.#ordered === undefined) return;
    const values = numbersAt(column);
    const { codes } = this.groups.groups;
    for (let i = 0; i < rows.length; i++)
      this.#ordered.replace(codes[rows[i]], numberBefore(column, before[i]), values(rows[i]));
  }
}

function numbersAt(column: Column): (row: number) => number {
  if (column.kind !== 'text') return (row) => column.values[row];
  return (row) => (column.codes[row] < 0 ? Number.NaN : column.codes[row]);
}
