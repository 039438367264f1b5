import { children, keysOf, withChildren } from '../formula/children.ts';
import { functions } from '../formula/functions.ts';
import { Numbering } from '../formula/numbering.ts';
import type { Node } from '../formula/syntax.ts';
import type { Rows } from '../partners.ts';
import type { Relation } from '../relation.ts';
import { relationColumns } from '../uses.ts';
import { FormulaStage, type Inputs } from './formulaStage.ts';
import { GroupsStage } from './groupsStage.ts';
import type { InputStage } from './inputStage.ts';
import { LookupStage, PartnersStage } from './partnersStage.ts';
import type { ColumnStage, Stage } from './stage.ts';
import { readingOf, SummaryStage } from './summaryStage.ts';

type Call = Node & { kind: 'call' };

/** What the engine has to know of the table it computes. */
export interface Site extends Rows {
  readonly relations: readonly Relation[];
  /** The stage of a column by its name. */
  stage(name: string): ColumnStage;
}

/**
 * Keeps computed columns up to date: takes formulas apart into stages, and refreshes those that something has changed for.
 * A stage is there once, however many formulas ask for it.
 */
export class Engine {
  readonly #site: Site;
  readonly #numbering = new Numbering();
  #stages = new Map<string, Stage>();
  #before = new Map<string, Stage>();

  constructor(site: Site) {
    this.#site = site;
  }

  /** Asks for all stages anew: those asked for again keep what they have computed, the others are dropped. */
  arrange(ask: () => void): void {
    this.#before = this.#stages;
    this.#stages = new Map();
    ask();
    this.#before = new Map();
  }

  /** Brings every stage up to date, formulas over all rows together where they don't wait for each other. */
  refresh(): void {
    const waiting = new Set<Stage>();
    const compute = () => {
      FormulaStage.computeAll([...waiting] as FormulaStage[]);
      waiting.clear();
    };
    for (const stage of this.#stages.values()) {
      if (waiting.size > 0 && stage.needs.some((need) => waiting.has(need))) compute();
      if (stage.idle) stage.changes = 'none';
      else if (stage instanceof FormulaStage && stage.outdated() === 'all') {
        waiting.add(stage);
        stage.changes = 'all';
      } else stage.changes = stage.refresh();
      stage.fresh = false;
    }
    compute();
  }

  /** A column that is typed in, which the site keeps. */
  input(stage: InputStage): InputStage {
    return this.#share(`input ${stage.id}`, () => stage);
  }

  /** The stage of a resolved formula; of a bare column that column's own. */
  formula(node: Node): ColumnStage {
    const inputs = new Map<string, ColumnStage | LookupStage | SummaryStage>();
    const standIn = (stage: ColumnStage | LookupStage | SummaryStage, { start, end }: Node): Node => {
      const name = String(stage.id);
      inputs.set(name, stage);
      return { kind: 'column', name, start, end };
    };
    const taken = (part: Node): Node => {
      if (part.kind === 'column') return standIn(this.#site.stage(part.name), part);
      const stage = part.kind === 'call' ? this.#beyondTheRow(part) : undefined;
      if (stage !== undefined) return { ...(part as Call), args: [standIn(stage, part)] };
      return withChildren(part, children(part).map(taken));
    };
    const own = taken(node);
    if (own.kind === 'column') return inputs.get(own.name) as ColumnStage;
    return this.#share(
      `formula ${this.#numbering.of(own)}`,
      () => new FormulaStage(own, inputs as Inputs, this.#site.rows),
    );
  }

  groups(keys: readonly string[]): GroupsStage {
    const stages = keys.map((key) => this.#site.stage(key));
    const key = `groups by ${stages.map(({ id }) => id).join(' ')}`;
    return this.#share(key, () => new GroupsStage(stages, this.#site.rows));
  }

  partners(relation: Relation): PartnersStage {
    const stages = relationColumns(relation, this.#site.names).map((name) => this.#site.stage(name));
    const key = `partners by ${relation.name} ${stages.map(({ id }) => id).join(' ')}`;
    return this.#share(key, () => new PartnersStage(relation, this.#site, stages));
  }

  /** The stage of a summary, or of what a relation leads to; none for a plain function. */
  #beyondTheRow(node: Call): SummaryStage | LookupStage | undefined {
    const row = functions.get(node.name);
    if (row?.sort === 'summary') {
      const source = this.formula(node.args[0]);
      const groups = this.groups(keysOf(node));
      const share = node.args[1]?.kind === 'number' ? node.args[1].value : Number.NaN;
      const reading = readingOf(row, source, groups, share, this.#share);
      const key = `${node.name} ${share} of ${source.id} by ${groups.id}`;
      return this.#share(key, () => new SummaryStage(source, groups, reading));
    }
    const relation = row ? undefined : this.#site.relations.find(({ name }) => name === node.name);
    if (relation === undefined) return undefined;
    const source = this.formula(node.args[0]);
    const partners = this.partners(relation);
    return this.#share(`lookup of ${source.id} by ${partners.id}`, () => new LookupStage(source, partners));
  }

  readonly #share = <S extends Stage>(key: string, make: () => S): S => {
    const stage = this.#stages.get(key) ?? this.#before.get(key) ?? make();
    this.#stages.set(key, stage);
    return stage as S;
  };
}
