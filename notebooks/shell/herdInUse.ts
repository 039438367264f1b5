import {
  chooseRecord,
  isNewer,
  type KeptTables,
  newRecord,
  type OpenRecord,
  onTold,
  openRecord,
  type RecordInfo,
  readTable,
  recordInUse,
  say,
  takeLeftBehind,
  unwrittenRecord,
} from '../../lib/index.ts';
import { failure, inUse, keeping, keptPages, tableNames, typedInto, withoutFeet } from './inUse.ts';

export * from './inUse.ts';

/** Shows the reader's own tables where there are any, else the demo herd; follows what other pages of the notebook do. */
export async function start(): Promise<void> {
  try {
    await takeLeftBehind(demoTables);
  } catch (error) {
    console.info(say`What an earlier page left behind could not be taken in:`, error);
  }
  onTold(({ kind }) => kind === 'records' && show());
  addEventListener('pagehide', leave);
  document.addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && leave());
  await show();
}

/** What was typed last is left where it is kept at once: the database may not come to it any more. */
function leave(): void {
  inUse.value?.record?.leave();
}

/** Shows the record in use as it stands in the database; one that is shown already goes on. */
export async function show(): Promise<void> {
  try {
    const info = await ownInfo();
    keptPages.value = info?.pages ?? [];
    const shown = inUse.value?.record;
    if (info && shown?.written && !shown.overtaken && shown.info.id === info.id && shown.info.name === info.name)
      return;
    const record = await ownRecord(info);
    withoutFeet.value = record && !record.tables().feet ? record : undefined;
    if (record?.tables().feet) await use(record);
    else if (inUse.value?.whose !== 'demo') await useInvented();
    failure.value = '';
  } catch (error) {
    failure.value = isNewer(error)
      ? say`The records on this device were written by a newer Evenhoof. This page leaves them as they are: close all its tabs, then open it again`
      : asError(error).message;
  }
}

/** Takes tables from files into the reader's record, or into a new one; a table that was not opened anew stays as it was. */
export async function useOwn(opened: KeptTables): Promise<void> {
  const shown = inUse.value?.record;
  const own = withoutFeet.value ?? (shown?.info.invented ? undefined : shown);
  const record = own ?? (await unwrittenRecord(newRecord(say`My herd`), {}));
  try {
    await record.openTables(opened);
  } catch (error) {
    if (own?.written) throw new Error(own.why ?? asError(error).message);
    console.warn('The tables could not be kept in this browser:', error);
    const unkept = await unwrittenRecord(record.info, { ...own?.tables(), ...opened });
    // It goes on trying, and says that it can't.
    unkept.settled().catch(() => {});
    if (unkept.tables().feet) await use(unkept);
    else withoutFeet.value = unkept;
    return;
  }
  await show();
}

/** Puts the reader's record away and shows the demo herd; a changed copy of that is given up. */
export async function useDemo(): Promise<void> {
  const record = inUse.value?.record;
  if (record?.written) await (record.info.invented ? record.delete() : chooseRecord(undefined));
  keptPages.value = [];
  await useInvented();
}

/** The demo herd: with a record that its first change begins where this page types into it. */
async function useInvented(): Promise<void> {
  const tables = await demoTables();
  if (typedInto.value) {
    await use(await unwrittenRecord(inventedCopy(), tables));
  } else {
    inUse.value?.record?.close();
    inUse.value = { ...tables, feet: tables.feet!, whose: 'demo' };
  }
}

/** What is written down of a copy of the demo herd that is changed. */
export const inventedCopy = () => newRecord(say`Changed copy of the demo herd`, true);

async function use(record: OpenRecord): Promise<void> {
  const { followChanges } = await import('./feetRecord.ts');
  followChanges();
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
  const record = info && (await openRecord(info));
  // Written whole by another page just as it was read.
  return record?.overtaken ? ownRecord(info) : record;
}

async function demoTables(): Promise<KeptTables> {
  const tables = tableNames.map(async (name) => {
    const file = `${name}.csv`;
    const answer = await fetch(`data/${file}`);
    if (!answer.ok) throw new Error(say`The demo herd’s table ${file} could not be fetched (${answer.status})`);
    const read = readTable(new Uint8Array(await answer.arrayBuffer()), { file, schema: name });
    const { columns, problems, entered } = read;
    return [name, { columns, problems, entered, file, opened: 'invented', invented: true }] as const;
  });
  return Object.fromEntries(await Promise.all(tables));
}

const asError = (error: unknown) => (error instanceof Error ? error : new Error(String(error)));
