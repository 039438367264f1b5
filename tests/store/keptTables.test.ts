import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { type Columns, TextColumn } from '../../lib/sheet/column.ts';
import { forgetTables, keepTables, keptTables, onTablesKept } from '../../lib/store/keptTables.ts';

const columns: Columns = {
  limb: TextColumn.from(['LF', '', 'LF']),
  horse_id: { values: ['Bramble', '__proto__', ''] },
  toe_angle_deg: { unit: 'deg', values: Float64Array.of(52, Number.NaN, -0), error: Float64Array.of(0.5, 0.5, 0.5) },
};
const problem = {
  code: 'number',
  file: 'feet.csv',
  row: 3,
  column: 'toe',
  value: '52?',
  expected: 'a number',
  remedy: 'Type it again',
};
const own = { feet: { columns, problems: [problem], file: 'feet.csv' } };

test('nothing is kept at first', async () => {
  expect(await keptTables()).toBeUndefined();
});

test('tables come back as they were kept: typed arrays, missing numbers, minus zero and odd names', async () => {
  await keepTables(own);
  const back = await keptTables();
  expect(back?.feet?.problems).toEqual(own.feet.problems);
  expect(Object.keys(back?.feet?.columns ?? {})).toEqual(Object.keys(columns));
  expect(back?.feet?.columns.limb.values).toEqual(['LF', '', 'LF']);
  expect(back?.feet?.columns.limb).toBeInstanceOf(TextColumn);
  expect({ ...back?.feet?.columns, limb: 0 }).toEqual({ ...columns, limb: 0 });
  expect(back?.feet?.columns.toe_angle_deg.values).toBeInstanceOf(Float64Array);
});

test('a view is kept without the buffer behind it', async () => {
  const values = new Float64Array(1000).subarray(0, 2);
  await keepTables({ feet: { ...own.feet, columns: { toe: { values } } } });
  const kept = (await keptTables())?.feet?.columns.toe.values as Float64Array;
  expect(kept).toEqual(new Float64Array(2));
  expect(kept.buffer.byteLength).toBe(16);
});

test('a table that isn’t there is passed over, and twelve columns stay in their order', async () => {
  const names = Array.from({ length: 12 }, (_, place) => `${11 - place}`);
  const columns = Object.fromEntries(names.map((name) => [`c${name}`, { values: [name] }]));
  await keepTables({ feet: { ...own.feet, columns }, horses: undefined });
  const back = await keptTables();
  expect(Object.keys(back ?? {})).toEqual(['feet']);
  expect(Object.entries(back?.feet?.columns ?? {}).map(([name, { values }]) => [name, values[0]])).toEqual(
    names.map((name) => [`c${name}`, name]),
  );
});

test('keeping again replaces what was kept, and forgetting takes it away', async () => {
  await keepTables(own);
  await keepTables({ horses: own.feet });
  expect(Object.keys((await keptTables()) ?? {})).toEqual(['horses']);
  await forgetTables();
  expect(await keptTables()).toBeUndefined();
});

test('other pages are told of every change, this page is not', async () => {
  let toldHere = 0;
  onTablesKept(() => toldHere++);
  const other = new BroadcastChannel('evenhoof tables');
  let told = 0;
  const twice = new Promise<void>((resolve) => {
    other.onmessage = () => {
      if (++told === 2) resolve();
    };
  });
  await keepTables(own);
  await forgetTables();
  await twice;
  expect(toldHere).toBe(0);
  const heard = new Promise<void>((resolve) => onTablesKept(() => resolve()));
  other.postMessage('changed');
  await heard;
  other.close();
});
