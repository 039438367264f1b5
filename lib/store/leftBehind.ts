import type { JournalEntry } from './journal.ts';
import type { RecordInfo } from './tables.ts';

const KEY = 'evenhoof left behind ';

/** What a page had not written yet when it was left. */
export interface LeftBehind {
  readonly record: RecordInfo;
  /** The number of the last entry that the page knew in the journal. */
  readonly seen: number;
  readonly entries: readonly JournalEntry[];
}

/**
 * Leaves entries for the next page, at once: what is asked of the database while a page is being left may never be done.
 * @param page  the name of this page alone
 */
export function leaveBehind(page: string, left: LeftBehind): void {
  try {
    localStorage.setItem(KEY + page, JSON.stringify(left));
  } catch {
    // Where nothing can be kept, or no room is left, it was never said to be.
  }
}

/** What pages have left behind, by page. */
export function leftBehind(): readonly (readonly [page: string, left: LeftBehind])[] {
  try {
    return Object.keys(localStorage)
      .filter((key) => key.startsWith(KEY))
      .flatMap((key) => {
        const left = read(localStorage.getItem(key));
        return left ? [[key.slice(KEY.length), left] as const] : [];
      });
  } catch {
    return [];
  }
}

/** Takes it away once it is in the database. */
export function forgetLeftBehind(page: string): void {
  try {
    localStorage.removeItem(KEY + page);
  } catch {
    // Where nothing can be kept nothing was left.
  }
}

function read(text: string | null): LeftBehind | undefined {
  try {
    const left = JSON.parse(text ?? '');
    return Array.isArray(left?.entries) && typeof left.record?.id === 'string' ? left : undefined;
  } catch {
    return undefined;
  }
}
