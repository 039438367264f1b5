import { say } from '../words/say.ts';
import { askToStay } from './askToStay.ts';
import { change, look, type Writable } from './database.ts';
import { append, type Stretch } from './entries.ts';
import { newEntryId, pageName } from './entryId.ts';
import type { JournalEdit, JournalEntry } from './journal.ts';
import { JournalWriter, type MadeOf } from './journalWriter.ts';
import { forgetLeftBehind, leaveBehind } from './leftBehind.ts';
import { deleteRecord, foundRecord } from './records.ts';
import { deviceName, setting } from './settings.ts';
import { readTables, writeTable } from './snapshot.ts';
import { TableRecord } from './tableRecord.ts';
import {
  entriesOf,
  type KeptTable,
  type KeptTables,
  type RecordHead,
  type RecordInfo,
  type TableHead,
  type TableName,
} from './tables.ts';

/** After how many entries the tables are written again, so that the next page has few to work in. */
const FOLD_AFTER = 500;

/**
 * A record as one page has it open: its tables as they stand, typed into, every change on its way into the journal, and
 * what other pages write worked in.
 */
export class OpenRecord {
  readonly info: RecordInfo;
  readonly #tables: KeptTables;
  readonly #records = new Map<TableName, TableRecord>();
  readonly #writer: JournalWriter;
  readonly #listeners = new Set<() => void>();
  /** As it was written last; none before the record stands in the database. */
  #head: RecordHead | undefined;
  /** Worked in here since then. */
  #since: JournalEntry[] = [];
  #broken: readonly number[] = [];
  #overtaken = false;
  #left = false;

  private constructor(info: RecordInfo, tables: KeptTables, head?: RecordHead) {
    this.info = info;
    this.#tables = tables;
    this.#head = head;
    const page = {
      begin: async () => {
        if (!this.#head) await this.#found();
      },
      meet: (others: Stretch, mine: readonly JournalEntry[]) => this.#meet(others, mine),
      written: (entries: readonly JournalEntry[]) => {
        this.#since.push(...entries);
      },
      rested: () => this.#rested(),
      told: () => this.#tell(),
    };
    this.#writer = new JournalWriter(info.id, page, head?.through ?? 0, head?.counter ?? 0);
  }

  /** A record out of the database, the journal worked in; `undefined` where it isn't there any more. */
  static async open(info: RecordInfo): Promise<OpenRecord | undefined> {
    const found = await look(async (transaction) => {
      const settings = transaction.objectStore('settings');
      const [head, device, who = ''] = await Promise.all([
        transaction.objectStore('heads').get(info.id),
        settings.get('device'),
        settings.get('who'),
      ]);
      return head && { head, device, who, tables: await readTables(transaction, info.id, head) };
    });
    if (!found) return undefined;
    const record = new OpenRecord(info, found.tables, found.head);
    record.#writer.device = found.device ?? (await deviceName());
    record.#writer.who = found.who;
    await record.#writer.settled();
    return record;
  }

  /** Tables that become a record of their own with the first change. */
  static unwritten(info: RecordInfo, tables: KeptTables): OpenRecord {
    return new OpenRecord(info, tables);
  }

  /** Whether anything was changed, so that it is a record of its own, or will be. */
  get own(): boolean {
    return !this.info.invented || this.#head !== undefined || this.#writer.pending.length > 0;
  }

  /** Whether it stands in the database. */
  get written(): boolean {
    return this.#head !== undefined;
  }

  get kept(): 'kept' | 'keeping' | 'not kept' {
    return this.#writer.kept;
  }

  /** Why what was typed last isn't kept, in words. */
  get why(): string | undefined {
    return this.#writer.why;
  }

  /** The numbers of entries that can't be read: they stay where they are and are left out. */
  get broken(): readonly number[] {
    return this.#broken;
  }

  /** Whether another page has written tables whole, so that the record has to be opened afresh. */
  get overtaken(): boolean {
    return this.#overtaken;
  }

  /** A table that can be typed in; `undefined` where the record has none. What is done to it goes into the journal. */
  table(name: TableName): TableRecord | undefined {
    const known = this.#records.get(name);
    const table = this.#tables[name];
    if (known || !table) return known;
    const record = new TableRecord(name, table);
    record.subscribe((_, made) => made && this.#writer.write({ ...made, table: name }));
    this.#records.set(name, record);
    return record;
  }

  /** All tables as they stand. */
  tables(): KeptTables {
    const now = entriesOf(this.#tables).map(([name, table]) => {
      const record = this.#records.get(name);
      return [name, record?.touched ? record.table() : table];
    });
    return Object.fromEntries(now);
  }

  /** Who types here, for the entries to come. */
  signedBy(who: string): void {
    this.#writer.who = who;
  }

  /** Takes tables from files in place of those before, which stay where the journal leads back to them. */
  openTables(opened: KeptTables): Promise<void> {
    const next: Partial<Record<TableName, KeptTable>> = {};
    const made = entriesOf(opened).map(([name, table]): MadeOf => {
      const id = newEntryId();
      next[name] = { ...table, opened: id };
      const edit: JournalEdit = { kind: 'opened', before: this.#tables[name]?.file ?? null, after: table.file };
      return { id, words: `opening ${table.file}`, table: name, edits: [edit] };
    });
    return this.writeWhole(next, made);
  }

  /**
   * Writes tables whole, with the entries that led to them. Every page that has the record open, this one too, has to open
   * it afresh afterwards.
   * @param foreign  entries of another device, as they are
   * @param made  changes made now, behind them
   */
  async writeWhole(next: KeptTables, made: readonly MadeOf[], foreign: readonly JournalEntry[] = []): Promise<void> {
    let through = 0;
    let written = false;
    while (!written) {
      await this.#writer.settled();
      const entries = [...foreign, ...this.#writer.signed(made, foreign)];
      const after = this.#writer.seen;
      through = after + entries.length;
      written = await append(this.info.id, after, entries, (transaction) =>
        this.#writeTables(transaction, through, next, entries),
      );
    }
    this.#overtaken = true;
    this.#writer.wrote(through);
    this.#tell();
  }

  /** Calls back when what is kept has changed, or the record is overtaken. @returns what ends it */
  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Has written all that can be, and seen what others wrote; fails where it can't be kept. */
  settled(): Promise<void> {
    return this.#writer.settled();
  }

  /** Everything made here is written; fails where it can't be. Where nothing was made nothing is. */
  async flushed(): Promise<void> {
    if (this.#writer.pending.length > 0) await this.#writer.settled();
  }

  /** Leaves what isn't written yet for the next page. */
  leave(): void {
    const { pending: entries, seen } = this.#writer;
    if (entries.length === 0) return;
    this.#left = true;
    leaveBehind(pageName, { record: this.info, seen, entries });
  }

  /** Takes the record off this device, journal and all. */
  async delete(): Promise<void> {
    this.close();
    await deleteRecord(this.info.id);
  }

  /** Follows other pages no longer; what was made here is still written. */
  close(): void {
    this.#writer.end();
  }

  #meet(others: Stretch, mine: readonly JournalEntry[]): readonly JournalEntry[] {
    for (const entry of others.entries) this.#since.push(entry);
    this.#broken = [...this.#broken, ...others.broken];
    if (others.whole) {
      // What was made here follows on tables that this page hasn't got.
      this.#overtaken = true;
      return mine;
    }
    const followed = new Map<string, JournalEntry>();
    for (const [name] of entriesOf(this.#tables)) {
      const theirs = others.entries.filter(({ table }) => table === name);
      const own = mine.filter(({ table }) => table === name);
      if (theirs.length > 0) for (const entry of this.table(name)!.meet(theirs, own)) followed.set(entry.id, entry);
      else for (const entry of own) followed.set(entry.id, entry);
    }
    return mine.flatMap(({ id }) => followed.get(id) ?? []);
  }

  async #rested(): Promise<void> {
    if (this.#left) forgetLeftBehind(pageName);
    this.#left = false;
    try {
      if (!this.info.invented) await askToStay();
      if (this.#since.length >= FOLD_AFTER && !this.#overtaken) await this.#fold();
    } catch (error) {
      // The journal has everything; the next time will do.
      console.info(say`The tables could not be written again:`, error);
    }
  }

  /** Writes the tables as they stand, so that the journal up to now need not be worked in again. */
  async #fold(): Promise<void> {
    const { seen } = this.#writer;
    this.#head = await change((transaction) => this.#writeTables(transaction, seen));
    this.#since = [];
  }

  /** The tables as they stand, and those that come in their places, with all of the journal in them. */
  async #writeTables(
    transaction: Writable,
    through: number,
    next: KeptTables = {},
    entries: readonly JournalEntry[] = [],
  ): Promise<RecordHead> {
    const heads = transaction.objectStore('heads');
    const head = (await heads.get(this.info.id)) ?? this.#head!;
    // Another page was here first.
    if (head.through >= through) return head;
    const tables: Partial<Record<TableName, TableHead>> = {};
    const earlier = [...head.earlier];
    const asked: Promise<unknown>[] = [];
    const put = (name: TableName, table: KeptTable, ...how: [TableHead | { stock: string }, ReadonlySet<string>?]) => {
      const writing = writeTable(transaction, this.info.id, table, ...how);
      asked.push(writing.done);
      tables[name] = writing.head;
      return writing.head;
    };
    for (const [name, table] of entriesOf(this.tables())) {
      const before = head.tables[name];
      if (!before) continue;
      const opening = entries.findIndex((entry) => entry.table === name && entry.edits.some(isOpening));
      if (next[name] && opening < 0) continue;
      const old = put(name, table, before, this.#touched(name, table));
      if (opening >= 0) earlier.push({ until: this.#writer.seen + 1 + opening, table: name, head: old });
    }
    for (const [name, table] of entriesOf(next)) put(name, table, { stock: newEntryId() });
    const after = { through, counter: this.#writer.counter, tables, earlier };
    await Promise.all([...asked, heads.put(after, this.info.id)]);
    return after;
  }

  /** The columns of a table that were changed since it was written. */
  #touched(name: TableName, { columns }: KeptTable): ReadonlySet<string> {
    const edits = this.#since.filter(({ table }) => table === name).flatMap((entry) => entry.edits);
    if (edits.some(({ kind }) => kind === 'rows')) return new Set(Object.keys(columns));
    return new Set(edits.flatMap((edit) => (edit.kind === 'cells' ? edit.column : [])));
  }

  async #found(): Promise<void> {
    this.#head = await foundRecord(this.info, this.#tables);
    this.#writer.device = await deviceName();
    this.#writer.who = (await setting('who')) ?? '';
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

const isOpening = (edit: JournalEdit) => edit.kind === 'opened';
