import { kept } from '../kept.ts';
import type { Relation } from '../relation.ts';
import { relationNamed } from '../relationNamed.ts';
import { children, keysOf } from './children.ts';
import { type Dialect, type DialectName, dialects } from './dialects.ts';
import { functions } from './functions.ts';
import { Numbering } from './numbering.ts';
import { type Operation, operators, signs } from './operators.ts';
import { type Expression, SqlStages } from './sqlStages.ts';
import { numberLiteral, over } from './sqlText.ts';
import type { Summary } from './summaries.ts';
import type { Node } from './syntax.ts';

export interface SqlOptions {
  /** The table's name. */
  readonly table: string;
  /** The columns that the table stores. */
  readonly names: readonly string[];
  readonly relations: readonly Relation[];
  /** A stored column to sort the result by; left out, rows come in whatever order the database likes. */
  readonly rowId?: string;
  /** For which engine; left out, `standard`. */
  readonly dialect?: DialectName;
  /** Columns of the table that are dates there, and not whole days since 1970-01-01. */
  readonly dates?: readonly string[];
}

/**
 * One `SELECT` in standard SQL that gives all stored columns and then the computed ones, with the values that the sheet
 * has. Relations and summaries are window functions; where one rests on another they follow each other in stages, and
 * what several columns share is computed once.
 *
 * It expects the table as the sheet has it: numbers `DOUBLE PRECISION`, dates whole days since 1970-01-01 or, where
 * `dates` names them, `DATE`, yes/no `BOOLEAN`, text `VARCHAR`, and what is missing `NULL`: never NaN, which databases take for a large number, nor an empty text.
 * Results beyond the largest double are left to the database.
 * @param columns computed columns with their formulas as `resolve` gives them; they may name each other
 * @throws TypeError for a relation that both swaps and looks before, which no window can follow
 * @example sql([{ name: 'off', node: parse('toe - mean(toe, horse_id)') }], { table: 'feet', names: ['horse_id', 'toe'], relations: [] })
 *   // WITH "stage_1" AS (SELECT "horse_id", "toe", AVG("toe") OVER (PARTITION BY "horse_id") AS "part_1" FROM "feet")
 *   // SELECT "horse_id", "toe", ("toe" - "part_1") AS "off" FROM "stage_1"
 */
export function sql(columns: readonly { readonly name: string; readonly node: Node }[], options: SqlOptions): string {
  const { table, names, relations, rowId, dialect = 'standard', dates = [] } = options;
  const formulas = new Map(columns.map(({ name, node }) => [name, node]));
  const given = [...names, ...formulas.keys()];
  const stored = rowId === undefined || names.includes(rowId) ? names : [rowId, ...names];
  const stages = new SqlStages([table, ...stored, ...given], dialects[dialect]);
  const writer = new Writer(stages, dialects[dialect], formulas, relations, new Set(given), new Set(dates));
  for (const name of formulas.keys()) writer.column(name);
  return writer.stages.select(table, stored, given, rowId);
}

class Writer {
  readonly stages: SqlStages;
  readonly #formulas: ReadonlyMap<string, Node>;
  readonly #relations: readonly Relation[];
  readonly #names: ReadonlySet<string>;
  readonly #dates: ReadonlySet<string>;
  readonly #dialect: Dialect;
  readonly #numbering = new Numbering();
  /** What is written already: columns, windows, and what windows need. */
  readonly #known = new Map<string, Expression>();

  constructor(
    stages: SqlStages,
    dialect: Dialect,
    formulas: ReadonlyMap<string, Node>,
    relations: readonly Relation[],
    names: ReadonlySet<string>,
    dates: ReadonlySet<string>,
  ) {
    this.stages = stages;
    this.#dialect = dialect;
    this.#dates = dates;
    this.#formulas = formulas;
    this.#relations = relations;
    this.#names = names;
  }

  column(name: string): Expression {
    const formula = this.#formulas.get(name);
    if (formula === undefined) return { text: this.#dialect.identifier(name), stage: 0, atomic: true };
    return this.#once(`column ${name}`, () => this.stages.add(this.#of(formula), name));
  }

  #days(name: string): Expression {
    return { text: this.#dialect.days(this.column(name).text), stage: 0, atomic: false };
  }

  /** The empty text is missing. */
  #text(value: string): string {
    return value === '' ? 'NULL' : this.#dialect.text(value);
  }

  #once(key: string, write: () => Expression): Expression {
    return kept(this.#known, key, write);
  }

  #of(node: Node): Expression {
    switch (node.kind) {
      case 'number':
        return { text: numberLiteral(node.value), stage: 0, atomic: true };
      case 'text':
        return { text: this.#text(node.value), stage: 0, atomic: true };
      case 'column':
        return this.#dates.has(node.name) ? this.#days(node.name) : this.column(node.name);
      case 'unary':
        return this.#operation(node, signs[node.operator]);
      case 'binary':
        return this.#operation(node, operators[node.operator]);
      case 'conditional': {
        const parts = children(node).map((part) => this.#of(part));
        const [test, then, otherwise] = parts;
        return {
          text: `CASE ${test.text} WHEN TRUE THEN ${then.text} WHEN FALSE THEN ${otherwise.text} END`,
          stage: latest(parts),
          atomic: false,
        };
      }
      case 'call': {
        const row = functions.get(node.name);
        if (row?.sort === 'plain') return this.#operation(node, row);
        const key = `window ${this.#numbering.of(node)}`;
        return this.#once(key, () => (row?.sort === 'summary' ? this.#summary(node, row) : this.#relation(node)));
      }
    }
  }

  #operation(node: Node, operation: Operation): Expression {
    const marks = children(node).map((_, i) => `\u0001${i}\u0002`);
    const pattern = operation.sql(...marks);
    const args = children(node).map((part, i) => {
      const arg = this.#of(part);
      const once = pattern.split(marks[i]).length <= 2;
      return once ? arg : this.#named(part, arg);
    });
    return { text: operation.sql(...args.map(({ text }) => text)), stage: latest(args), atomic: false };
  }

  /** An expression that is used more than once, under a name. */
  #named(node: Node, written: Expression): Expression {
    if (written.atomic) return written;
    return this.#once(`part ${this.#numbering.of(node)}`, () => this.stages.add(written));
  }

  #summary(node: Node & { kind: 'call' }, row: Summary): Expression {
    const [x, p] = node.args;
    const keys = keysOf(node).map((name) => this.column(name));
    const of = this.#of(x);
    if ('share' in row.sql) return this.#quantile(x, row.sql.share(p?.kind === 'number' ? p.value : Number.NaN), keys);
    const text = row.sql(
      of.text,
      keys.map(({ text }) => text),
    );
    return this.stages.add({ text, stage: latest([of, ...keys]) });
  }

  /** R's type 7 from the ranks of the values: the standard has no quantile over a window. */
  #quantile(node: Node, share: number, groups: readonly Expression[]): Expression {
    const x = this.#named(node, this.#of(node));
    const keys = groups.map(({ text }) => text);
    const stage = latest([x, ...groups]);
    const window = (text: string) => this.#once(text, () => this.stages.add({ text, stage }));
    const rank = window(over('ROW_NUMBER()', keys, `ORDER BY ${x.text} NULLS LAST`));
    const count = window(over(`COUNT(${x.text})`, keys));
    const place = `${numberLiteral(share)} * (${count.text} - 1)`;
    const [low, high] = [1, 2].map((above) => {
      const value = `CASE WHEN ${rank.text} = FLOOR(${place}) + ${above} THEN ${x.text} END`;
      return this.stages.add({ text: over(`MAX(${value})`, keys), stage: rank.stage });
    });
    return this.stages.add({
      text: `${low.text} + (${place} - FLOOR(${place})) * (COALESCE(${high.text}, ${low.text}) - ${low.text})`,
      stage: low.stage,
    });
  }

  #relation(node: Node & { kind: 'call' }): Expression {
    const relation = relationNamed(node.name, this.#relations);
    const { match, optional = [], swap, before } = relation;
    const x = this.#of(node.args[0]);
    const matched = match.map((name) => this.column(name));
    const alike = [...matched, ...optional.filter((name) => this.#names.has(name)).map((name) => this.column(name))];
    const keys = alike.map(({ text }) => text);
    if (before !== undefined && swap !== undefined)
      throw new TypeError(
        `The relation ${relation.name} both swaps and looks before, which no SQL window can follow. Make it two relations and call one within the other`,
      );

    if (before !== undefined) {
      const order = this.column(before);
      const rank = this.#once(`rank ${relation.name}`, () => {
        const text = over(
          'DENSE_RANK()',
          matched.map(({ text }) => text),
          `ORDER BY ${order.text} NULLS LAST`,
        );
        return this.stages.add({ text, stage: latest([order, ...matched]) });
      });
      const nearest = `ORDER BY ${rank.text} RANGE BETWEEN 1 PRECEDING AND 1 PRECEDING`;
      const text = `CASE ${unknown([...matched, order])}${only(x, [], keys, nearest)} END`;
      return this.stages.add({ text, stage: latest([x, rank, ...alike]) });
    }

    const swapped = Object.keys(swap ?? {}).map((name) => this.column(name));
    const cases = pairs(swap ?? {}).map(({ own, partner }) => {
      const here = this.#equal(own, swapped);
      const there = this.#equal(partner, swapped);
      const found = only(x, there, keys);
      return here.length === 0 ? found : `WHEN ${here.join(' AND ')} THEN CASE ${found} END`;
    });
    const text = `CASE ${unknown(matched)}${cases.join(' ')} END`;
    return this.stages.add({ text, stage: latest([x, ...alike, ...swapped]) });
  }

  #equal(values: readonly string[], columns: readonly Expression[]): string[] {
    return values.map((value, i) => `${columns[i].text} = ${this.#text(value)}`);
  }
}

function latest(parts: readonly Expression[]): number {
  return Math.max(0, ...parts.map(({ stage }) => stage));
}

/** What is missing leads nowhere. */
function unknown(columns: readonly Expression[]): string {
  return columns.length === 0 ? '' : `WHEN ${columns.map(({ text }) => `${text} IS NULL`).join(' OR ')} THEN NULL `;
}

/** The value of the one row in a window for which all conditions hold; missing where there are more. */
function only(x: Expression, conditions: readonly string[], keys: readonly string[], order = ''): string {
  // Not every engine takes FILTER with a window.
  const where = (text: string) =>
    conditions.length === 0 ? text : `CASE WHEN ${conditions.join(' AND ')} THEN ${text} END`;
  const count = conditions.length === 0 ? 'COUNT(*)' : `COUNT(${where('1')})`;
  return `WHEN ${over(count, keys, order)} = 1 THEN ${over(`MAX(${where(x.text)})`, keys, order)}`;
}

/** All ways of swapping: this row's values in the swapped columns, and its partner's. */
function pairs(swap: NonNullable<Relation['swap']>): { own: string[]; partner: string[] }[] {
  let found: { own: string[]; partner: string[] }[] = [{ own: [], partner: [] }];
  for (const map of Object.values(swap))
    found = found.flatMap(({ own, partner }) =>
      Object.entries(map).map(([from, to]) => ({ own: [...own, from], partner: [...partner, to] })),
    );
  return found;
}
