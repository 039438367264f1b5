import { columnOf } from '../files/columnOf.ts';
import { dateOrder } from '../files/dateOrder.ts';
import { parseDate } from '../files/parseDate.ts';
import type { DecimalMark } from '../files/parseQuantity.ts';
import type { Problem } from '../files/problem.ts';
import { readCell } from '../files/readCell.ts';
import { schemas } from '../files/schemas.ts';
import { type Cell, cellAt } from '../sheet/cell.ts';
import { type ColumnInput, type Columns, rowCount, TextColumn } from '../sheet/column.ts';
import { type CellChanges, type ComputedDefinition, type Edit, inverse } from '../sheet/edits.ts';
import { Sheet } from '../sheet/sheet.ts';
import { editInWords } from './editInWords.ts';
import type { KeptTable, TableName } from './tables.ts';

/** Texts as typed into cells side by side: `texts[i][j]` goes to row `rows[i]` of the column `columns[j]`. */
export interface TypedBlock {
  readonly rows: readonly number[];
  readonly columns: readonly string[];
  readonly texts: readonly (readonly string[])[];
  readonly how: 'set' | 'fill' | 'paste';
  /** UCUM code of a number without a unit, column by column; the column's own where left out. */
  readonly unitOf?: (column: string) => string | undefined;
  /** The decimal mark of the block, a point where left out. */
  readonly mark?: DecimalMark;
}

/** What became of typed cells. */
export interface Typed {
  /** How many cells have changed. */
  readonly changed: number;
  /** How many of all typed could not be read: they keep their text and are left out of computing. */
  readonly unread: number;
}

/** A typed text that could not be read. */
export interface UnreadText {
  readonly text: string;
  readonly code: string;
  readonly expected: string;
  readonly remedy: string;
}

/** One entry of the record's history. */
export interface Step {
  readonly edits: readonly Edit[];
  readonly words: string;
}

/** Beside each column, the texts that could not be read. No heading holds the sign that is put in front. */
const MARK = '\u0000';
const textsOf = (column: string) => MARK + column;
/** The column that a change is about, and whether it is of its unread texts. */
export const columnOfTexts = (name: string) => (name.startsWith(MARK) ? name.slice(1) : undefined);

/**
 * A table as it is typed in: its cells, the texts that could not be read, the reader's own computed columns, and every
 * change undone and done again. Nothing is computed here.
 */
export class TableRecord {
  readonly #name: TableName;
  readonly #start: KeptTable;
  readonly #sheet: Sheet;
  #own: readonly ComputedDefinition[];
  readonly #done: Step[] = [];
  #undone: Step[] = [];
  readonly #listeners = new Set<(edits: readonly Edit[]) => void>();

  /** A record that begins with a table as it was kept or opened; columns that the table could have are there, empty. */
  constructor(name: TableName, table: KeptTable) {
    this.#name = name;
    this.#start = table;
    this.#own = table.own ?? [];
    const rows = rowCount(table.columns);
    const columns: Columns = Object.create(null);
    for (const { name: column, kind, unit } of schemas[name].columns)
      columns[column] =
        kind === 'text'
          ? new TextColumn(new Int32Array(rows).fill(-1), [])
          : { kind, unit, values: new Float64Array(rows).fill(Number.NaN) };
    Object.assign(columns, table.columns);
    for (const column of Object.keys(columns))
      columns[textsOf(column)] = unreadColumn(rows, table.entered?.get(column));
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

  /** The words that may stand in a column, where no others may. */
  words(column: string): readonly string[] | undefined {
    const schema = schemas[this.#name].columns.find(({ name }) => name === column);
    return schema?.understand && (schema.understand('\u0001') === undefined ? schema.words : undefined);
  }

  /** The text in a cell that could not be read, with what was expected; `undefined` where the cell is in order. */
  unread(column: string, row: number): UnreadText | undefined {
    if (!this.#sheet.names.includes(column)) return undefined;
    const texts = this.#sheet.column(textsOf(column)) as TextColumn;
    if (texts.codes[row] < 0) return undefined;
    const text = texts.at(row);
    const read = readCell(columnOf(this.#name, this.#described(column)), text);
    if (!('cell' in read)) return { text, ...read };
    // Among others, or in another unit, it could not be read; alone it could.
    return { text, code: 'not-read', expected: 'a cell that can be read one way only', remedy: 'Type it again' };
  }

  /** Reads typed texts into cells, as one change. */
  put(block: TypedBlock, more = 0): Typed {
    const { columns, texts, how } = block;
    const before = this.#sheet.rows;
    const added =
      more > 0
        ? [
            this.#rowsEdit(
              Array.from({ length: more }, () => ({})),
              before,
            ),
          ]
        : [];
    const rows = [...block.rows, ...Array.from({ length: more }, (_, i) => before + i)];
    const cells: CellChanges[] = [];
    let changed = 0;
    let unread = 0;
    columns.forEach((column, j) => {
      const plan = columnOf(this.#name, this.#described(column), block.unitOf?.(column));
      const written = texts.map((line) => line[j]);
      const days = plan.kind === 'date' ? written.flatMap((text) => parseDate(text) ?? []) : [];
      const dates = days.length > 1 ? dateOrder(days) : undefined;
      const values = written.map((text) => readCell(plan, text, { mark: block.mark, dates }));
      const kept = values.map((read, i) => ('cell' in read ? null : written[i].trim()));
      unread += kept.filter((text) => text !== null).length;
      const changes = [
        this.#changes(
          column,
          rows,
          values.map((read) => ('cell' in read ? read.cell : null)),
        ),
        this.#changes(textsOf(column), rows, kept),
      ];
      changed += new Set(changes.flatMap((change) => change.rows)).size;
      cells.push(...changes.filter((change) => change.rows.length > 0));
    });
    this.#do([...added, ...(cells.length > 0 ? [{ kind: 'cells', how, cells } as const] : [])]);
    return { changed, unread };
  }

  /** Puts what stands in the first of the rows, read or not, into the others. @returns how many cells have changed */
  fill(columns: readonly string[], [first, ...rest]: readonly number[]): number {
    return this.#cells('fill', columns, rest, (name) => cellAt(this.#sheet.column(name), first));
  }

  /** @returns how many cells have changed */
  clear(columns: readonly string[], rows: readonly number[]): number {
    return this.#cells('set', columns, rows, () => null);
  }

  /** Adds rows before row `at`. */
  addRows(rows: readonly Readonly<Record<string, Cell>>[], at = this.rows): void {
    if (rows.length > 0) this.#do([this.#rowsEdit(rows, at)]);
  }

  removeRows(rows: Iterable<number>): void {
    this.#sheet.removeRows(rows);
    const edit = this.#sheet.done.at(-1);
    if (edit === undefined) return;
    this.#sheet.undo();
    this.#sheet.beginHistory();
    this.#do([edit]);
  }

  /** Keeps a computed column; whether its formula holds is for the sheet to say that computes it. */
  addOwn(definition: ComputedDefinition): void {
    this.#do([{ kind: 'columns', how: 'add', places: [this.#own.length], columns: [definition] }]);
  }

  removeOwn(name: string): void {
    const place = this.#own.findIndex((one) => one.name === name);
    if (place >= 0) this.#do([{ kind: 'columns', how: 'remove', places: [place], columns: [this.#own[place]] }]);
  }

  /** What `undo` would take back, `redo` do again, in words. */
  get undoable(): string | undefined {
    return this.#done.at(-1)?.words;
  }

  get redoable(): string | undefined {
    return this.#undone.at(-1)?.words;
  }

  /** Whether anything has been changed since the record began. */
  get touched(): boolean {
    return this.#done.length + this.#undone.length > 0;
  }

  /** Takes the last change back. @returns what it was, in words */
  undo(): string | undefined {
    const step = this.#done.pop();
    if (step === undefined) return undefined;
    this.#undone.push(step);
    this.#apply(step.edits.map(inverse).reverse());
    return step.words;
  }

  /** Does again what was taken back last. @returns what it was, in words */
  redo(): string | undefined {
    const step = this.#undone.pop();
    if (step === undefined) return undefined;
    this.#done.push(step);
    this.#apply(step.edits);
    return step.words;
  }

  /** Tells of every change once it is done; an undo tells the edits that take back. @returns what ends it */
  subscribe(listener: (edits: readonly Edit[]) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** The table as it stands, in arrays of its own, with what can't be used in it. */
  table(): KeptTable {
    const columns: Columns = Object.create(null);
    const entered = new Map<string, ReadonlyMap<number, string>>();
    for (const name of this.names) {
      columns[name] = copyOf(this.#sheet.column(name));
      const texts = this.#sheet.column(textsOf(name)) as TextColumn;
      const found = new Map<number, string>();
      texts.codes.forEach((code, row) => {
        if (code >= 0) found.set(row, texts.levels[code]);
      });
      if (found.size > 0) entered.set(name, found);
    }
    return { ...this.#start, columns, entered, own: this.#own, problems: this.problems() };
  }

  /** What can't be used as it stands: of the file as a whole what was found when it was opened, of the cells what is so now. */
  problems(): readonly Problem[] {
    if (!this.touched) return this.#start.problems;
    const { file, problems } = this.#start;
    const found = problems.filter(({ row, code }) => row <= 1 && code !== 'same-row-twice');
    for (const column of this.names) {
      const texts = this.#sheet.column(textsOf(column)) as TextColumn;
      texts.codes.forEach((code, row) => {
        if (code < 0) return;
        const { text, ...why } = this.unread(column, row)!;
        found.push({ ...why, file, row: row + 2, column, value: text });
      });
    }
    return found.sort((a, b) => a.row - b.row);
  }

  #described(column: string) {
    const { kind, unit } = this.#sheet.describe(column);
    return { name: column, kind, unit };
  }

  #cells(
    how: 'set' | 'fill',
    columns: readonly string[],
    rows: readonly number[],
    value: (name: string) => Cell,
  ): number {
    const both = columns.map((column) =>
      [column, textsOf(column)].map((name) => {
        const cell = value(name);
        return this.#changes(
          name,
          rows,
          rows.map(() => cell),
        );
      }),
    );
    const cells = both.flat().filter((change) => change.rows.length > 0);
    if (cells.length > 0) this.#do([{ kind: 'cells', how, cells }]);
    return both.reduce((sum, pair) => sum + new Set(pair.flatMap((change) => change.rows)).size, 0);
  }

  #changes(name: string, rows: readonly number[], values: readonly Cell[]): CellChanges {
    const column = this.#sheet.column(name);
    const changed = { rows: [] as number[], before: [] as Cell[], after: [] as Cell[] };
    rows.forEach((row, i) => {
      const before = row < this.rows ? cellAt(column, row) : null;
      if (before === values[i]) return;
      changed.rows.push(row);
      changed.before.push(before);
      changed.after.push(values[i]);
    });
    return { name, kind: column.kind, ...changed };
  }

  #rowsEdit(rows: readonly Readonly<Record<string, Cell>>[], at: number): Edit {
    this.#sheet.addRows(rows, at);
    const edit = this.#sheet.done.at(-1)!;
    this.#sheet.undo();
    this.#sheet.beginHistory();
    return edit;
  }

  #do(edits: readonly Edit[]): void {
    if (edits.length === 0) return;
    const words = editInWords(edits, (column) => this.#titleOf(column));
    this.#apply(edits);
    this.#done.push({ edits, words });
    this.#undone = [];
  }

  #titleOf(name: string): string {
    const column = columnOfTexts(name) ?? name;
    return schemas[this.#name].columns.find((schema) => schema.name === column)?.title ?? column;
  }

  #apply(edits: readonly Edit[]): void {
    for (const edit of edits) {
      if (edit.kind !== 'columns') this.#sheet.replay(edit);
      else this.#own = ownAfter(this.#own, edit);
    }
    // Its own history would say everything twice.
    this.#sheet.beginHistory();
    for (const listener of this.#listeners) listener(edits);
  }
}

function ownAfter(
  own: readonly ComputedDefinition[],
  { how, places, columns }: Edit & { kind: 'columns' },
): readonly ComputedDefinition[] {
  const definitions = columns.filter((column) => 'formula' in column);
  if (how === 'add') return own.toSpliced(places[0], 0, ...definitions);
  return own.filter(({ name }) => !definitions.some((gone) => gone.name === name));
}

function unreadColumn(rows: number, texts: ReadonlyMap<number, string> = new Map()): TextColumn {
  const codes = new Int32Array(rows).fill(-1);
  const levels = [...new Set(texts.values())];
  const codeOf = new Map(levels.map((level, code) => [level, code]));
  for (const [row, text] of texts) codes[row] = codeOf.get(text)!;
  return new TextColumn(codes, levels);
}

function copyOf(column: ColumnInput): ColumnInput {
  if (column instanceof TextColumn) return new TextColumn(column.codes.slice(), [...column.levels]);
  const { kind, unit, values, error } = column;
  return { kind, unit, values: (values as Float64Array).slice(), ...(error && { error }) };
}
