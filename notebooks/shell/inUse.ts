import { computed, type Signal, signal } from '@preact/signals';
import {
  type Herd,
  herd as herdOf,
  type KeptPage,
  type KeptTable,
  type KeptTables,
  type OpenRecord,
  type Problem,
  type TableName,
} from '../../lib/index.ts';
import { withOwnColumns } from './ownColumns.ts';

/** The tables that all pages show, the record that they are of, and whose they are. */
export interface InUse extends KeptTables {
  readonly feet: KeptTable;
  /** Left out where nobody can change them here: the invented herd on a page that is only read. */
  readonly record?: OpenRecord;
  readonly whose: 'demo' | 'own';
}

export const tableNames: readonly TableName[] = ['feet', 'horses', 'visits'];

/** Undefined until the first tables are read. */
export const inUse: Signal<InUse | undefined> = signal(undefined);

/** The reader's own record that can't be shown yet, because the feet are not in it. */
export const withoutFeet: Signal<OpenRecord | undefined> = signal(undefined);

/** The pages of the reader's own that are kept in the record in use. */
export const keptPages: Signal<readonly KeptPage[]> = signal([]);

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
    const { columns, own } = typedInto.value ? record!.table('feet')!.table() : feet;
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
  const typed = changes.value > 0 ? record!.table('feet')!.problems() : feet.problems;
  return [...typed, ...herd.value.problems.filter((problem) => !feet.problems.includes(problem))];
});

const asError = (error: unknown) => (error instanceof Error ? error : new Error(String(error)));
