import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { readTable } from '../../lib/files/readTable.ts';
import { toColumn } from '../../lib/sheet/column.ts';
import { cellHistory } from '../../lib/store/cellHistory.ts';
import { difference } from '../../lib/store/difference.ts';
import { journalOf } from '../../lib/store/entries.ts';
import { OpenRecord } from '../../lib/store/openRecord.ts';
import { newRecord } from '../../lib/store/recordInUse.ts';
import { tableAsOf } from '../../lib/store/tableAsOf.ts';
import type { KeptTable } from '../../lib/store/tables.ts';

const opened = (file: string, ...rows: string[]): KeptTable => {
  const { columns, problems, entered } = readTable(['horse_id,date,limb,toe_angle_deg', ...rows].join('\n'), { file });
  return { columns, problems, entered, file };
};

const DAY = 86_400_000;
const { now } = Date;
const onDay = async (day: number, work: () => unknown, record: OpenRecord) => {
  Date.now = () => day * DAY;
  await work();
  await record.settled();
  Date.now = now;
};

const horses = (table?: KeptTable) => table && [...toColumn(table.columns.horse_id).values];
const angles = (table?: KeptTable) => table && [...toColumn(table.columns.toe_angle_deg).values];

/** A record of three days: opened, typed in, another file opened and typed in. */
async function threeDays() {
  const info = newRecord('Barn');
  const first = OpenRecord.unwritten(info, {});
  await onDay(
    10,
    () => first.openTables({ feet: opened('a.csv', 'Bella,2026-03-09,LF,52', 'Otto,2026-03-09,LF,48') }),
    first,
  );
  const record = (await OpenRecord.open(info))!;
  record.signedBy('Mia');
  const feet = record.table('feet')!;
  const id = feet.idAt(1);
  const put = (row: number, text: string) =>
    feet.put({ rows: [row], columns: ['toe_angle_deg'], texts: [[text]], how: 'set' });
  await onDay(11, () => put(1, 'steep'), record);
  await onDay(11, () => feet.addRows([{ horse_id: 'Ada', toe_angle_deg: 50 }], 0), record);
  await onDay(12, () => put(2, '47'), record);
  await onDay(12, () => feet.addOwn({ name: 'twice', formula: '2 * toe_angle_deg' }), record);
  await onDay(12, () => feet.removeRows([1]), record);
  return { info, record, id };
}

test('a cell says when, who, from what to what, wherever its row has come to stand', async () => {
  const { info, id, record } = await threeDays();
  const journal = await journalOf(info.id);
  const place = { table: 'feet', row: id, column: 'toe_angle_deg' } as const;
  expect(cellHistory(journal, place).map(({ at, who, before, after }) => [at / DAY, who, before, after])).toEqual([
    [11, 'Mia', 48, { text: 'steep' }],
    [12, 'Mia', { text: 'steep' }, 47],
  ]);
  const ada = { ...place, row: record.table('feet')!.idAt(0) };
  expect(cellHistory(journal, ada).map(({ before, after }) => [before, after])).toEqual([[null, 50]]);
  const gone = { ...place, row: `${record.tables().feet!.opened}/0` };
  expect(cellHistory(journal, gone).map(({ words, before, after }) => [words, before, after])).toEqual([
    ['removing a row', 52, null],
  ]);
  expect(cellHistory(journal, { ...place, column: 'limb', row: id })).toEqual([]);
});

test('a table stands as it did at the end of any day', async () => {
  const { info, record } = await threeDays();
  expect(await tableAsOf(record, 'feet', 9 * DAY)).toBeUndefined();
  const tenth = await tableAsOf(record, 'feet', 10 * DAY);
  expect([horses(tenth), angles(tenth)]).toEqual([
    ['Bella', 'Otto'],
    [52, 48],
  ]);
  const eleventh = await tableAsOf(record, 'feet', 11 * DAY);
  expect(horses(eleventh)).toEqual(['Ada', 'Bella', 'Otto']);
  expect(eleventh?.entered?.get('toe_angle_deg')).toEqual(new Map([[2, 'steep']]));
  expect(eleventh?.problems.map(({ row, code, value }) => [row, code, value])).toEqual([
    [2, 'no-key', ''],
    [2, 'no-key', ''],
    [4, 'not-a-number', 'steep'],
  ]);
  expect(eleventh?.own).toEqual([]);
  expect(horses(await tableAsOf(record, 'feet', 99 * DAY))).toEqual(['Ada', 'Otto']);
  await onDay(13, () => record.openTables({ feet: opened('b.csv', 'Zoe,2026-04-09,LF,51') }), record);
  const anew = (await OpenRecord.open(info))!;
  expect(horses(await tableAsOf(anew, 'feet', 13 * DAY))).toEqual(['Zoe']);
  const twelfth = await tableAsOf(anew, 'feet', 12 * DAY);
  expect([horses(twelfth), angles(twelfth), twelfth?.file]).toEqual([['Ada', 'Otto'], [50, 47], 'a.csv']);
  expect(horses(await tableAsOf(anew, 'feet', 10 * DAY))).toEqual(['Bella', 'Otto']);
});

test('going back to a day is a change that can itself be taken back, and that history keeps', async () => {
  const { info, record } = await threeDays();
  const feet = record.table('feet')!;
  const then = (await tableAsOf(record, 'feet', 10 * DAY))!;
  const before = record.tables().feet!;
  feet.make(difference('feet', before, then), 'going back to 11 January 1970');
  expect([horses(record.tables().feet), angles(record.tables().feet)]).toEqual([
    ['Bella', 'Otto'],
    [52, 48],
  ]);
  expect(feet.own).toEqual([]);
  expect(difference('feet', record.tables().feet!, then)).toEqual([]);
  expect(feet.undo()).toBe('going back to 11 January 1970');
  expect(difference('feet', record.tables().feet!, before)).toEqual([]);
  await record.settled();
  expect((await journalOf(info.id)).at(-1)?.words).toBe('taking back: going back to 11 January 1970');
});

test('a clock that was set back leaves every day findable', async () => {
  const { record } = await threeDays();
  const feet = record.table('feet')!;
  await onDay(5, () => feet.put({ rows: [0], columns: ['toe_angle_deg'], texts: [['60']], how: 'set' }), record);
  expect(angles(await tableAsOf(record, 'feet', 20 * DAY))).toEqual([60, 47]);
  // What was done on the day as the clock called it, with all that came before.
  expect(angles(await tableAsOf(record, 'feet', 5 * DAY))).toEqual([60, 47]);
  expect(await tableAsOf(record, 'feet', 4 * DAY)).toBeUndefined();
});
