import { type Column, TextColumn } from '../column.ts';
import { children, withChildren } from '../formula/children.ts';
import { number } from '../formula/nodes.ts';
import type { Node } from '../formula/syntax.ts';
import { values } from '../formula/values.ts';
import type { Table } from '../table.ts';
import { type Changes, ColumnStage, changedRows, DeltaBuilder } from './stage.ts';
import { SummaryStage } from './summaryStage.ts';

/** A formula whose row depends on nothing but the same row of its inputs, and on summaries of the whole table. */
export class FormulaStage extends ColumnStage {
  #column: Column | undefined;

  /**
   * @param node  its columns are named by the `id` of the stages they stand for
   * @param inputs  those stages, by their name in `node`
   * @param rows  how many rows there are
   */
  constructor(
    readonly node: Node,
    readonly inputs: ReadonlyMap<string, ColumnStage>,
    readonly rows: number,
  ) {
    super([...inputs.values()]);
  }

  get column(): Column {
    return this.#column!;
  }

  /** Which rows have to be computed again. */
  outdated(): 'all' | readonly number[] {
    return this.fresh ? 'all' : changedRows(this.needs, this.rows);
  }

  refresh(): Changes {
    const rows = this.outdated();
    if (rows === 'all') {
      FormulaStage.computeAll([this]);
      return 'all';
    }
    const [result] = values([this.#current()], picked(this.inputs, rows));
    return result instanceof TextColumn ? this.#putText(rows, result) : this.#putNumbers(rows, result);
  }

  /** Computes every row of several formulas at once, so that they share what they have in common. */
  static computeAll(stages: readonly FormulaStage[]): void {
    if (stages.length === 0) return;
    const inputs = new Map(stages.flatMap((stage) => [...stage.inputs]));
    const whole = table(stages[0].rows, (name) => inputs.get(name)!.column);
    const results = values(
      stages.map((stage) => stage.#current()),
      whole,
    );
    for (const [i, stage] of stages.entries()) {
      const result = results[i];
      stage.#column = result instanceof TextColumn ? result : { kind: 'number', unit: '1', values: result };
    }
  }

  /** The formula with today's numbers for summaries of the whole table. */
  #current(): Node {
    const filled = (node: Node): Node => {
      if (node.kind !== 'column') return withChildren(node, children(node).map(filled));
      const stage = this.inputs.get(node.name);
      return stage instanceof SummaryStage && stage.isWhole ? number(stage.whole, node) : node;
    };
    return filled(this.node);
  }

  #putNumbers(rows: readonly number[], result: Float64Array): Changes {
    const own = this.column.values as Float64Array;
    const delta = new DeltaBuilder();
    for (let i = 0; i < rows.length; i++) {
      const row = rows[i];
      if (Object.is(own[row], result[i])) continue;
      delta.add(row, own[row]);
      own[row] = result[i];
    }
    return delta.changes;
  }

  #putText(rows: readonly number[], result: TextColumn): Changes {
    const { codes, levels } = this.column as TextColumn;
    const own = levels.concat(result.levels.filter((level) => !levels.includes(level)));
    const codeOf = result.levels.map((level) => own.indexOf(level));
    const delta = new DeltaBuilder();
    for (let i = 0; i < rows.length; i++) {
      const row = rows[i];
      const code = result.codes[i] < 0 ? -1 : codeOf[result.codes[i]];
      if (codes[row] === code) continue;
      delta.add(row, codes[row]);
      codes[row] = code;
    }
    this.#column = new TextColumn(codes, own);
    return delta.changes;
  }
}

/** A table of some rows of the inputs. */
function picked(inputs: ReadonlyMap<string, ColumnStage>, rows: readonly number[]): Table {
  return table(rows.length, (name) => {
    const { column } = inputs.get(name)!;
    if (column.kind === 'text')
      return new TextColumn(
        Int32Array.from(rows, (row) => column.codes[row]),
        column.levels,
      );
    return { kind: column.kind, unit: column.unit, values: Float64Array.from(rows, (row) => column.values[row]) };
  });
}

function table(rows: number, column: (name: string) => Column): Table {
  const none = () => {
    throw new TypeError('Relations and groups are stages of their own: no formula stage may hold one');
  };
  return { rows, names: [], relations: [], column, partners: none, groups: none };
}
