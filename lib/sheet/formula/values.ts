import { TextColumn } from '../column.ts';
import { Grouped } from '../grouped.ts';
import { kept } from '../kept.ts';
import type { Table } from '../table.ts';
import { Blocks, type GroupValues } from './blocks.ts';
import { keysOf } from './children.ts';
import { functions } from './functions.ts';
import { Numbering } from './numbering.ts';
import type { Summary } from './summaries.ts';
import type { Node } from './syntax.ts';
import { isText, texts } from './texts.ts';

/** What someone who keeps values up to date has ready. */
export interface Given {
  /** The values of a summary, where they are not to be worked out from the rows. */
  readonly summary?: (node: Node & { kind: 'call' }) => GroupValues;
  /** For each node an array whose numbers are out of date: the new ones are written over them where it fits. */
  readonly into?: readonly (Float64Array | undefined)[];
}

/**
 * The values of some formulas over all rows of a table. Missing stays missing, and so does what has no finite answer.
 * Formulas that are asked together share their common parts.
 * @param nodes  as `resolve` gives them
 * @returns a column a node: numbers (yes/no as 1 and 0, dates as days) with `NaN` for missing, or text
 */
export function values(nodes: readonly Node[], table: Table, given: Given = {}): (Float64Array | TextColumn)[] {
  return new Evaluation(table, given).columns(nodes, given.into);
}

/** Whole columns of sub-expressions and groups of values, each made once. */
class Evaluation {
  readonly #table: Table;
  readonly #numbering = new Numbering();
  readonly #wholes = new Map<number, Float64Array | TextColumn>();
  readonly #grouped = new Map<string, Grouped>();

  readonly #given: Given;

  constructor(table: Table, given: Given) {
    this.#table = table;
    this.#given = given;
  }

  columns(nodes: readonly Node[], into: Given['into'] = []): (Float64Array | TextColumn)[] {
    const table = this.#table;
    const inner = { whole: this.#whole, summary: this.#given.summary ?? this.#summary };
    const numeric = nodes.map((node) => !isText(node, table));
    const chosen = (_: unknown, index: number) => numeric[index];
    const numbers = new Blocks(table, inner).columns(nodes.filter(chosen), into.filter(chosen));
    let next = 0;
    return nodes.map((node, index) => (numeric[index] ? numbers[next++] : texts(node, table, this.#whole)));
  }

  readonly #whole = (node: Node): Float64Array | TextColumn => {
    if (node.kind === 'column') {
      const column = this.#table.column(node.name);
      return column instanceof TextColumn ? column : column.values;
    }
    return kept(this.#wholes, this.#numbering.of(node), () => this.columns([node])[0]);
  };

  readonly #summary = (node: Node & { kind: 'call' }): GroupValues => {
    const row = functions.get(node.name) as Summary;
    const [x, share] = node.args;
    const keys = keysOf(node);
    const groups = this.#table.groups(keys);
    const key = JSON.stringify([this.#numbering.of(x), ...keys]);
    const grouped = kept(this.#grouped, key, () => new Grouped(countable(this.#whole(x)), groups));
    return { codes: groups.codes, values: row.of(grouped, share?.kind === 'number' ? share.value : Number.NaN) };
  };
}

/** Text can only be counted: 1 for any. */
function countable(values: Float64Array | TextColumn): Float64Array {
  return values instanceof TextColumn ? Float64Array.from(values.codes, (code) => (code < 0 ? Number.NaN : 1)) : values;
}
