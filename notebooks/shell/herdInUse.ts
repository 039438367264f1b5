import { computed, type Signal, signal } from '@preact/signals';
import {
  forgetTables,
  type Herd,
  herd as herdOf,
  type KeptTable,
  type KeptTables,
  keepTables,
  keptTables,
  onTablesKept,
  type Problem,
  readTable,
  type TableName,
} from '../../lib/index.ts';
import { changes, latest, recordOf, typedInto } from './feetRecord.ts';
import { withOwnColumns } from './ownColumns.ts';

/** The tables that all pages show, and whose they are. */
export interface InUse extends KeptTables {
  readonly feet: KeptTable;
  readonly whose: 'demo' | 'own';
}

export const tableNames: readonly TableName[] = ['feet', 'horses', 'visits'];

/** Undefined until the first tables are read. */
export const inUse: Signal<InUse | undefined> = signal(undefined);

/** The reader's own tables that can't be shown yet, because the feet are not among them. */
export const withoutFeet: Signal<KeptTables> = signal({});

/** Whether the browser refused to keep the tables in use, as private windows do. */
export const notKept: Signal<boolean> = signal(false);

/** Why there is nothing to show, in words. */
export const failure: Signal<string> = signal('');

/** The herd of the tables in use; a reason where they make none. */
export const herd = computed((): Herd | Error | undefined => {
  if (!inUse.value) return undefined;
  const { feet, horses, visits } = inUse.value;
  try {
    const { columns, own } = typedInto.value ? recordOf(feet).table() : feet;
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
  const feet = inUse.value?.feet;
  if (!feet || !herd.value || herd.value instanceof Error) return [];
  const typed = changes.value > 0 ? latest(feet).problems : feet.problems;
  return [...typed, ...herd.value.problems.filter((problem) => !feet.problems.includes(problem))];
});

/** Shows the reader's own tables where there are any, else the demo herd; follows what other pages of the notebook do. */
export async function start(): Promise<void> {
  onTablesKept(show);
  await show();
}

async function show(): Promise<void> {
  try {
    await use(await kept());
    failure.value = '';
  } catch (error) {
    failure.value = asError(error).message;
  }
}

/** Takes tables into use and keeps them; a table that was not opened anew stays as it was. */
export async function useOwn(opened: KeptTables): Promise<void> {
  const own: Record<string, KeptTable> = {};
  const earlier = inUse.value?.whose === 'own' && !inUse.value.feet.invented ? inUse.value : withoutFeet.value;
  for (const name of tableNames) {
    const table = opened[name] ?? earlier[name];
    if (table) own[name] = latest(table);
  }
  await use(own);
  try {
    await keepTables(own);
    notKept.value = false;
  } catch (error) {
    console.warn('The tables could not be kept in this browser:', error);
    notKept.value = true;
  }
}

/** Puts the reader's tables away and shows the demo herd. */
export async function useDemo(): Promise<void> {
  if (!notKept.value) await forgetTables();
  await use({});
}

async function use(own: KeptTables): Promise<void> {
  const { feet } = own;
  withoutFeet.value = feet ? {} : own;
  if (feet) inUse.value = { ...own, feet, whose: 'own' };
  else if (inUse.value?.whose !== 'demo') inUse.value = await demo();
}

/** Where the browser keeps nothing (a private window), the notebook works until it is closed. */
async function kept(): Promise<KeptTables> {
  try {
    return (await keptTables()) ?? {};
  } catch (error) {
    console.warn('Nothing can be kept in this browser:', error);
    return {};
  }
}

async function demo(): Promise<InUse> {
  const [feet, horses, visits] = await Promise.all(
    tableNames.map(async (name) => {
      const file = `${name}.csv`;
      const answer = await fetch(`data/${file}`);
      if (!answer.ok) throw new Error(`The demo herd’s table ${file} could not be fetched (${answer.status})`);
      const read = readTable(new Uint8Array(await answer.arrayBuffer()), { file, schema: name });
      return { columns: read.columns, problems: read.problems, entered: read.entered, file };
    }),
  );
  return { whose: 'demo', feet, horses, visits };
}

const asError = (error: unknown) => (error instanceof Error ? error : new Error(String(error)));
