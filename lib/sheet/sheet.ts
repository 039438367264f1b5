import { type ArqueroTable, fromArquero, toArquero } from './arquero.ts';
import type { Cell } from './cell.ts';
import type { ColumnInput, Columns, Kind } from './column.ts';
import { type ComputedDefinition, type Edit, History, inverse } from './edits.ts';
import { type LineageNode, lineage } from './formula/lineage.ts';
import { sentence } from './formula/sentence.ts';
import type { Node } from './formula/syntax.ts';
import { LiveTable } from './liveTable.ts';
import * as make from './makeEdit.ts';
import type { Relation } from './relation.ts';
import { asInput } from './rowEdits.ts';
import { rowsWhere, type View } from './rowsWhere.ts';
import type { Groups, Table } from './table.ts';
import type { ColumnOf, NameOf, NewRow, Sources } from './typing.ts';

/** What a column is. */
export interface ColumnDescription {
  readonly name: string;
  readonly title: string;
  readonly kind: Kind;
  /** UCUM code. */
  readonly unit: string;
  readonly origin: 'measured' | 'computed';
  /** Of a computed column. */
  readonly formula?: string;
}

export interface SheetOptions {
  /** Other rows that formulas may look at, by name. */
  readonly relations?: readonly Relation[];
  /** Computed columns that are there from the start: no undoing takes them away. */
  readonly computed?: readonly ComputedDefinition[];
}

/**
 * A table that people type in: measured columns, computed columns that follow them, and every edit undone and done again.
 * `C` is what TypeScript knows of its columns, so that a wrong name doesn't compile; plain `Sheet` takes any name.
 * Arrays that it hands out are live and for reading only: they follow later edits. Rows are counted from 0.
 */
export class Sheet<C extends Columns = Columns> implements Table {
  /** Columns that together tell one row from another. */
  readonly keys: readonly string[];
  readonly #table: LiveTable;
  #history = new History();
  readonly #listeners = new Set<(edit: Edit) => void>();

  protected constructor(columns: Sources, keys: readonly string[], { relations = [], computed = [] }: SheetOptions) {
    this.#table = new LiveTable(relations);
    const measured = Object.entries(columns).map(([name, column]) => ({ name, title: column.title, column }));
    const definitions = [...measured, ...computed];
    this.#table.define(
      definitions,
      definitions.map((_, i) => i),
    );
    for (const key of keys) this.#table.formula(key);
    this.keys = keys;
  }

  /**
   * A sheet over columns of one length. Their arrays are shared until a cell in them is set, and never written to.
   * @param keys  names of the columns that together tell one row from another
   * @throws TypeError where lengths differ, a key is no column, or values are neither a `Float64Array` nor texts
   * @example Sheet.from({ toe_angle_deg: { unit: 'deg', values: Float64Array.of(52) } }).rows // 1
   */
  static from<C extends Sources>(columns: C, keys: readonly NameOf<C>[] = [], options: SheetOptions = {}): Sheet<C> {
    return new Sheet<C>(columns, keys, options);
  }

  /** A sheet over the columns of an Arquero table (see `fromArquero` for what becomes of its values). */
  static fromArquero(table: ArqueroTable, keys: readonly string[] = [], options: SheetOptions = {}): Sheet {
    // biome-ignore lint/complexity/noThisInStatic: a sheet of feet is made by its own `from`, with its relations
    return this.from(fromArquero(table), keys, options);
  }

  // What stands in it

  /** How many rows there are. */
  get rows(): number {
    return this.#table.rows;
  }

  /** All columns, measured and computed, in order. */
  get names(): readonly NameOf<C>[] {
    return this.#table.names as readonly NameOf<C>[];
  }

  /** Other rows that formulas may look at. */
  get relations(): readonly Relation[] {
    return this.#table.relations;
  }

  /**
   * A column with its values, its unit and, where all it rests on is known to so much, one standard error a value.
   * @throws TypeError where there is no column of that name
   */
  column<N extends NameOf<C>>(name: N): ColumnOf<C[N]> {
    return this.#table.column(name) as ColumnOf<C[N]>;
  }

  /**
   * Rows that are equal in some columns, as one code a row from 0 in the order of their first rows.
   * @throws TypeError where there is no column of that name
   */
  groups(keys: readonly NameOf<C>[]): Groups {
    return this.#table.groups(keys);
  }

  partners(relation: Relation): Int32Array {
    return this.#table.partners(relation);
  }

  /** What a column is: title, kind, unit, whence. */
  describe(name: NameOf<C>): ColumnDescription {
    const formula = this.#table.formula(name)?.definition.formula;
    const { kind, unit } = this.#table.column(name);
    const title = this.#table.title(name);
    if (formula === undefined) return { name, title, kind, unit, origin: 'measured' };
    return { name, title, kind, unit, origin: 'computed', formula };
  }

  /** How a computed column comes about, in plain words; of a measured one its title. */
  sentence(name: NameOf<C>): string {
    const title = (other: string) => this.#table.title(other);
    const formula = this.#table.formula(name);
    return formula === undefined ? title(name) : sentence(formula.written, title, this.relations);
  }

  /**
   * The cells that a cell came from, where those came from, and so on down to what was measured.
   * @throws TypeError where there is no column of that name, RangeError for a row that isn't there
   */
  lineage(name: NameOf<C>, row: number): LineageNode {
    return lineage(name, row, this, (other) => {
      const formula = this.#table.formula(other);
      return formula && { text: formula.definition.formula, node: formula.node };
    });
  }

  /**
   * Which rows to see and in what order; nothing is moved.
   * @throws FormulaError where the filter can't be used or doesn't say yes or no, TypeError for a column that isn't there
   */
  rowsWhere(view: View<NameOf<C>>): Uint32Array {
    return rowsWhere(this, view);
  }

  /** Rows whose keys stood in an earlier row already. They are kept; a relation that could lead to several of them leads nowhere. */
  duplicateKeys(): Uint32Array {
    const { codes, count } = this.#table.groups(this.keys);
    const seen = new Uint8Array(count);
    return this.keys.length === 0 ? new Uint32Array(0) : Uint32Array.from(rowsAgain(codes, seen));
  }

  /** The checked formula of a computed column, for readings beyond these; `undefined` for a measured one. */
  checkedFormula(name: NameOf<C>): Node | undefined {
    return this.#table.formula(name)?.node;
  }

  /** An Arquero table over the same arrays. */
  toArquero(): ArqueroTable {
    return toArquero(this);
  }

  // Columns

  /**
   * Adds a computed column at the end.
   * @param definition  its formula may name any column that is there; `unit` is the UCUM code to give it in
   * @throws FormulaError with the place where the formula can't be used, or would lead round in a loop
   */
  add<N extends string>(definition: ComputedDefinition<N>): Sheet<C & Record<N, ColumnInput>> {
    return this.addAll([definition]) as Sheet<C & Record<N, ColumnInput>>;
  }

  /** Adds computed columns that may be made from each other, in any order, as one edit. */
  addAll(definitions: readonly ComputedDefinition[]): this {
    return this.#do(make.addingColumns(this.#table, definitions));
  }

  /** Adds a column to type in. */
  addMeasured<N extends string, I extends Sources[string]>(name: N, column: I): Sheet<C & Record<N, I>> {
    const definition = { name, title: column.title, column: asInput(column) };
    return this.#do(make.addingColumns(this.#table, [definition])) as Sheet<C & Record<N, I>>;
  }

  /**
   * Gives a computed column another formula; what is made from it must still work.
   * @throws FormulaError where one of them can't be used
   */
  replace(definition: ComputedDefinition<NameOf<C>>): this {
    return this.#do(make.changingFormula(this.#table, definition));
  }

  /**
   * Takes a column away.
   * @throws TypeError where other columns are made from it, with their names
   */
  remove(name: NameOf<C>): this {
    return this.#do(make.removingColumn(this.#table, name, this.keys));
  }

  /**
   * Gives a column another name.
   * @throws TypeError where other columns are made from it, with their names
   */
  rename(name: NameOf<C>, to: string): this {
    return this.#do(make.renamingColumn(this.#table, name, to, this.keys));
  }

  // Cells and rows

  /**
   * Puts a value into a measured column's cell; all that depends on it follows.
   * @param value  of the column's kind, `null` for missing; nothing is parsed
   * @throws TypeError for a computed column or a value of the wrong kind, RangeError for a row that isn't there
   */
  set(name: NameOf<C>, row: number, value: Cell): this {
    return this.#do(make.settingCell(this.#table, name, row, value));
  }

  /**
   * Puts one value into many rows of a column.
   * @throws TypeError for a computed column or a value of the wrong kind, RangeError for a row that isn't there
   */
  fill(name: NameOf<C>, rows: readonly number[], value: Cell): this {
    return this.#do(make.fillingCells(this.#table, name, rows, value));
  }

  /**
   * Puts a block of values in place, all or none.
   * @throws TypeError for a computed column or a value of the wrong kind, RangeError for a row that isn't there
   */
  paste(block: make.PastedBlock): this {
    return this.#do(make.pastingBlock(this.#table, block));
  }

  /** Adds rows before row `at`, at the end where left out. */
  addRows(rows: readonly NewRow<C>[], at = this.rows): this {
    return this.#do(make.addingRows(this.#table, rows as readonly Readonly<Record<string, Cell>>[], at));
  }

  /**
   * Takes rows away; those behind them move up.
   * @throws RangeError for a row that isn't there
   */
  removeRows(rows: Iterable<number>): this {
    return this.#do(make.removingRows(this.#table, rows));
  }

  // History

  /** Edits that stand, the last one last; `inWords` says what each was. */
  get done(): readonly Edit[] {
    return this.#history.done;
  }

  /** Edits taken back, which `redo` does again from the last one on. */
  get undone(): readonly Edit[] {
    return this.#history.undone;
  }

  /** Takes the last edit back. @returns that edit, `undefined` where there is none */
  undo(): Edit | undefined {
    const edit = this.#history.back();
    if (edit !== undefined) this.#apply(inverse(edit));
    return edit;
  }

  /** Does again what was taken back last. @returns that edit, `undefined` where there is none */
  redo(): Edit | undefined {
    const edit = this.#history.forth();
    if (edit !== undefined) this.#apply(edit);
    return edit;
  }

  /** Lets the history begin with what stands now. */
  beginHistory(): this {
    this.#history = new History();
    return this;
  }

  /** Does an edit that was made elsewhere, on a sheet in the same state. */
  replay(edit: Edit): this {
    return this.#do(edit);
  }

  /** Tells of every edit once it is done; an undo tells the edit that takes back. @returns what ends it */
  subscribe(listener: (edit: Edit) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  #do(edit: Edit | undefined): this {
    if (edit === undefined) return this;
    this.#apply(edit);
    this.#history.record(edit);
    return this;
  }

  #apply(edit: Edit): void {
    this.#table.apply(edit);
    for (const listener of this.#listeners) listener(edit);
  }
}

function* rowsAgain(codes: Int32Array, seen: Uint8Array): Iterable<number> {
  for (let row = 0; row < codes.length; row++) {
    if (seen[codes[row]] === 1) yield row;
    seen[codes[row]] = 1;
  }
}
