import 'fake-indexeddb/auto';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { TextColumn } from '../../lib/sheet/column.ts';
import { forgetTables, keepTables, keptTables } from '../../lib/store/keptTables.ts';
import { forgetLeftBehind, leaveBehind, leftBehind } from '../../lib/store/leftBehind.ts';

const kept = new Map<string, string>();
let room = Number.POSITIVE_INFINITY;
beforeEach(() => {
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    removeItem: (key: string) => kept.delete(key),
    setItem(key: string, text: string) {
      if (text.length > room) throw new DOMException('Full', 'QuotaExceededError');
      kept.set(key, text);
    },
  });
});
afterEach(async () => {
  room = Number.POSITIVE_INFINITY;
  kept.clear();
  await forgetTables();
  vi.unstubAllGlobals();
});

const feet = {
  columns: {
    limb: TextColumn.from(['LF', '', 'LF']),
    marked: { values: ['{"marked":["numbers","AAAA"]}', '', '"'] },
    toe: { unit: 'deg', values: Float64Array.of(52, Number.NaN, -0), error: Float64Array.of(0.1, 0.1, 0.1) },
  },
  problems: [],
  file: 'feet.csv',
  entered: new Map([['toe', new Map([[1, 'steep']])]]),
};

test('tables that a page leaves behind come back as they were, to the bit', () => {
  expect(leftBehind()).toBeUndefined();
  expect(leaveBehind({ feet })).toBe(true);
  const back = leftBehind()?.feet;
  expect(Object.keys(back?.columns ?? {})).toEqual(['limb', 'marked', 'toe']);
  expect(back?.columns.limb).toBeInstanceOf(TextColumn);
  expect(back?.columns.limb.values).toEqual(['LF', '', 'LF']);
  expect(back?.columns.marked).toEqual(feet.columns.marked);
  expect(back?.columns.toe).toEqual(feet.columns.toe);
  expect(back?.entered).toEqual(feet.entered);
  forgetLeftBehind();
  expect(leftBehind()).toBeUndefined();
});

test('what was left behind is newer than the database, goes into it, and is forgotten', async () => {
  await keepTables({ feet: { ...feet, file: 'older.csv' } });
  leaveBehind({ feet });
  expect((await keptTables())?.feet?.file).toBe('feet.csv');
  expect(leftBehind()).toBeUndefined();
  expect((await keptTables())?.feet?.file).toBe('feet.csv');
});

test('tables that are kept later are newer than what was left behind', async () => {
  leaveBehind({ feet });
  await keepTables({ feet: { ...feet, file: 'newer.csv' } });
  expect((await keptTables())?.feet?.file).toBe('newer.csv');
});

test('where there is no room it says so, and nothing is lost of what is kept', async () => {
  await keepTables({ feet });
  room = 10;
  expect(leaveBehind({ feet: { ...feet, file: 'newer.csv' } })).toBe(false);
  expect((await keptTables())?.feet?.file).toBe('feet.csv');
});

test('a text that some other program left there is passed over', () => {
  kept.set('evenhoof left behind', '{"marked":["numbers","!"]}');
  expect(leftBehind()).toBeUndefined();
});
