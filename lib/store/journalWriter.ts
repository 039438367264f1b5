import { say } from '../words/say.ts';
import { look } from './database.ts';
import { append, entriesAfter, type Stretch } from './entries.ts';
import type { JournalEntry } from './journal.ts';
import { RecordGone, whyNotKept } from './notKept.ts';
import type { Made } from './tableRecord.ts';
import { onTold, tellOthers } from './tabs.ts';

/** How long after a failure it is tried again. */
const AGAIN_MS = 5000;

/** A change with the table that it is of. */
export type MadeOf = Made & Pick<JournalEntry, 'table'>;

/** What a page does with its record as the journal goes on. */
export interface Page {
  /** Whatever has to stand in the database before the first entry does. */
  begin(): Promise<void>;
  /** Works entries of other pages in. @returns those made here, as they follow on them */
  meet(others: Stretch, mine: readonly JournalEntry[]): readonly JournalEntry[];
  /** Everything made here stands in the journal. */
  written(entries: readonly JournalEntry[]): void;
  /** Nothing is left to do for now. */
  rested(): Promise<void>;
  /** What `kept` and `why` say may have changed. */
  told(): void;
}

/**
 * The way of one page's changes into a record's journal, one after another, behind those of other pages. A change is kept
 * once it stands on the disk; until then `kept` says so, and `why` where it can't be.
 */
export class JournalWriter {
  /** The name of the device and of who types, for the entries to come. */
  device = '';
  who = '';
  readonly #record: string;
  readonly #page: Page;
  readonly #deaf: () => void;
  #seen: number;
  #counter: number;
  #pending: readonly JournalEntry[] = [];
  #work: Promise<void> | undefined;
  #heard = false;
  #trouble: unknown;
  #timer: ReturnType<typeof setTimeout> | undefined;

  /**
   * @param seen  the number of the last entry that the page has worked in
   * @param counter  the greatest counter of those entries
   */
  constructor(record: string, page: Page, seen: number, counter: number) {
    this.#record = record;
    this.#page = page;
    this.#seen = seen;
    this.#counter = counter;
    this.#deaf = onTold((told) => {
      if (told.kind === 'entries' && told.record === record) this.follow();
    });
  }

  get seen(): number {
    return this.#seen;
  }

  get counter(): number {
    return this.#counter;
  }

  /** What was made here and doesn't stand in the journal yet. */
  get pending(): readonly JournalEntry[] {
    return this.#pending;
  }

  get kept(): 'kept' | 'keeping' | 'not kept' {
    if (this.#trouble !== undefined) return 'not kept';
    return this.#pending.length > 0 ? 'keeping' : 'kept';
  }

  /** Why what was made last isn't kept, in words. */
  get why(): string | undefined {
    return this.#trouble === undefined ? undefined : whyNotKept(this.#trouble);
  }

  /**
   * Changes as the journal takes them; their counters come after all that is known, whatever the clock says.
   * @param others  entries that they follow on
   */
  signed(made: readonly MadeOf[], others: readonly JournalEntry[] = []): JournalEntry[] {
    const at = Date.now();
    this.#counter = greatest(this.#counter, others);
    return made.map((one) => {
      this.#counter = Math.max(this.#counter + 1, at);
      return { at, device: this.device, who: this.who, ...one, counter: this.#counter };
    });
  }

  write(made: MadeOf): void {
    this.#pending = [...this.#pending, ...this.signed([made])];
    this.#go();
  }

  /** Looks for what other pages have written. */
  follow(): void {
    this.#heard = true;
    this.#go();
  }

  /** Has written all that can be, and seen what others wrote. */
  async settled(): Promise<void> {
    this.follow();
    while (this.#work) await this.#work;
    if (this.#trouble !== undefined) throw this.#trouble;
  }

  /** Counts entries as seen that the page has written itself, by another way. */
  wrote(through: number): void {
    this.#seen = through;
    tellOthers({ kind: 'entries', record: this.#record });
  }

  /** Follows other pages no longer; what was made here is still written. */
  end(): void {
    this.#deaf();
  }

  #go(): void {
    this.#work ??= this.#run().finally(() => {
      this.#work = undefined;
      this.#page.told();
    });
    this.#page.told();
  }

  async #run(): Promise<void> {
    clearTimeout(this.#timer);
    try {
      await this.#page.begin();
      do {
        while (this.#heard || this.#pending.length > 0)
          if (this.#heard) await this.#meet();
          else await this.#append();
        this.#trouble = undefined;
        this.#page.told();
        await this.#page.rested();
      } while (this.#heard || this.#pending.length > 0);
    } catch (error) {
      this.#trouble = error;
      console.info(say`What was typed could not be kept:`, error);
      if (!(error instanceof RecordGone)) this.#timer = setTimeout(() => this.#go(), AGAIN_MS);
    }
  }

  async #append(): Promise<void> {
    const batch = this.#pending;
    if (await append(this.#record, this.#seen, batch)) {
      this.#pending = this.#pending.slice(batch.length);
      this.#page.written(batch);
      this.wrote(this.#seen + batch.length);
    } else this.#heard = true;
  }

  async #meet(): Promise<void> {
    this.#heard = false;
    const others = await look((transaction) => entriesAfter(transaction, this.#record, this.#seen));
    if (others.gone) throw new RecordGone();
    if (others.last === this.#seen) return;
    this.#seen = others.last;
    this.#counter = greatest(this.#counter, others.entries);
    this.#pending = this.#page.meet(others, this.#pending).map((entry) => {
      this.#counter++;
      return { ...entry, counter: this.#counter };
    });
  }
}

const greatest = (least: number, entries: readonly JournalEntry[]) =>
  entries.reduce((most, { counter }) => Math.max(most, counter), least);
