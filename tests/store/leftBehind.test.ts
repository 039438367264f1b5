import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { JournalEntry } from '../../lib/store/journal.ts';
import { forgetLeftBehind, leaveBehind, leftBehind } from '../../lib/store/leftBehind.ts';

let kept: Record<string, string> & Partial<Storage>;
let room = Number.POSITIVE_INFINITY;
beforeEach(() => {
  room = Number.POSITIVE_INFINITY;
  // Keys are properties, as in a browser; methods are not among them.
  kept = Object.create({
    getItem: (key: string) => kept[key] ?? null,
    removeItem: (key: string) => delete kept[key],
    setItem(key: string, text: string) {
      if (text.length > room) throw new DOMException('Full', 'QuotaExceededError');
      kept[key] = text;
    },
  });
  vi.stubGlobal('localStorage', kept);
});
afterEach(() => vi.unstubAllGlobals());

const entry: JournalEntry = {
  id: 'p-1',
  at: 5,
  counter: 5,
  device: 'd',
  who: '',
  words: 'typing in Toe angle',
  table: 'feet',
  edits: [
    {
      kind: 'cells',
      column: '__proto__',
      holds: 'text',
      unit: '1',
      rows: ['o/0'],
      before: [null],
      after: [{ text: '"' }],
    },
  ],
};
const left = { record: { id: 'r', name: 'Barn', made: 1 }, seen: 7, entries: [entry] };

test('what a page leaves behind comes back as it was, each page’s by itself', () => {
  expect(leftBehind()).toEqual([]);
  leaveBehind('a', left);
  leaveBehind('b', { ...left, seen: 8 });
  expect(leftBehind()).toEqual([
    ['a', left],
    ['b', { ...left, seen: 8 }],
  ]);
  forgetLeftBehind('a');
  expect(leftBehind().map(([page]) => page)).toEqual(['b']);
});

test('what some other program left there is passed over', () => {
  kept['evenhoof left behind x'] = '{"entries":';
  kept['evenhoof left behind y'] = '{"entries":[]}';
  kept.other = '1';
  expect(leftBehind()).toEqual([]);
});

test('where there is no room, or no such storage, nothing is left and nothing fails', () => {
  room = 10;
  leaveBehind('a', left);
  expect(leftBehind()).toEqual([]);
  vi.stubGlobal('localStorage', undefined);
  leaveBehind('a', left);
  forgetLeftBehind('a');
  expect(leftBehind()).toEqual([]);
});
