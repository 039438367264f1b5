import { type Column, TextColumn } from '../column.ts';
import type { GroupValues } from '../formula/blocks.ts';
import type { Node } from '../formula/syntax.ts';
import { values } from '../formula/values.ts';
import { gather } from '../gather.ts';
import { kept } from '../kept.ts';
import type { Table } from '../table.ts';
import { LookupStage, type PartnersStage } from './partnersStage.ts';
import { type Changes, ColumnStage, changedRows, DeltaBuilder } from './stage.ts';
import type { SummaryStage } from './summaryStage.ts';

/** What a formula takes its values from, by the name of the column that stands for it in the formula. */
export type Inputs = ReadonlyMap<string, ColumnStage | LookupStage | SummaryStage>;

/** The values of a formula. */
export class FormulaStage extends ColumnStage {
  #column: Column | undefined;

  /**
   * @param node  columns, and what relations and summaries are of, named as in `inputs`
   * @param total  how many rows there are
   */
  constructor(
    readonly node: Node,
    readonly inputs: Inputs,
    readonly total: number,
  ) {
    super([...inputs.values()]);
  }

  get column(): Column {
    return this.#column!;
  }

  /** Which rows have to be computed again. */
  outdated(): 'all' | readonly number[] {
    return this.fresh ? 'all' : changedRows(this.needs, this.total);
  }

  refresh(): Changes {
    const rows = this.outdated();
    if (rows === 'all') {
      FormulaStage.computeAll([this]);
      return 'all';
    }
    const view = new RowsView(this.inputs, this.total, rows);
    const [result] = values([this.node], view, { summary: view.summary });
    return result instanceof TextColumn ? this.#putText(rows, result) : this.#putNumbers(rows, result);
  }

  /** Computes every row of several formulas at once, so that they share what they have in common. */
  static computeAll(stages: readonly FormulaStage[]): void {
    if (stages.length === 0) return;
    const view = new RowsView(new Map(stages.flatMap(({ inputs }) => [...inputs])), stages[0].total);
    const results = values(
      stages.map(({ node }) => node),
      view,
      { summary: view.summary, into: stages.map((stage) => stage.#numbers) },
    );
    for (const [i, stage] of stages.entries()) {
      const result = results[i];
      stage.#column = result instanceof TextColumn ? result : { kind: 'number', unit: '1', values: result };
    }
  }

  get #numbers(): Float64Array | undefined {
    return this.#column?.kind === 'number' ? this.#column.values : undefined;
  }

  #putNumbers(rows: readonly number[], result: Float64Array): Changes {
    const own = this.#numbers!;
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

/** The inputs of formulas as a table of all rows, or of some. */
class RowsView implements Table {
  readonly rows: number;
  readonly names = [];
  readonly relations;
  readonly #inputs: Inputs;
  readonly #some: readonly number[] | undefined;
  readonly #picked = new Map<string, Column>();
  readonly #partners: readonly PartnersStage[];

  constructor(inputs: Inputs, total: number, some?: readonly number[]) {
    this.#inputs = inputs;
    this.rows = some?.length ?? total;
    this.#some = some;
    this.#partners = [...inputs.values()].flatMap((stage) => (stage instanceof LookupStage ? [stage.partners] : []));
    this.relations = this.#partners.map(({ relation }) => relation);
  }

  /** What a relation is of stays whole: partners may be any rows. */
  column(name: string): Column {
    const stage = this.#inputs.get(name) as ColumnStage | LookupStage;
    if (stage instanceof LookupStage) return stage.source.column;
    const some = this.#some;
    return some === undefined ? stage.column : kept(this.#picked, name, () => gather(stage.column, some));
  }

  partners(relation: Table['relations'][number]): Int32Array {
    return this.#codes(this.#partners.find((stage) => stage.relation === relation)!.partners);
  }

  readonly summary = (node: Node & { kind: 'call' }): GroupValues => {
    const { name } = node.args[0] as Node & { kind: 'column' };
    const { codes, values: byGroup } = (this.#inputs.get(name) as SummaryStage).result;
    return { codes: this.#codes(codes), values: byGroup };
  };

  groups(): never {
    throw new TypeError('Groups are a stage of their own: a formula asks for the summary that stands for it');
  }

  #codes(codes: Int32Array): Int32Array {
    return this.#some === undefined ? codes : Int32Array.from(this.#some, (row) => codes[row]);
  }
}
