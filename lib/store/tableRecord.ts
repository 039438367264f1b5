import { columnOf } from '../files/columnOf.ts';
import { dateOrder } from '../files/dateOrder.ts';
import { logKeys } from '../files/logKeys.ts';
import { parseDate } from '../files/parseDate.ts';
import type { DecimalMark } from '../files/parseQuantity.ts';
import type { Problem } from '../files/problem.ts';
import { ProblemLog } from '../files/problemLog.ts';
import { readCell } from '../files/readCell.ts';
import { schemas } from '../files/schemas.ts';
import { type Cell, toCell } from '../sheet/cell.ts';
import type { Kind } from '../sheet/column.ts';
import type { ComputedDefinition, Edit } from '../sheet/edits.ts';
import { dayOrder } from '../words/dayOrder.ts';
import { say } from '../words/say.ts';
import { Contents } from './contents.ts';
import { editInWords, type How } from './editInWords.ts';
import { newEntryId } from './entryId.ts';
import {
  type Entered,
  type JournalEdit,
  type JournalEntry,
  type RowId,
  type RowsColumn,
  type RowsEdit,
  undone,
} from './journal.ts';
import type { KeptTable, TableName } from './tables.ts';

/** Texts as typed into cells side by side: `texts[i][j]` goes to row `rows[i]` of the column `columns[j]`. */
export interface TypedBlock {
  readonly rows: readonly number[];
  readonly columns: readonly string[];
  readonly texts: readonly (readonly string[])[];
  readonly how: How;
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

/** A change as it has just been made here, to be written into the journal. */
export type Made = Pick<JournalEntry, 'id' | 'words' | 'edits'>;

/** Hears of every change by row number; `made` is left out where it came from elsewhere and stands in the journal already. */
export type RecordListener = (edits: readonly Edit[], made?: Made) => void;

/**
 * A table as it is typed in: its cells, the texts that could not be read, the reader's own computed columns, and every
 * change undone and done again. Nothing is computed here.
 */
export class TableRecord {
  readonly #name: TableName;
  readonly #start: KeptTable;
  readonly #contents: Contents;
  readonly #done: Made[] = [];
  #undone: Made[] = [];
  #touched = false;
  readonly #listeners = new Set<RecordListener>();

  /** A record that begins with a table as it was kept or opened; columns that the table could have are there, empty. */
  constructor(name: TableName, table: KeptTable) {
    this.#name = name;
    this.#start = table;
    this.#contents = new Contents(name, table);
  }

  get rows(): number {
    return this.#contents.rows;
  }

  /** The columns that are typed in, in order. */
  get names(): readonly string[] {
    return this.#contents.names;
  }

  /** The reader's own computed columns. */
  get own(): readonly ComputedDefinition[] {
    return this.#contents.own;
  }

  idAt(row: number): RowId {
    return this.#contents.idAt(row);
  }

  /** The words that may stand in a column, where no others may. */
  words(column: string): readonly string[] | undefined {
    const schema = schemas[this.#name].columns.find(({ name }) => name === column);
    return schema?.understand && (schema.understand('\u0001') === undefined ? schema.words : undefined);
  }

  /** The text in a cell that could not be read, with what was expected; `undefined` where the cell is in order. */
  unread(column: string, row: number): UnreadText | undefined {
    const texts = this.#contents.texts(column);
    if (!texts || texts.codes[row] < 0) return undefined;
    const text = texts.at(row);
    const read = readCell(columnOf(this.#name, this.#described(column)), text);
    if (!('cell' in read)) return { text, ...read };
    // Among others, or in another unit, it could not be read; alone it could.
    return { text, code: 'not-read', expected: say`a cell that can be read one way only`, remedy: say`Type it again` };
  }

  /** Reads typed texts into cells, as one change; `more` further lines of texts get new rows at the end. */
  put({ rows, columns, texts, how, unitOf, mark }: TypedBlock, more = 0): Typed {
    const id = newEntryId();
    const blank = Array.from({ length: more }, () => ({}));
    const added = more > 0 ? [this.#newRows(id, blank, this.rows)] : [];
    const ids = [...rows.map((row) => this.idAt(row)), ...added.flatMap((edit) => edit.rows)];
    let unread = 0;
    const cells = columns.map((column, j) => {
      const plan = columnOf(this.#name, this.#described(column), unitOf?.(column));
      const written = texts.map((line) => line[j]);
      const days = plan.kind === 'date' ? written.flatMap((text) => parseDate(text) ?? []) : [];
      const dates = days.length > 1 ? dateOrder(days) : dayOrder;
      const after = written.map((text): Entered => {
        const read = readCell(plan, text, { mark, dates });
        if ('cell' in read) return read.cell;
        unread++;
        return { text: text.trim() };
      });
      return this.#contents.cellsEdit(column, ids, after);
    });
    return { changed: this.#do([...added, ...cells], how, id), unread };
  }

  /** Puts what stands in the first of the rows, read or not, into the others. @returns how many cells have changed */
  fill(columns: readonly string[], [first, ...rest]: readonly number[]): number {
    return this.#cells('fill', columns, rest, (column) => this.#contents.entered(column, first));
  }

  /** @returns how many cells have changed */
  clear(columns: readonly string[], rows: readonly number[]): number {
    return this.#cells('set', columns, rows, () => null);
  }

  /** Adds rows before row `at`. */
  addRows(rows: readonly Readonly<Record<string, Cell>>[], at = this.rows): void {
    const id = newEntryId();
    if (rows.length > 0) this.#do([this.#newRows(id, rows, at)], 'set', id);
  }

  removeRows(rows: Iterable<number>): void {
    this.#do([this.#contents.removal(rows)]);
  }

  /** Keeps a computed column; whether its formula holds is for the sheet to say that computes it. */
  addOwn(definition: ComputedDefinition): void {
    const { name: column } = definition;
    this.#do([{ kind: 'own column', column, place: this.own.length, before: null, after: definition }]);
  }

  removeOwn(name: string): void {
    const place = this.own.findIndex((one) => one.name === name);
    if (place >= 0) this.#do([{ kind: 'own column', column: name, place, before: this.own[place], after: null }]);
  }

  /** Makes a change that was worked out elsewhere, such as going back to a day. @returns how many cells have changed */
  make(edits: readonly JournalEdit[], words: string): number {
    return this.#do(edits, 'set', newEntryId(), words);
  }

  /** What `undo` would take back, `redo` do again, in words. */
  get undoable(): string | undefined {
    return this.#done.at(-1)?.words;
  }

  get redoable(): string | undefined {
    return this.#undone.at(-1)?.words;
  }

  /** Whether anything has been changed since the record began, here or elsewhere. */
  get touched(): boolean {
    return this.#touched;
  }

  /** Takes the last change back, as far as nothing came after it from elsewhere. @returns what it was, in words */
  undo(): string | undefined {
    const step = this.#done.pop();
    if (step === undefined) return undefined;
    this.#undone.push(step);
    this.#again(step.edits.map(undone).reverse(), `taking back: ${step.words}`);
    return step.words;
  }

  /** Does again what was taken back last. @returns what it was, in words */
  redo(): string | undefined {
    const step = this.#undone.pop();
    if (step === undefined) return undefined;
    this.#done.push(step);
    this.#again(step.edits, `doing again: ${step.words}`);
    return step.words;
  }

  /**
   * Takes in changes that stand in the journal before some that were made here and don't stand in it yet.
   * @returns those made here, as they follow on the others
   */
  meet<Mine extends Made>(others: readonly Made[], mine: readonly Mine[]): Mine[] {
    const known = new Set(others.map(({ id }) => id));
    const back = this.#contents.apply(
      mine
        .flatMap(({ edits }) => edits)
        .map(undone)
        .reverse(),
    );
    const theirs = this.#contents.apply(others.flatMap(({ edits }) => edits));
    const told = [...back.edits, ...theirs.edits];
    const left = mine.filter(({ id }) => !known.has(id));
    const again = left.map((entry) => {
      const { done, edits } = this.#contents.apply(entry.edits);
      told.push(...edits);
      return { ...entry, edits: done };
    });
    this.#touched = true;
    if (told.length > 0) this.#tell(told);
    return again;
  }

  /** Tells of every change once it is done; an undo tells the edits that take back. @returns what ends it */
  subscribe(listener: RecordListener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** The table as it stands, in arrays that no later change touches, with what can't be used in it. */
  table(): KeptTable {
    return { ...this.#contents.table(), problems: this.problems() };
  }

  /** What can't be used as it stands: of the file as a whole what was found when it was opened, of the cells what is so now. */
  problems(): readonly Problem[] {
    if (!this.touched) return this.#start.problems;
    const { file, problems } = this.#start;
    const log = new ProblemLog(file, (row) => row + 2);
    const ofFile = problems.filter(({ row, code }) => code === 'title-row' || (row <= 1 && code !== 'same-row-twice'));
    log.problems.push(...ofFile);
    for (const [column, texts] of this.#contents.unread())
      for (const row of texts.keys()) {
        const { text, ...why } = this.unread(column, row)!;
        log.keep(column, row, text);
        log.problems.push({ ...why, file, row: log.fileRow(row), column, value: text });
      }
    const columns = new Map(this.names.map((name) => [name, this.#contents.column(name)]));
    logKeys(schemas[this.#name], columns, this.rows, log);
    return log.problems
      .filter(({ row, code }) => code !== 'no-key' || !this.#isBegun(row - 2))
      .sort((a, b) => a.row - b.row);
  }

  /** Whether nothing is measured in a row yet, so that nothing is lost while its keys are missing. */
  #isBegun(row: number): boolean {
    const { columns, keys } = schemas[this.#name];
    const measured = columns.filter(({ name, kind }) => kind === 'number' && !keys.includes(name));
    return measured.length > 0 && measured.every(({ name }) => this.#contents.entered(name, row) === null);
  }

  #described(name: string) {
    const { kind, unit }: { kind: Kind; unit: string } = this.#contents.column(name);
    return { name, kind, unit };
  }

  #cells(how: How, columns: readonly string[], rows: readonly number[], value: (column: string) => Entered): number {
    const ids = rows.map((row) => this.idAt(row));
    return this.#do(
      columns.map((column) => {
        const entered = value(column);
        return this.#contents.cellsEdit(
          column,
          ids,
          ids.map(() => entered),
        );
      }),
      how,
    );
  }

  #newRows(entry: string, rows: readonly Readonly<Record<string, Cell>>[], at: number): RowsEdit {
    const ids = rows.map((_, i) => `${entry}/${i}`);
    const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))].map((column): RowsColumn => {
      const { kind: holds, unit } = this.#contents.column(column);
      const cells = rows.map((row) => (Object.hasOwn(row, column) ? toCell(column, holds, row[column]) : null));
      return { column, holds, unit, cells };
    });
    const first = at > 0 ? this.idAt(Math.min(at, this.rows) - 1) : null;
    return { kind: 'rows', how: 'add', rows: ids, below: [first, ...ids.slice(0, -1)], columns };
  }

  #do(edits: readonly JournalEdit[], how: How = 'set', id = newEntryId(), words?: string): number {
    const applied = this.#contents.apply(edits);
    const { done } = applied;
    if (done.length === 0) return 0;
    const made = { id, words: words ?? editInWords(done, how, (column) => this.#titleOf(column)), edits: done };
    this.#done.push(made);
    this.#undone = [];
    this.#touched = true;
    this.#tell(applied.edits, made);
    return done.reduce((sum, edit) => sum + (edit.kind === 'cells' ? edit.rows.length : 0), 0);
  }

  #again(edits: readonly JournalEdit[], words: string): void {
    const applied = this.#contents.apply(edits, true);
    if (applied.done.length > 0) this.#tell(applied.edits, { id: newEntryId(), words, edits: applied.done });
  }

  #titleOf(name: string): string {
    return schemas[this.#name].columns.find((schema) => schema.name === name)?.title ?? name;
  }

  #tell(edits: readonly Edit[], made?: Made): void {
    for (const listener of this.#listeners) listener(edits, made);
  }
}
