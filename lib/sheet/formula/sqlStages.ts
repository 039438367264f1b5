import type { Dialect } from './dialects.ts';

/** SQL for a value, and from which stage on all that it names can be read. */
export interface Expression {
  readonly text: string;
  readonly stage: number;
  /** A name or a literal, which may stand in other expressions more than once. */
  readonly atomic: boolean;
}

interface Step {
  readonly name: string;
  readonly text: string;
}

/**
 * Columns that are made one on another, sorted into stages: a stage is a `SELECT` that adds to the one before all that
 * can be computed from it. Windows can't stand inside windows, so each one is a step further.
 */
export class SqlStages {
  readonly #steps: Step[][] = [];
  readonly #taken: Set<string>;

  readonly #identifier: Dialect['identifier'];

  /** @param taken names that are in use */
  constructor(taken: Iterable<string>, { identifier }: Dialect) {
    this.#identifier = identifier;
    this.#taken = new Set([...taken].map((name) => name.toLowerCase()));
  }

  /** Adds a column; without a name of its own it gets one that is free. */
  add({ text, stage }: Pick<Expression, 'text' | 'stage'>, name = this.#free('part')): Expression {
    while (this.#steps.length <= stage) this.#steps.push([]);
    this.#steps[stage].push({ name, text });
    return { text: this.#identifier(name), stage: stage + 1, atomic: true };
  }

  /**
   * The whole statement.
   * @param stored columns to read from the table besides those to give out
   * @param given columns to give out, in order
   */
  select(table: string, stored: readonly string[], given: readonly string[], orderBy: string | undefined): string {
    const identifier = this.#identifier;
    const written = ({ name, text }: Step) => `${text} AS ${identifier(name)}`;
    const names = stored.map(identifier);
    // What nothing else names comes last: a window before it need not carry it.
    const all = this.#steps.flat();
    const waits = (step: Step) =>
      given.includes(step.name) && !all.some((other) => other.text.includes(identifier(step.name)));
    const stages = this.#steps.slice(0, -1).map((steps) => steps.filter((step) => !waits(step)));
    const aliases = stages.map(() => this.#free('stage'));
    const sources = [table, ...aliases].map(identifier);
    const parts = stages.map((steps, at) => {
      const columns = [...(at === 0 ? names : ['*']), ...steps.map(written)];
      return `${sources[at + 1]} AS (\n  SELECT ${columns.join(',\n    ')}\n  FROM ${sources[at]}\n)`;
    });
    const late = [...all.filter(waits), ...(this.#steps.at(-1) ?? [])];
    const last = new Map(late.map((step) => [step.name, written(step)]));
    const columns = given.map((name) => last.get(name) ?? identifier(name));
    return [
      ...(parts.length === 0 ? [] : [`WITH ${parts.join(', ')}`]),
      `SELECT ${columns.join(',\n  ')}`,
      `FROM ${sources[stages.length]}`,
      ...(orderBy === undefined ? [] : [`ORDER BY ${identifier(orderBy)}`]),
    ].join('\n');
  }

  /** A name that no column has, whatever its case: databases differ in whether they mind. */
  #free(base: string): string {
    let number = 1;
    while (this.#taken.has(`${base}_${number}`)) number++;
    this.#taken.add(`${base}_${number}`);
    return `${base}_${number}`;
  }
}
