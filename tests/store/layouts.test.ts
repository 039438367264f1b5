import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, expect, test, vi } from 'vitest';

/** The modules as a page has them that has just been opened, over a browser that keeps what it kept. */
async function page() {
  vi.resetModules();
  const [records, inUse, { takeLeftBehind }, { OpenRecord }, { toColumn }, { journalOf }, { isNewer }] =
    await Promise.all([
      import('../../lib/store/records.ts'),
      import('../../lib/store/recordInUse.ts'),
      import('../../lib/store/whenOwn.ts'),
      import('../../lib/store/openRecord.ts'),
      import('../../lib/sheet/column.ts'),
      import('../../lib/store/entries.ts'),
      import('../../lib/store/isNewer.ts'),
    ]);
  return { ...records, ...inUse, takeLeftBehind, OpenRecord, toColumn, journalOf, isNewer };
}

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

function raw(
  version: number | undefined,
  upgrade: (made: IDBDatabase, transaction: IDBTransaction) => void = () => {},
) {
  return new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open('evenhoof', version);
    request.onupgradeneeded = () => upgrade(request.result, request.transaction!);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

const done = (request: IDBRequest) =>
  new Promise<unknown>((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

const values = Float64Array.of(52, Number.NaN);
const limb = { codes: Int32Array.of(0, -1), levels: ['LF'] };
const entered = new Map([['toe_angle_deg', new Map([[1, 'steep']])]]);

function layout2(made: IDBDatabase, transaction: IDBTransaction, invented = false): void {
  made.createObjectStore('heads');
  made.createObjectStore('columns');
  const head = { problems: [], file: 'feet.csv', entered, own: [], names: ['limb', 'toe_angle_deg'], invented };
  transaction.objectStore('heads').put({ feet: head }, 'own');
  transaction.objectStore('columns').put(limb, ['own', 'feet', 0]);
  transaction.objectStore('columns').put({ unit: 'deg', values }, ['own', 'feet', 1]);
}

test.each([
  ['held columns apart', 2, layout2],
  [
    'held tables whole',
    1,
    (made: IDBDatabase, transaction: IDBTransaction) => {
      made.createObjectStore('tables');
      const columns = { limb: { ...limb, kind: 'text', unit: '1' }, toe_angle_deg: { unit: 'deg', values } };
      transaction.objectStore('tables').put({ feet: { columns, problems: [], file: 'feet.csv', entered } }, 'own');
    },
  ],
])(
  'tables of the layout that %s become a record of its own, and are typed in from then on',
  async (_, version, made) => {
    (await raw(version, made)).close();
    const { recordInUse, OpenRecord, toColumn } = await page();
    const info = (await recordInUse())!;
    expect(info).toMatchObject({ name: 'My herd' });
    const record = (await OpenRecord.open(info))!;
    const feet = record.tables().feet!;
    expect(Object.keys(feet.columns)).toEqual(['limb', 'toe_angle_deg']);
    expect(feet.columns.limb.values).toEqual(['LF', '']);
    expect(feet.columns.toe_angle_deg).toEqual({ unit: 'deg', values });
    expect(record.table('feet')!.unread('toe_angle_deg', 1)?.text).toBe('steep');
    record.table('feet')!.put({ rows: [1], columns: ['toe_angle_deg'], texts: [['50']], how: 'set' });
    await record.settled();
    const again = (await (await page()).OpenRecord.open(info))!;
    expect([...toColumn(again.tables().feet!.columns.toe_angle_deg).values]).toEqual([52, 50]);
  },
);

test('a changed copy of the demo herd stays marked as invented', async () => {
  (await raw(2, (made, transaction) => layout2(made, transaction, true))).close();
  const { recordInUse } = await page();
  expect(await recordInUse()).toMatchObject({ invented: true });
});

test('an older layout with nothing in it becomes an empty one', async () => {
  (await raw(1, (made) => void made.createObjectStore('tables'))).close();
  const { recordInUse, listRecords } = await page();
  expect(await recordInUse()).toBeUndefined();
  expect(await listRecords()).toEqual([]);
});

test('a record that a newer program wrote is refused and left as it was', async () => {
  const newer = await raw(99, (made) => void made.createObjectStore('something new'));
  await done(newer.transaction('something new', 'readwrite').objectStore('something new').put('precious', 'x'));
  newer.close();
  const { recordInUse, OpenRecord, newRecord, isNewer } = await page();
  await expect(recordInUse()).rejects.toSatisfy(isNewer);
  const record = OpenRecord.unwritten(newRecord('Barn'), { feet: { columns: {}, problems: [], file: '' } });
  record.table('feet')!.addRows([{}]);
  await expect(record.settled()).rejects.toSatisfy(isNewer);
  expect(record.why).toContain('a newer Evenhoof');
  const still = await raw(undefined);
  expect(still.version).toBe(99);
  expect(await done(still.transaction('something new').objectStore('something new').get('x'))).toBe('precious');
  still.close();
});

test('a page of an older program lets a newer one have the database, and keeps what is typed until it is closed', async () => {
  const { OpenRecord, newRecord } = await page();
  const record = OpenRecord.unwritten(newRecord('Barn'), { feet: { columns: {}, problems: [], file: '' } });
  await record.settled();
  (await raw(99)).close();
  record.table('feet')!.addRows([{ horse_id: 'Bella' }]);
  await expect(record.settled()).rejects.toThrow();
  expect(record.kept).toBe('not kept');
  expect(record.tables().feet!.columns.horse_id.values).toEqual(['Bella']);
});

async function typedThrice() {
  const all = await page();
  const info = all.newRecord('Barn');
  const columns = { toe_angle_deg: { unit: 'deg', values: Float64Array.of(1, 2, 3) } };
  const record = all.OpenRecord.unwritten(info, { feet: { columns, problems: [], file: 'feet.csv', opened: 'o' } });
  for (const [row, text] of ['41', '42', '43'].entries())
    record.table('feet')!.put({ rows: [row], columns: ['toe_angle_deg'], texts: [[text]], how: 'set' });
  await record.settled();
  return { ...all, info };
}

const angles = (record: Awaited<ReturnType<typeof typedThrice>>['OpenRecord']['prototype']) => [
  ...(record.tables().feet!.columns.toe_angle_deg.values as Float64Array),
];

test.each([
  ['another value', (entry: { words: string }) => ({ ...entry, words: 'something else' })],
  ['nothing in it', () => null],
  ['no edits', ({ words }: { words: string }) => ({ words })],
])('an entry of the journal with %s is left out and counted, and stays where it is', async (_, spoil) => {
  const { info } = await typedThrice();
  const base = await raw(undefined);
  const store = () => base.transaction('entries', 'readwrite').objectStore('entries');
  const key = [info.id, 2];
  const kept = (await done(store().get(key))) as { entry: { words: string }; sum: number };
  await done(store().put({ ...kept, entry: spoil(kept.entry) }, key));
  const { OpenRecord, journalOf } = await page();
  const record = (await OpenRecord.open(info))!;
  expect(record.broken).toEqual([2]);
  expect(angles(record)).toEqual([41, 2, 43]);
  record.table('feet')!.put({ rows: [1], columns: ['toe_angle_deg'], texts: [['44']], how: 'set' });
  await record.settled();
  expect(angles((await OpenRecord.open(info))!)).toEqual([41, 44, 43]);
  expect((await journalOf(info.id)).map(({ number }) => number)).toEqual([1, 3, 4]);
  base.close();
});

test('what a page had not written when it was left is written by the next, once', async () => {
  const kept: Record<string, string> = Object.create({
    getItem: (key: string) => kept[key] ?? null,
    setItem: (key: string, text: string) => {
      kept[key] = text;
    },
    removeItem: (key: string) => delete kept[key],
  });
  vi.stubGlobal('localStorage', kept);
  const { OpenRecord, newRecord, info } = await typedThrice();
  const record = (await OpenRecord.open(info))!;
  const type = (text: string) =>
    record.table('feet')!.put({ rows: [0], columns: ['toe_angle_deg'], texts: [[text]], how: 'set' });
  type('51');
  record.leave();
  // It was written after all, and the note is still there.
  const note = { ...kept };
  await record.settled();
  Object.assign(kept, note);
  const fresh = OpenRecord.unwritten(newRecord('Copy', true), { feet: record.tables().feet! });
  fresh.table('feet')!.put({ rows: [1], columns: ['toe_angle_deg'], texts: [['60']], how: 'set' });
  const [copy] = [fresh.info];
  fresh.leave();
  fresh.settled().catch(() => {});
  const next = await page();
  await next.takeLeftBehind(async () => ({ feet: record.tables().feet! }));
  expect(Object.keys(kept)).toEqual([]);
  const after = (await next.OpenRecord.open(info))!;
  expect(angles(after)).toEqual([51, 42, 43]);
  expect(await next.journalOf(info.id)).toHaveLength(4);
  expect(angles((await next.OpenRecord.open(copy))!)).toEqual([51, 60, 43]);
  vi.unstubAllGlobals();
});

test('what is left behind of a deleted record is let go', async () => {
  const { info, deleteRecord, takeLeftBehind, listRecords } = await typedThrice();
  const kept: Record<string, string> = Object.create({
    getItem: (key: string) => kept[key] ?? null,
    removeItem: (key: string) => delete kept[key],
  });
  const left = { record: { ...info, invented: true }, seen: 3, entries: [] };
  kept['evenhoof left behind x'] = JSON.stringify(left);
  vi.stubGlobal('localStorage', kept);
  await deleteRecord(info.id);
  await takeLeftBehind(async () => ({}));
  expect(await listRecords()).toEqual([]);
  expect(Object.keys(kept)).toEqual([]);
  vi.unstubAllGlobals();
});
