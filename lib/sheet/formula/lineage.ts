import { counted } from '../../words/counted.ts';
import { say } from '../../words/say.ts';
import { TextColumn } from '../column.ts';
import { kept } from '../kept.ts';
import { listed } from '../listed.ts';
import { relationNamed } from '../relationNamed.ts';
import type { Table } from '../table.ts';
import { children, keysOf } from './children.ts';
import { functions } from './functions.ts';
import { print } from './print.ts';
import type { Node } from './syntax.ts';
import { values } from './values.ts';

/** A cell and the cells it came from, down to what was measured. */
export interface LineageNode {
  /** The column's name; of a summary, what it is of: `toe_angle_deg`, `toe_angle_deg - heel_angle_deg`. */
  readonly column: string;
  /** The row of the cell, counted from 0; -1 where a relation leads to no row. */
  readonly row: number;
  /** `NaN` or `''` where it is missing. */
  readonly value: number | string;
  /** UCUM code; `''` where a summary is of an expression. */
  readonly unit: string;
  /** One standard error in `unit`, where it is known. */
  readonly error?: number;
  /** The column's formula as it was typed; a measured column has none. */
  readonly formula?: string;
  /** How the cell above got here when not by the same row: `opposite`, or `mean over horse_id: 12 cells`. */
  readonly via?: string;
  /** Of a summary the first few of its cells; nothing of a measured cell. */
  readonly from: readonly LineageNode[];
}

/** A computed column's formula as it was typed and as `resolve` gives it. */
export interface ComputedFormula {
  readonly text: string;
  readonly node: Node;
}

/**
 * Where a cell came from: the cells in its formula, where those came from, and so on down to measured cells.
 * Of a choice the test and the branch taken count; the keys of a summary are named in `via` and not listed.
 * @param row counted from 0
 * @param formulaOf the formula of a computed column, `undefined` for a measured one; columns must not form a loop
 * @param few how many cells of a summary to list
 * @returns a tree; a cell that is reached by several ways is one object, but for its `via`
 * @throws RangeError for a row that the table lacks
 * @example lineage('level_mm', 0, table, formulaOf).from.map(({ column, value }) => [column, value])
 *   // [['medial_wall_mm', 62], ['lateral_wall_mm', 60]]
 */
export function lineage(
  name: string,
  row: number,
  table: Table,
  formulaOf: (name: string) => ComputedFormula | undefined,
  few = 5,
): LineageNode {
  if (!(row >= 0 && row < table.rows))
    throw new RangeError(`There is no row ${row}: the table has ${table.rows} rows, counted from 0`);
  return new Tracing(table, formulaOf, few).cell(name, row);
}

class Tracing {
  readonly #table: Table;
  readonly #formulaOf: (name: string) => ComputedFormula | undefined;
  readonly #few: number;
  readonly #cells = new Map<string, LineageNode>();
  readonly #values = new Map<Node, Float64Array | TextColumn>();

  constructor(table: Table, formulaOf: (name: string) => ComputedFormula | undefined, few: number) {
    this.#table = table;
    this.#formulaOf = formulaOf;
    this.#few = few;
  }

  cell(name: string, row: number): LineageNode {
    return kept(this.#cells, `${row} ${name}`, () => this.#cell(name, row));
  }

  #cell(name: string, row: number): LineageNode {
    const column = this.#table.column(name);
    const formula = this.#formulaOf(name);
    const error = column.kind === 'text' ? undefined : column.error?.[row];
    return {
      column: name,
      row,
      value: at(column instanceof TextColumn ? column : column.values, row),
      unit: column.unit,
      ...(error === undefined || Number.isNaN(error) ? {} : { error }),
      ...(formula === undefined ? {} : { formula: formula.text }),
      from: formula === undefined || row < 0 ? [] : once(this.#sources(formula.node, row)),
    };
  }

  #sources(node: Node, row: number): readonly LineageNode[] {
    if (node.kind === 'column') return [this.cell(node.name, row)];
    if (node.kind === 'conditional') {
      const test = this.#at(node.test, row);
      const branch = test === 1 ? [node.then] : test === 0 ? [node.otherwise] : [];
      return [node.test, ...branch].flatMap((part) => this.#sources(part, row));
    }
    if (node.kind === 'call') {
      const called = functions.get(node.name);
      if (called === undefined) return this.#partners(node, row);
      if (called.sort === 'summary') return [this.#summary(node, row)];
    }
    return children(node).flatMap((part) => this.#sources(part, row));
  }

  #partners(node: Node & { kind: 'call' }, row: number): readonly LineageNode[] {
    const relation = relationNamed(node.name, this.#table.relations);
    const partner = row < 0 ? -1 : this.#table.partners(relation)[row];
    return this.#sources(node.args[0], partner).map((source) => ({
      ...source,
      via: source.via === undefined ? node.name : `${node.name}, ${source.via}`,
    }));
  }

  #summary(node: Node & { kind: 'call' }, row: number): LineageNode {
    const [x, share] = node.args;
    const keys = keysOf(node);
    const members = row < 0 ? [] : this.#members(x, this.#table.groups(keys).codes, row);
    const what = share?.kind === 'number' ? `${node.name} ${share.value}` : node.name;
    const over = keys.length === 0 ? say`the whole table` : listed(keys);
    return {
      column: print(x),
      row,
      value: this.#at(node, row),
      unit: node.name === 'count' ? '1' : x.kind === 'column' ? this.#table.column(x.name).unit : '',
      via: counted(members.length, {
        one: say`${what} over ${over}: ${members.length} cell`,
        other: say`${what} over ${over}: ${members.length} cells`,
      }),
      from: once(members.slice(0, this.#few).flatMap((member) => this.#sources(x, member))),
    };
  }

  /** The rows of a row's group that a summary counts. */
  #members(x: Node, codes: Int32Array, row: number): readonly number[] {
    const members: number[] = [];
    for (let other = 0; other < codes.length; other++) {
      if (codes[other] !== codes[row]) continue;
      const value = this.#at(x, other);
      if (value !== '' && !Number.isNaN(value)) members.push(other);
    }
    return members;
  }

  #at(node: Node, row: number): number | string {
    return at(
      kept(this.#values, node, () => values([node], this.#table)[0]),
      row,
    );
  }
}

function at(column: Float64Array | TextColumn, row: number): number | string {
  if (column instanceof TextColumn) return row < 0 ? '' : column.at(row);
  return row < 0 ? Number.NaN : column[row];
}

/** Each cell once, however often the formula names it. */
function once(nodes: readonly LineageNode[]): readonly LineageNode[] {
  const seen = new Set<string>();
  return nodes.filter(({ column, row, via }) => {
    const key = JSON.stringify([column, row, via]);
    return !seen.has(key) && seen.add(key);
  });
}
