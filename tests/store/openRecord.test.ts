import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { readTable } from '../../lib/files/readTable.ts';
import { toColumn } from '../../lib/sheet/column.ts';
import { journalOf } from '../../lib/store/entries.ts';
import { OpenRecord } from '../../lib/store/openRecord.ts';
import { newRecord, recordInUse } from '../../lib/store/recordInUse.ts';
import { deleteRecord, listRecords } from '../../lib/store/records.ts';
import type { KeptTable, RecordInfo } from '../../lib/store/tables.ts';

const csv = `horse_id,date,limb,toe_angle_deg
Bella,2026-03-09,LF,52
Bella,2026-03-09,RF,about 50
Otto,2026-03-09,LF,48
`;

function opened(text = csv, file = 'feet.csv'): KeptTable {
  const { columns, problems, entered } = readTable(text, { file });
  return { columns, problems, entered, file };
}

/** A new record out of one file. */
async function begun(text?: string): Promise<RecordInfo> {
  const info = newRecord('Barn');
  const record = OpenRecord.unwritten(info, {});
  await record.openTables({ feet: opened(text) });
  record.close();
  return info;
}

const open = async (info: RecordInfo) => (await OpenRecord.open(info))!;
const put = (record: OpenRecord, column: string, row: number, text: string) =>
  record.table('feet')!.put({ rows: [row], columns: [column], texts: [[text]], how: 'set' });
const values = (record: OpenRecord, column: string) => [...toColumn(record.tables().feet!.columns[column]).values];

test('a table from a file is a record’s, and so is what was typed in since', async () => {
  const info = await begun();
  expect(await recordInUse()).toEqual(info);
  const record = await open(info);
  put(record, 'toe_angle_deg', 0, '53');
  put(record, 'toe_angle_deg', 2, 'steep');
  record.table('feet')!.addRows([{ horse_id: 'Ada' }], 1);
  record.table('feet')!.undo();
  record.table('feet')!.removeRows([1]);
  record.table('feet')!.addOwn({ name: 'twice', formula: '2 * toe_angle_deg' });
  expect(record.kept).toBe('keeping');
  await record.settled();
  expect(record.kept).toBe('kept');
  const again = await open(info);
  expect(values(again, 'horse_id')).toEqual(['Bella', 'Otto']);
  expect(values(again, 'toe_angle_deg')).toEqual([53, Number.NaN]);
  expect(again.table('feet')!.unread('toe_angle_deg', 1)?.text).toBe('steep');
  expect(again.table('feet')!.own.map(({ name }) => name)).toEqual(['twice']);
  expect((await journalOf(info.id)).map(({ words }) => words)).toEqual([
    'opening feet.csv',
    'typing in Toe angle',
    'typing in Toe angle',
    'adding a row',
    'taking back: adding a row',
    'removing a row',
    'adding the column twice',
  ]);
});

test('two pages that type into one record see each other’s cells and never write over them', async () => {
  const info = await begun();
  const [one, two] = [await open(info), await open(info)];
  put(one, 'toe_angle_deg', 0, '53');
  put(two, 'toe_angle_deg', 2, '47');
  put(two, 'toe_length_mm', 0, '85');
  await Promise.all([one.settled(), two.settled()]);
  await Promise.all([one.settled(), two.settled()]);
  for (const record of [one, two, await open(info)]) {
    expect(values(record, 'toe_angle_deg')).toEqual([53, Number.NaN, 47]);
    expect(values(record, 'toe_length_mm')[0]).toBe(85);
  }
});

test('of two pages in one cell the later wins, both are in the history, and each says what it really replaced', async () => {
  const info = await begun();
  const [one, two] = [await open(info), await open(info)];
  put(one, 'toe_angle_deg', 0, '53');
  put(two, 'toe_angle_deg', 0, '54');
  await Promise.all([one.settled(), two.settled()]);
  await Promise.all([one.settled(), two.settled()]);
  const changes = (await journalOf(info.id)).flatMap(({ edits }) => edits.filter((edit) => edit.kind === 'cells'));
  expect(changes.map(({ before, after }) => [before[0], after[0]])).toEqual([
    [52, 53],
    [53, 54],
  ]);
  for (const record of [one, two, await open(info)]) expect(values(record, 'toe_angle_deg')[0]).toBe(54);
  // What one of them takes back leaves alone what the other has put there since.
  one.table('feet')!.undo();
  await one.settled();
  expect(values(await open(info), 'toe_angle_deg')[0]).toBe(54);
});

test('rows that two pages add and remove at once come to stand alike in both', async () => {
  const info = await begun();
  const [one, two] = [await open(info), await open(info)];
  one.table('feet')!.addRows([{ horse_id: 'Ada' }], 1);
  one.table('feet')!.removeRows([2]);
  two.table('feet')!.addRows([{ horse_id: 'Zoe' }, { horse_id: 'Yves' }]);
  put(two, 'toe_angle_deg', 1, '51');
  await Promise.all([one.settled(), two.settled()]);
  await Promise.all([one.settled(), two.settled()]);
  const fresh = await open(info);
  for (const record of [one, two, fresh])
    expect(values(record, 'horse_id')).toEqual(['Bella', 'Ada', 'Otto', 'Zoe', 'Yves']);
});

test('a clock that is set back puts nothing before what was known', async () => {
  const info = await begun();
  const record = await open(info);
  const { now } = Date;
  put(record, 'toe_angle_deg', 0, '53');
  Date.now = () => 1000;
  put(record, 'toe_angle_deg', 0, '54');
  Date.now = now;
  await record.settled();
  const journal = await journalOf(info.id);
  expect(journal.map(({ counter }) => counter)).toEqual(journal.map(({ counter }) => counter).sort((a, b) => a - b));
  expect(journal.at(-1)?.at).toBe(1000);
  expect(values(await open(info), 'toe_angle_deg')[0]).toBe(54);
});

test('after many changes the tables are written again, and the history stays', async () => {
  const info = await begun();
  const record = await open(info);
  for (let i = 0; i < 510; i++) put(record, 'toe_angle_deg', 0, String(40 + (i % 20)));
  put(record, 'toe_length_mm', 0, 'long');
  await record.settled();
  const again = await open(info);
  expect(again.tables().feet?.entered?.get('toe_length_mm')).toEqual(new Map([[0, 'long']]));
  expect(values(again, 'toe_angle_deg')[0]).toBe(40 + (509 % 20));
  expect(await journalOf(info.id)).toHaveLength(512);
  put(again, 'toe_angle_deg', 0, '61');
  await again.settled();
  expect(values(await open(info), 'toe_angle_deg')[0]).toBe(61);
});

test('a file opened in the place of another begins the table anew, and other pages notice', async () => {
  const info = await begun();
  const [one, two] = [await open(info), await open(info)];
  put(one, 'toe_angle_deg', 0, '53');
  await one.openTables({ feet: opened('horse_id,date,limb,toe_angle_deg\nAda,2026-04-01,LF,49\n', 'april.csv') });
  expect(one.overtaken).toBe(true);
  await two.settled();
  expect(two.overtaken).toBe(true);
  const after = await open(info);
  expect(values(after, 'horse_id')).toEqual(['Ada']);
  expect(after.table('feet')!.names).toContain('toe_length_mm');
  put(after, 'toe_angle_deg', 0, '50');
  await after.settled();
  expect(values(await open(info), 'toe_angle_deg')).toEqual([50]);
});

test('a deleted record takes nothing more, and says so', async () => {
  const info = await begun();
  const record = await open(info);
  await deleteRecord(info.id);
  expect((await listRecords()).map(({ id }) => id)).not.toContain(info.id);
  put(record, 'toe_angle_deg', 0, '53');
  await expect(record.settled()).rejects.toThrow();
  expect(record.kept).toBe('not kept');
  expect(record.why).toContain('was deleted in another tab');
  expect(await OpenRecord.open(info)).toBeUndefined();
});
