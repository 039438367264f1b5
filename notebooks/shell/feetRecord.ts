import { computed, effect } from '@preact/signals';
import { columnOfTexts, type Edit, type Herd, type TableRecord } from '../../lib/index.ts';
import { changes, herd, inUse } from './inUse.ts';

/** Columns that others of the herd hang on without a formula: which foot, when, how well seen. */
const shaping = new Set([
  ...['horse_id', 'date', 'limb', 'moment', 'repeat', 'view_quality', 'hair_over_hairline'],
  ...['farrier', 'work', 'therapeutic'],
]);

/** The feet that are shown, as they are typed in. */
export const feetRecord = computed(() => inUse.value?.record?.table('feet'));

/** The herd that is shown, where there is one. */
export function shownHerd(): Herd | undefined {
  return herd.value instanceof Error ? undefined : herd.value;
}

let following = false;

/** Lets what is shown follow every change of the feet, made here or on another page. */
export function followChanges(): void {
  if (following) return;
  following = true;
  effect(() => {
    const record = feetRecord.value;
    return record?.subscribe((edits) => {
      follow(record, edits);
      changes.value++;
    });
  });
}

/**
 * A measured cell is passed on to the sheet in use, where only what depends on it is worked out again; what the whole herd
 * hangs on makes the herd afresh.
 */
function follow(record: TableRecord, edits: readonly Edit[]): void {
  const tables = inUse.value!;
  const sheet = shownHerd()?.feet;
  const passed = sheet && tables.whose === 'own' ? edits.map((edit) => passedOn(edit, sheet.names)) : [undefined];
  if (sheet && passed.every((edit) => edit !== undefined)) for (const edit of passed) sheet.replay(edit);
  else inUse.value = { ...tables, whose: 'own', feet: record.table() };
}

/** The edit as the sheet in use takes it; `undefined` where the herd has to be made afresh. */
function passedOn(edit: Edit, names: readonly string[]): Edit | undefined {
  if (edit.kind !== 'cells') return undefined;
  const cells = edit.cells.filter(({ name }) => names.includes(name));
  const others = edit.cells.filter(({ name }) => !names.includes(name) && columnOfTexts(name) === undefined);
  return others.length > 0 || cells.some(({ name }) => shaping.has(name)) ? undefined : { ...edit, cells };
}
