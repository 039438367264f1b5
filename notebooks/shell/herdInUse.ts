import { computed, type Signal, signal } from '@preact/signals';
import {
  chooseRecord,
  deleteRecord,
  type Herd,
  herd as herdOf,
  isNewer,
  type KeptTable,
  type KeptTables,
  newRecord,
  OpenRecord,
  onTold,
  type Problem,
  type RecordInfo,
  readTable,
  recordInUse,
  type TableName,
  takeLeftBehind,
} from '../../lib/index.ts';
import { withOwnColumns } from './ownColumns.ts';

/** The tables that all pages show, the record that they are of, and whose they are. */
export interface InUse extends KeptTables {
  readonly feet: KeptTable;
  readonly record: OpenRecord;
  readonly whose: 'demo' | 'own';
}

export const tableNames: readonly TableName[] = ['feet', 'horses', 'visits'];

/** Undefined until the first tables are read. */
export const inUse: Signal<InUse | undefined> = signal(undefined);

/** The reader's own record that can't be shown yet, because the feet are not in it. */
export const withoutFeet: Signal<OpenRecord | undefined> = signal(undefined);

/** Whether this page types into the table of feet: then it has all columns that can be typed in. */
export const typedInto: Signal<boolean> = signal(false);

/** Grows with every change of the record. */
export const changes: Signal<number> = signal(0);

/** How far what was changed is on its way to the disk, and why where it isn't. */
export const keeping: Signal<Pick<OpenRecord, 'kept' | 'why'>> = signal({ kept: 'kept', why: undefined });

/** Why there is nothing to show, in words. */
export const failure: Signal<string> = signal('');

/** The herd of the tables in use; a reason where they make none. */
export const herd = computed((): Herd | Error | undefined => {
  if (!inUse.value) return undefined;
  const { record, feet, horses, visits } = inUse.value;
  try {
    const { columns, own } = typedInto.value ? record.table('feet')!.table() : feet;
    const made = herdOf(
      { feet: columns, horses: horses?.columns, visits: visits?.columns },
      {
        problems: [feet, horses, visits].flatMap((table) => table?.problems ?? []),
        files: { feet: feet.file, horses: horses?.file, visits: visits?.file },
      },
    );
    return withOwnColumns(made, own);
  } catch (error) {
    return asError(error);
  }
});

/** Every cell that could not be used, what was typed since included. */
export const problems = computed((): readonly Problem[] => {
  if (!inUse.value || !herd.value || herd.value instanceof Error) return [];
  const { feet, record } = inUse.value;
  const typed = changes.value > 0 ? record.table('feet')!.problems() : feet.problems;
  return [...typed, ...herd.value.problems.filter((problem) => !feet.problems.includes(problem))];
});

/** Shows the reader's own tables where there are any, else the demo herd; follows what other pages of the notebook do. */
export async function start(): Promise<void> {
  try {
    await takeLeftBehind(demoTables);
  } catch (error) {
    console.info('What an earlier page left behind could not be taken in:', error);
  }
  onTold(({ kind }) => kind === 'records' && show());
  addEventListener('pagehide', leave);
  document.addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && leave());
  await show();
}

/** What was typed last is left where it is kept at once: the database may not come to it any more. */
function leave(): void {
  inUse.value?.record.leave();
}

/** Shows the record in use as it stands in the database; one that is shown already goes on. */
export async function show(): Promise<void> {
  try {
    const info = await ownInfo();
    const shown = inUse.value?.record;
    if (info && shown?.written && !shown.overtaken && shown.info.id === info.id && shown.info.name === info.name)
      return;
    const record = await ownRecord(info);
    withoutFeet.value = record && !record.tables().feet ? record : undefined;
    if (record?.tables().feet) use(record);
    else if (inUse.value?.whose !== 'demo') use(await demo());
    failure.value = '';
  } catch (error) {
    failure.value = isNewer(error)
      ? 'The records on this device were written by a newer Evenhoof. This page leaves them as they are: close all its tabs, then open it again'
      : asError(error).message;
  }
}

/** Takes tables from files into the reader's record, or into a new one; a table that was not opened anew stays as it was. */
export async function useOwn(opened: KeptTables): Promise<void> {
  const shown = inUse.value?.record;
  const own = withoutFeet.value ?? (shown?.info.invented ? undefined : shown);
  const record = own ?? OpenRecord.unwritten(newRecord('My herd'), {});
  try {
    await record.openTables(opened);
  } catch (error) {
    if (own?.written) throw new Error(own.why ?? asError(error).message);
    console.warn('The tables could not be kept in this browser:', error);
    const unkept = OpenRecord.unwritten(record.info, { ...own?.tables(), ...opened });
    // It goes on trying, and says that it can't.
    unkept.settled().catch(() => {});
    if (unkept.tables().feet) use(unkept);
    else withoutFeet.value = unkept;
    return;
  }
  await show();
}

/** Puts the reader's record away and shows the demo herd; a changed copy of that is given up. */
export async function useDemo(): Promise<void> {
  const { info, written } = inUse.value!.record;
  if (written) await (info.invented ? deleteRecord(info.id) : chooseRecord(undefined));
  inUse.value?.record.close();
  use(await demo());
}

function use(record: OpenRecord): void {
  const before = inUse.value?.record;
  if (before !== record) before?.close();
  const follow = () => {
    if (inUse.value?.record !== record) return;
    keeping.value = { kept: record.kept, why: record.why };
    if (record.overtaken && record.kept === 'kept') show();
  };
  record.subscribe(follow);
  const { feet, horses, visits } = record.tables();
  inUse.value = { feet: feet!, horses, visits, record, whose: record.own ? 'own' : 'demo' };
  follow();
}

/** Where the browser keeps nothing (a private window), the notebook works until it is closed. */
async function ownInfo(): Promise<RecordInfo | undefined> {
  try {
    return await recordInUse();
  } catch (error) {
    if (isNewer(error)) throw error;
    console.warn('Nothing can be kept in this browser:', error);
    return undefined;
  }
}

async function ownRecord(info?: RecordInfo): Promise<OpenRecord | undefined> {
  const record = info && (await OpenRecord.open(info));
  // Written whole by another page just as it was read.
  return record?.overtaken ? ownRecord(info) : record;
}

async function demo(): Promise<OpenRecord> {
  return OpenRecord.unwritten(newRecord('Changed copy of the demo herd', true), await demoTables());
}

async function demoTables(): Promise<KeptTables> {
  const tables = tableNames.map(async (name) => {
    const file = `${name}.csv`;
    const answer = await fetch(`data/${file}`);
    if (!answer.ok) throw new Error(`The demo herd’s table ${file} could not be fetched (${answer.status})`);
    const read = readTable(new Uint8Array(await answer.arrayBuffer()), { file, schema: name });
    const { columns, problems, entered } = read;
    return [name, { columns, problems, entered, file, opened: 'invented', invented: true }] as const;
  });
  return Object.fromEntries(await Promise.all(tables));
}

const asError = (error: unknown) => (error instanceof Error ? error : new Error(String(error)));
