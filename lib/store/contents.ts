import { schemas } from '../files/schemas.ts';
import { type Cell, cellAt } from '../sheet/cell.ts';
import { type Column, type ColumnInput, type Columns, type Kind, rowCount, TextColumn } from '../sheet/column.ts';
import type { CellChanges, ComputedDefinition, Edit } from '../sheet/edits.ts';
import { Sheet } from '../sheet/sheet.ts';
import type { CellsEdit, Entered, JournalEdit, OwnColumnEdit, RowId, RowsColumn, RowsEdit } from './journal.ts';
import { idParts, newRowIds, placesForNew, placesOf, type RowIds, rowIdAt } from './rowIds.ts';
import type { KeptTable, TableName } from './tables.ts';

/** Beside a column, its texts that could not be read. No heading holds the sign that is put in front. */
const MARK = '\u0000';
const textsOf = (column: string) => MARK + column;
/** The column that a change is about, where it is of its unread texts. */
export const columnOfTexts = (name: string) => (name.startsWith(MARK) ? name.slice(1) : undefined);

const ORIGIN = `${MARK}${MARK}origin`;
const NUMBER = `${MARK}${MARK}number`;

/** Edits as they were done: those that changed nothing left out, `before` what really stood there. */
export interface Applied {
  readonly done: readonly JournalEdit[];
  /** The same by row number, each in the table as it then stood. */
  readonly edits: readonly Edit[];
}

/** What a table holds, changed by edits that name its rows for good. Nothing is computed here. */
export class Contents {
  readonly #start: KeptTable;
  readonly #given: Columns;
  readonly #sheet: Sheet;
  /** Whether rows have come or gone, so that they are no longer those that were opened, in order. */
  #moved: boolean;
  #own: readonly ComputedDefinition[];

  /** Columns that the table could have are there, empty. */
  constructor(name: TableName, table: KeptTable) {
    this.#start = table;
    this.#own = table.own ?? [];
    this.#moved = table.ids !== undefined;
    const rows = rowCount(table.columns);
    const columns: Columns = Object.create(null);
    const blank = blankColumns(rows);
    for (const { name: column, kind, unit } of schemas[name].columns) columns[column] = blank(kind, unit);
    Object.assign(columns, table.columns);
    for (const [column, texts] of table.entered ?? [])
      if (column in columns) columns[textsOf(column)] = textColumn(rows, texts);
    const { origins, codes, numbers } = table.ids ?? newRowIds(table.opened ?? 'table', rows);
    columns[ORIGIN] = new TextColumn(codes, origins);
    columns[NUMBER] = { kind: 'number', unit: '1', values: numbers };
    this.#given = columns;
    this.#sheet = Sheet.from(columns);
  }

  get rows(): number {
    return this.#sheet.rows;
  }

  /** The columns that are typed in, in order. */
  get names(): readonly string[] {
    return this.#sheet.names.filter((name) => columnOfTexts(name) === undefined);
  }

  /** The reader's own computed columns. */
  get own(): readonly ComputedDefinition[] {
    return this.#own;
  }

  has(column: string): boolean {
    return this.#sheet.names.includes(column);
  }

  /** @throws TypeError where there is none of the name */
  column(name: string): Column {
    return this.#sheet.column(name);
  }

  /** The texts of a column that could not be read; `undefined` where there never were any. */
  texts(column: string): TextColumn | undefined {
    return this.has(textsOf(column)) ? (this.#sheet.column(textsOf(column)) as TextColumn) : undefined;
  }

  entered(column: string, row: number): Entered {
    const texts = this.texts(column);
    return texts && texts.codes[row] >= 0 ? { text: texts.at(row) } : cellAt(this.#sheet.column(column), row);
  }

  get ids(): RowIds {
    const { levels, codes } = this.#sheet.column(ORIGIN) as TextColumn;
    return { origins: levels, codes, numbers: this.#sheet.column(NUMBER).values as Float64Array };
  }

  idAt(row: number): RowId {
    return rowIdAt(this.ids, row);
  }

  /** The edit that puts contents into cells of a column. */
  cellsEdit(column: string, rows: readonly RowId[], after: readonly Entered[]): CellsEdit {
    const { kind: holds, unit } = this.#sheet.column(column);
    return { kind: 'cells', column, holds, unit, rows, before: after.map(() => null), after };
  }

  /** The edit that takes rows away. */
  removal(rows: Iterable<number>): RowsEdit {
    const places = [...new Set(rows)].filter((row) => row >= 0 && row < this.rows).sort((a, b) => a - b);
    const { ids } = this;
    const columns = this.names.map((column): RowsColumn => {
      const { kind: holds, unit } = this.#sheet.column(column);
      return { column, holds, unit, cells: places.map((row) => this.entered(column, row)) };
    });
    return {
      kind: 'rows',
      how: 'remove',
      rows: places.map((row) => rowIdAt(ids, row)),
      below: places.map((row) => (row === 0 ? null : rowIdAt(ids, row - 1))),
      columns: columns.filter(({ cells }) => cells.some((cell) => cell !== null)),
    };
  }

  /**
   * Does edits in order. What names a row that is gone is passed over.
   * @param onlyWhereStill  leaves cells alone that hold something else by now than the edit says they held
   */
  apply(all: readonly JournalEdit[], onlyWhereStill = false): Applied {
    const done: JournalEdit[] = [];
    const edits: Edit[] = [];
    for (const edit of all) {
      const applied = this.#applied(edit, onlyWhereStill);
      if (!applied) continue;
      done.push(applied.edit);
      edits.push(applied.plain);
      if (applied.plain.kind !== 'columns') this.#sheet.replay(applied.plain);
      // Its own history would say everything twice.
      this.#sheet.beginHistory();
    }
    return { done, edits };
  }

  /** The table as it stands, in arrays that no later edit changes. */
  table(): KeptTable {
    const columns: Columns = Object.create(null);
    for (const name of this.names) columns[name] = this.columnAlone(name);
    const { origins, codes, numbers } = this.ids;
    const ids = { origins: [...origins], codes: codes.slice(), numbers: numbers.slice() };
    return { ...this.#start, columns, entered: this.unread(), own: this.#own, ...(this.#moved && { ids }) };
  }

  /** A column as it stands, in arrays that no later edit changes. */
  columnAlone(name: string): ColumnInput {
    const column = this.#sheet.column(name);
    const given = this.#given[name];
    if (column instanceof TextColumn) {
      if (given instanceof TextColumn && given.codes === column.codes) return given;
      return new TextColumn(column.codes.slice(), [...column.levels]);
    }
    // What came in is never written to.
    if (given?.values === column.values) return given;
    const { kind, unit, values, error } = column;
    return { kind, unit, values: values.slice(), ...(error && { error }) };
  }

  /** Every text that could not be read, by column and row. */
  unread(): ReadonlyMap<string, ReadonlyMap<number, string>> {
    const entered = new Map<string, ReadonlyMap<number, string>>();
    for (const name of this.names) {
      const found = new Map<number, string>();
      const texts = this.texts(name);
      texts?.codes.forEach((code, row) => {
        if (code >= 0) found.set(row, texts.levels[code]);
      });
      if (found.size > 0) entered.set(name, found);
    }
    return entered;
  }

  #applied(edit: JournalEdit, onlyWhereStill: boolean): { edit: JournalEdit; plain: Edit } | undefined {
    switch (edit.kind) {
      case 'cells':
        return this.#cells(edit, onlyWhereStill);
      case 'rows':
        return edit.how === 'add' ? this.#newRows(edit) : this.#rowsGone(edit);
      case 'own column':
        return this.#ownColumn(edit);
      case 'opened':
        return undefined;
    }
  }

  #cells(edit: CellsEdit, onlyWhereStill: boolean) {
    const { column, holds, unit } = edit;
    this.#make(column, holds, unit);
    const { kind } = this.#sheet.column(column);
    const found = { places: [] as number[], rows: [] as RowId[], before: [] as Entered[], after: [] as Entered[] };
    placesOf(this.ids, edit.rows).forEach((row, i) => {
      if (row < 0) return;
      const before = this.entered(column, row);
      const after = fitting(kind, edit.after[i]);
      if (alike(before, after) || (onlyWhereStill && !alike(before, edit.before[i]))) return;
      found.places.push(row);
      found.rows.push(edit.rows[i]);
      found.before.push(before);
      found.after.push(after);
    });
    const { places, rows, before, after } = found;
    if (places.length === 0) return undefined;
    const both: CellChanges[] = [
      { name: column, kind, rows: places, before: before.map(cellOf), after: after.map(cellOf) },
    ];
    const texts = { rows: places, before: before.map(textOf), after: after.map(textOf) };
    if (this.#makeTexts(column, [...texts.before, ...texts.after]))
      both.push({ name: textsOf(column), kind: 'text', ...texts });
    return {
      edit: { ...edit, rows, before, after },
      plain: { kind: 'cells', how: 'set', cells: both } satisfies Edit,
    };
  }

  #newRows(edit: RowsEdit) {
    const there = placesOf(this.ids, edit.rows);
    const fresh = edit.rows.flatMap((_, i) => (there[i] < 0 ? i : []));
    if (fresh.length === 0) return undefined;
    const rows = fresh.map((i) => edit.rows[i]);
    const below = fresh.map((i) => edit.below[i]);
    const { order, places } = placesForNew(this.ids, rows, below);
    const added: Columns = Object.create(null);
    const kept = edit.columns.map((column) => ({ ...column, cells: fresh.map((i) => column.cells[i]) }));
    for (const { column, holds, unit, cells } of kept) {
      this.#make(column, holds, unit);
      const { kind } = this.#sheet.column(column);
      const fit = order.map((i) => fitting(kind, cells[i]));
      added[column] = inputOf(kind, unit, fit.map(cellOf));
      const texts = fit.map(textOf);
      if (this.#makeTexts(column, texts)) added[textsOf(column)] = inputOf('text', '1', texts);
    }
    const parts = order.map((i) => idParts(rows[i]));
    added[ORIGIN] = { values: parts.map(({ origin }) => origin) };
    added[NUMBER] = { values: Float64Array.from(parts, ({ number }) => number) };
    this.#moved = true;
    return {
      edit: { ...edit, rows, below, columns: kept },
      plain: { kind: 'rows', how: 'add', rows: places, columns: added } satisfies Edit,
    };
  }

  #rowsGone(edit: RowsEdit) {
    const removal = this.removal(placesOf(this.ids, edit.rows));
    if (removal.rows.length === 0) return undefined;
    const rows = placesOf(this.ids, removal.rows);
    this.#moved = true;
    return { edit: removal, plain: { kind: 'rows', how: 'remove', rows, columns: {} } satisfies Edit };
  }

  #ownColumn(edit: OwnColumnEdit) {
    const { column, after } = edit;
    const at = this.#own.findIndex(({ name }) => name === column);
    const before = at < 0 ? null : this.#own[at];
    if (before === after) return undefined;
    const others = this.#own.filter((_, place) => place !== at);
    const place = at < 0 ? Math.min(edit.place, others.length) : at;
    this.#own = after ? others.toSpliced(place, 0, after) : others;
    const plain: Edit = {
      kind: 'columns',
      how: after ? 'add' : 'remove',
      places: [place],
      columns: [(after ?? before)!],
    };
    return { edit: { ...edit, place, before, after }, plain };
  }

  /** A column that a change from elsewhere has and this table hasn't. */
  #make(column: string, holds: Kind, unit: string): void {
    if (!this.has(column)) this.#sheet.addMeasured(column, blankColumns(this.rows)(holds, unit));
  }

  /** Makes room for texts where there are any. @returns whether there is room */
  #makeTexts(column: string, texts: readonly Cell[]): boolean {
    const name = textsOf(column);
    if (this.has(name)) return true;
    if (texts.every((text) => text === null)) return false;
    this.#sheet.addMeasured(name, textColumn(this.rows));
    return true;
  }
}

/** Whether two cells hold the same. */
export function alike(a: Entered, b: Entered): boolean {
  return a === b || (textOf(a) !== null && textOf(a) === textOf(b));
}

const textOf = (entered: Entered): string | null => (typeof entered === 'object' && entered ? entered.text : null);
const cellOf = (entered: Entered): Cell => (typeof entered === 'object' ? null : entered);

/** What a column of the kind can hold of it: a value of another kind is a text that waits to be mended. */
function fitting(kind: Kind, entered: Entered): Entered {
  const fits = typeof entered === 'object' || (typeof entered === 'string') === (kind === 'text');
  return fits ? entered : kind === 'text' ? String(entered) : { text: String(entered) };
}

function inputOf(kind: Kind, unit: string, cells: readonly Cell[]): ColumnInput {
  if (kind === 'text') return { kind, values: cells.map((cell) => (cell === null ? '' : String(cell))) };
  return { kind, unit, values: Float64Array.from(cells, (cell) => (cell === null ? Number.NaN : Number(cell))) };
}

/** Makes columns with nothing in them, over one array for all numbers and one for all texts. */
function blankColumns(rows: number): (kind: Kind, unit: string) => ColumnInput {
  const codes = new Int32Array(rows).fill(-1);
  const values = new Float64Array(rows).fill(Number.NaN);
  return (kind, unit) => (kind === 'text' ? new TextColumn(codes, []) : { kind, unit, values });
}

function textColumn(rows: number, texts: ReadonlyMap<number, string> = new Map()): TextColumn {
  const codes = new Int32Array(rows).fill(-1);
  const levels = [...new Set(texts.values())];
  const codeOf = new Map(levels.map((level, code) => [level, code]));
  for (const [row, text] of texts) codes[row] = codeOf.get(text)!;
  return new TextColumn(codes, levels);
}
