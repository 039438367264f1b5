import type { GroupValues } from '../formula/blocks.ts';
import type { Summary } from '../formula/summaries.ts';
import { Grouped } from '../grouped.ts';
import type { GroupsStage } from './groupsStage.ts';
import { OrderStage, SumsStage } from './runningStage.ts';
import { RunningSums } from './runningSums.ts';
import { type Changes, type ColumnStage, many, numbersOf, Stage } from './stage.ts';

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
 * A summary of a column, one value a group. Its changed rows are those of the groups whose value changed.
 * A summary without a reading here is worked out afresh when its column changes.
 */
export class SummaryStage extends Stage {
  #values: Float64Array = new Float64Array(0);

  constructor(
    readonly source: ColumnStage,
    readonly groups: GroupsStage,
    readonly reading: Reading,
  ) {
    super([source, groups, ...reading.from]);
  }

  get result(): GroupValues {
    return { codes: this.groups.groups.codes, values: this.#values };
  }

  refresh(): Changes {
    const { from, read, readAll } = this.reading;
    // What is kept running starts anew when the groups change, and says so.
    if (this.fresh || from.length === 0 || from.some(({ changes }) => changes === 'all')) {
      const { count } = this.groups.groups;
      this.#values = readAll?.() ?? Float64Array.from({ length: count }, (_, group) => read(group));
      return 'all';
    }
    const touched = new Set<number>();
    for (const { changes } of from)
      if (changes !== 'none' && changes !== 'all')
        for (let i = 0; i < changes.rows.length; i++) touched.add(changes.rows[i]);
    return this.#reread(touched);
  }

  #reread(touched: Iterable<number>): Changes {
    const { codes, values } = this.result;
    const rows: number[] = [];
    let all = false;
    for (const group of touched) {
      const after = this.reading.read(group);
      if (Object.is(values[group], after)) continue;
      values[group] = after;
      if (all) continue;
      const members = this.groups.members(group);
      all = many(rows.length + members.length, codes.length);
      if (!all) for (const row of members) rows.push(row);
    }
    return all ? 'all' : rows.length === 0 ? 'none' : { rows, before: [] };
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
