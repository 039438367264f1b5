import type { NumberColumn } from '../column.ts';
import type { Summary } from '../formula/summaries.ts';
import { Grouped } from '../grouped.ts';
import type { GroupsStage } from './groupsStage.ts';
import { OrderStage, SumsStage } from './runningStage.ts';
import { RunningSums } from './runningSums.ts';
import { type Changes, ColumnStage, DeltaBuilder, numbersOf, type Stage } from './stage.ts';

/** How to read one group's summary off what is kept running about its values. */
interface Reading {
  readonly from: readonly Stage[];
  readonly read: (group: number) => number;
  /** All groups at once, where that is quicker than one by one. */
  readonly readAll?: () => Float64Array;
}

/** Makes a stage once, however often it is asked for. */
export type Share = <S extends Stage>(key: string, make: () => S) => S;

/**
 * A summary of a column for each row's group, or of the whole table where there are no keys.
 * A summary without a reading here is worked out afresh when its column changes.
 */
export class SummaryStage extends ColumnStage {
  #values: Float64Array = new Float64Array(0);
  #groupValues: Float64Array = new Float64Array(0);

  constructor(
    readonly source: ColumnStage,
    readonly groups: GroupsStage,
    readonly reading: Reading,
  ) {
    super([source, groups, ...reading.from]);
  }

  /** One value a row; of the whole table use `whole`. */
  get column(): NumberColumn {
    return { kind: 'number', unit: '1', values: this.#values };
  }

  /** The one value of a summary without keys. */
  get whole(): number {
    return this.#groupValues[0] ?? Number.NaN;
  }

  get isWhole(): boolean {
    return this.groups.keys.length === 0;
  }

  refresh(): Changes {
    const { from } = this.reading;
    const all = this.fresh || this.groups.changes !== 'none' || from.length === 0;
    if (all || from.some(({ changes }) => changes === 'all')) return this.#readAll();
    const touched = new Set<number>();
    for (const { changes } of from)
      if (changes !== 'none' && changes !== 'all')
        for (let i = 0; i < changes.rows.length; i++) touched.add(changes.rows[i]);
    return this.#readGroups(touched);
  }

  #readAll(): Changes {
    const { groups } = this.groups;
    const { read, readAll } = this.reading;
    this.#groupValues = readAll ? readAll() : Float64Array.from({ length: groups.count }, (_, group) => read(group));
    if (!this.isWhole) {
      const values = new Float64Array(groups.codes.length);
      for (let row = 0; row < values.length; row++) values[row] = this.#groupValues[groups.codes[row]];
      this.#values = values;
    }
    return 'all';
  }

  #readGroups(touched: Iterable<number>): Changes {
    const delta = new DeltaBuilder();
    let many = false;
    for (const group of touched) {
      const before = this.#groupValues[group];
      const after = this.reading.read(group);
      if (Object.is(before, after)) continue;
      this.#groupValues[group] = after;
      if (this.isWhole) return 'all';
      const members = this.groups.members(group);
      many ||= members.length > this.#values.length / 16;
      for (const row of members) {
        this.#values[row] = after;
        if (!many) delta.add(row, before);
      }
    }
    return many ? 'all' : delta.changes;
  }
}

/** The reading of a summary over a column by groups; `p` is the share below, of quantiles. */
export function readingOf(row: Summary, source: ColumnStage, groups: GroupsStage, p: number, share: Share): Reading {
  const at = `${source.id} by ${groups.id}`;
  const sumsOf = (power: 1 | 2) => share(`sums ${power} of ${at}`, () => new SumsStage(source, groups, power));
  const orderOf = () => share(`order of ${at}`, () => new OrderStage(source, groups));
  const afresh = () => row.of(new Grouped(numbersOf(source.column), groups.groups), p);
  switch (row.name) {
    case 'count': {
      const sums = sumsOf(1);
      return { from: [sums], read: (group) => sums.sums.counts[group] };
    }
    case 'sum': {
      const sums = sumsOf(1);
      return { from: [sums], read: (group) => (sums.sums.counts[group] > 0 ? sums.sums.total(group) : Number.NaN) };
    }
    case 'mean': {
      const sums = sumsOf(1);
      return { from: [sums], read: (group) => sums.sums.total(group) / sums.sums.counts[group] };
    }
    case 'sd': {
      const [sums, squares] = [sumsOf(1), sumsOf(2)];
      return { from: [sums, squares], read: (group) => RunningSums.sd(sums.sums, squares.sums, group) };
    }
    case 'median':
    case 'quantile': {
      const order = orderOf();
      const below = row.name === 'median' ? 0.5 : p;
      return { from: [order], read: (group) => order.ordered.quantile(group, below) };
    }
    case 'min':
    case 'max': {
      const order = orderOf();
      const { name } = row;
      return { from: [order], read: (group) => order.ordered[name](group), readAll: afresh };
    }
    default:
      return { from: [], read: () => Number.NaN, readAll: afresh };
  }
}
