import { say } from '../words/say.ts';
import type { Cell } from './cell.ts';
import { type Column, type Columns, TextColumn, toColumn } from './column.ts';
import { ComputedColumn } from './computedColumn.ts';
import type { ComputedDefinition, Definition, Edit, MeasuredDefinition } from './edits.ts';
import { type Formula, fitFormulas } from './fitFormulas.ts';
import { inline } from './formula/inline.ts';
import { parse } from './formula/parse.ts';
import type { Node } from './formula/syntax.ts';
import { dependencyOrder } from './graph.ts';
import { Engine } from './incremental/engine.ts';
import { InputStage } from './incremental/inputStage.ts';
import type { ColumnStage } from './incremental/stage.ts';
import { kept } from './kept.ts';
import { KeptErrors, type MeasuredFormula } from './keptErrors.ts';
import { nearest } from './nearest.ts';
import type { Relation } from './relation.ts';
import { asInput, withoutRows, withRows } from './rowEdits.ts';
import type { Groups, Table } from './table.ts';
import { columnsUsed } from './uses.ts';

interface Measured {
  readonly title?: string;
  readonly stage: InputStage;
}

/**
 * Columns typed in and columns computed from them. A change is worked in when next someone reads.
 * Its arrays are live: what `column` hands out follows later changes, and is to be read only.
 */
export class LiveTable implements Table {
  #rows = 0;
  #names: readonly string[] = [];
  #measured = new Map<string, Measured>();
  #formulas = new Map<string, Formula>();
  #engine = new Engine(this.#site());
  readonly #stages = new Map<string, ColumnStage>();
  readonly #shown = new Map<string, Column>();
  readonly #errors = new KeptErrors();
  #stale = false;

  constructor(readonly relations: readonly Relation[]) {}

  get rows(): number {
    return this.#rows;
  }

  get names(): readonly string[] {
    return this.#names;
  }

  column(name: string): Column {
    this.#refresh();
    return kept(this.#shown, name, () => {
      const { column } = this.#stage(name);
      const formula = this.#formulas.get(name);
      if (formula === undefined || column.kind === 'text') return column;
      return new ComputedColumn(formula, column.values, {
        ready: () => this.#errors.has(name),
        values: () => this.#errors.of(name, () => this.#overMeasured(name), this),
      });
    });
  }

  groups(keys: readonly string[]): Groups {
    const stage = this.#engine.groups(keys);
    this.#refresh(stage.fresh);
    return stage.groups;
  }

  partners(relation: Relation): Int32Array {
    const stage = this.#engine.partners(relation);
    this.#refresh(stage.fresh);
    return stage.partners;
  }

  /** A measured column as it stands, without working changes into others; `undefined` for a computed one. */
  measured(name: string): Column | undefined {
    this.#stage(name);
    return this.#measured.get(name)?.stage.column;
  }

  /** The formula of a computed column, `undefined` for a measured one. */
  formula(name: string): Formula | undefined {
    this.#stage(name);
    return this.#formulas.get(name);
  }

  /** The formula of a computed column over measured columns only, `undefined` for a measured column. */
  measuredFormula(name: string): Node | undefined {
    const formula = this.formula(name);
    return formula && inline(formula.node, (other) => this.#formulas.get(other)?.node);
  }

  /** The formula of a computed column over measured columns, and which those are. */
  #overMeasured(name: string): MeasuredFormula {
    const columns = new Set<string>();
    const seen = new Set<string>();
    const visit = (other: string) => {
      if (seen.has(other)) return;
      seen.add(other);
      const formula = this.#formulas.get(other);
      if (formula === undefined) columns.add(other);
      else for (const need of formula.needs.keys()) visit(need);
    };
    visit(name);
    return { node: this.measuredFormula(name)!, columns };
  }

  /** The computed columns that are made from one directly. */
  usersOf(name: string): readonly string[] {
    this.#stage(name);
    return this.#names.filter((other) => this.#formulas.get(other)?.needs.has(name));
  }

  /** What people call a column: its name where it came without a title. */
  title(name: string): string {
    const { title } = this.formula(name)?.definition ?? this.#measured.get(name)!;
    return title ?? name;
  }

  /** All that it takes to define the column again, today's values included. */
  definition(name: string): Definition {
    this.#refresh();
    const formula = this.formula(name);
    if (formula !== undefined) return formula.definition;
    const { title, stage } = this.#measured.get(name)!;
    return { name, title, column: asInput(stage.column) };
  }

  /**
   * Checks that a formula would not lead round in a loop if it stood in the column of its name, whatever stands there now.
   * @throws FormulaError
   */
  refuseLoop(definition: ComputedDefinition): void {
    const used = columnsUsed(parse(definition.formula), this.relations, this.#names);
    const needs = (name: string) => (name === definition.name ? used : this.#formulas.get(name)?.needs)?.keys() ?? [];
    if (!('loop' in dependencyOrder([definition.name], needs))) return;
    const others = [...this.#formulas.values()].map((formula) => formula.definition);
    const measured = new Map([...this.#measured].map(([name, { stage }]) => [name, stage.column]));
    measured.delete(definition.name);
    const definitions = [...others.filter(({ name }) => name !== definition.name), definition];
    fitFormulas(definitions, { measured, relations: this.relations, known: this.#formulas });
  }

  /** Does an edit. An edit that can't be done throws, and then nothing has changed. */
  apply(edit: Edit): void {
    switch (edit.kind) {
      case 'cells':
        for (const { name, rows, after } of edit.cells) {
          for (let i = 0; i < rows.length; i++) this.#write(name, rows[i], after[i]);
          this.#errors.change(name, rows, this.#rows);
        }
        break;
      case 'rows':
        if (edit.how === 'add') this.#insertRows(edit.rows, edit.columns);
        else this.#deleteRows(edit.rows);
        break;
      case 'columns':
        if (edit.how === 'add') this.define(edit.columns, edit.places);
        else this.#undefine(edit.columns.map(({ name }) => name));
        break;
      case 'formula':
        this.#redefine(edit.after);
        break;
      case 'name':
        this.#rename(edit.before, edit.after);
        break;
    }
  }

  /**
   * Adds columns, measured and computed, in any order.
   * @param places  where each stands afterwards, ascending
   * @throws FormulaError or TypeError, and then nothing has changed
   */
  define(definitions: readonly Definition[], places: readonly number[]): void {
    const names = [...this.#names];
    for (const [i, { name }] of definitions.entries()) {
      if (names.includes(name))
        throw new TypeError(`There are two columns ${name}. Choose another name for one of them`);
      names.splice(places[i], 0, name);
    }
    const measured = new Map(this.#measured);
    const computed = [...this.#formulas.values()].map(({ definition }) => definition);
    let rows = this.#names.length === 0 ? undefined : this.#rows;
    for (const definition of definitions) {
      if ('formula' in definition) {
        computed.push(definition);
        continue;
      }
      const { name, title, column } = definition;
      rows = checkedLength(definition, rows);
      measured.set(name, { title, stage: new InputStage(toColumn(column)) });
    }
    this.#fit(computed, measured);
    this.#names = names;
    this.#rows = rows ?? 0;
    this.#arrange();
  }

  /** Takes columns away; no other column may be made from them. */
  #undefine(gone: readonly string[]): void {
    for (const name of gone) {
      this.#measured.delete(name);
      this.#formulas.delete(name);
    }
    this.#names = this.#names.filter((name) => !gone.includes(name));
    this.#arrange();
  }

  /** Gives a computed column another formula, or one of the same name to a computed column of another definition. */
  #redefine(after: ComputedDefinition): void {
    const definitions = [...this.#formulas.values()].map(({ definition }) => definition);
    this.#fit(
      definitions.map((before) => (before.name === after.name ? after : before)),
      this.#measured,
    );
    this.#arrange();
  }

  /** Gives a column that no other is made from another name. */
  #rename(from: string, to: string): void {
    const renamed = (name: string) => (name === from ? to : name);
    const definitions = [...this.#formulas.values()].map(({ definition }) =>
      definition.name === from ? { ...definition, name: to } : definition,
    );
    this.#fit(definitions, new Map([...this.#measured].map(([name, column]) => [renamed(name), column])));
    this.#names = this.#names.map(renamed);
    this.#arrange();
  }

  /** @param cell  of the column's kind */
  #write(name: string, row: number, cell: Cell): void {
    this.#measured.get(name)!.stage.write(row, cell);
    this.#change();
  }

  /** @param rows  where the new rows stand afterwards, ascending */
  #insertRows(rows: readonly number[], columns: Columns): void {
    const added = new Map(Object.entries(columns));
    this.#replaceInputs(this.#rows + rows.length, (column, name) => withRows(column, rows, added.get(name)));
  }

  /** @param rows  ascending */
  #deleteRows(rows: readonly number[]): void {
    this.#replaceInputs(this.#rows - rows.length, (column) => withoutRows(column, rows));
  }

  #replaceInputs(rows: number, replace: (column: Column, name: string) => Column): void {
    for (const [name, { title, stage }] of this.#measured)
      this.#measured.set(name, { title, stage: new InputStage(replace(stage.column, name)) });
    this.#rows = rows;
    this.#engine = new Engine(this.#site());
    this.#arrange();
  }

  /** Checks all formulas before anything is changed. */
  #fit(definitions: readonly ComputedDefinition[], measured: Map<string, Measured>): void {
    const columns = new Map([...measured].map(([name, { stage }]) => [name, stage.column]));
    this.#formulas = fitFormulas(definitions, { measured: columns, relations: this.relations, known: this.#formulas });
    this.#measured = measured;
  }

  #arrange(): void {
    this.#stages.clear();
    this.#errors.clear();
    this.#engine.arrange(() => {
      for (const [name, { stage }] of this.#measured) this.#stages.set(name, this.#engine.input(stage));
      for (const [name, { node }] of this.#formulas) this.#stages.set(name, this.#engine.formula(node));
    });
    this.#change();
  }

  #change(): void {
    this.#stale = true;
    this.#shown.clear();
  }

  #refresh(needed = this.#stale): void {
    if (!needed && !this.#stale) return;
    this.#engine.refresh();
    this.#stale = false;
  }

  #stage(name: string): ColumnStage {
    const stage = this.#stages.get(name);
    if (stage !== undefined) return stage;
    const near = nearest(name, this.#names);
    const remedy =
      near === undefined ? say`There are ${this.#names.join(', ') || say`none yet`}` : say`Did you mean ${near}?`;
    throw new TypeError(`There is no column ${name}. ${remedy}`);
  }

  /** The engine's view: stages as they are, so that reading one doesn't refresh. */
  #site() {
    const table = this;
    return {
      get rows() {
        return table.#rows;
      },
      get names() {
        return table.#names;
      },
      get relations() {
        return table.relations;
      },
      column: (name: string) => table.#stage(name).column,
      stage: (name: string) => table.#stage(name),
    };
  }
}

function checkedLength({ name, column }: MeasuredDefinition, rows: number | undefined): number {
  // Text that has its codes already need not be spelt out to be counted.
  const coded = column instanceof TextColumn;
  const values = coded ? column.codes : column.values;
  const isText = coded || (Array.isArray(values) && values.every((value) => typeof value === 'string'));
  if (!(values instanceof Float64Array) && !isText)
    throw new TypeError(`The column ${name}: its values were expected as a Float64Array or a list of texts`);
  for (const { length } of column.error === undefined ? [values] : [values, column.error])
    if (rows !== undefined && length !== rows)
      throw new TypeError(`The column ${name} has ${length} rows where the others have ${rows}`);
    else rows = length;
  return rows!;
}
