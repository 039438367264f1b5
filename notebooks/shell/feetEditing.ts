import { type Signal, signal } from '@preact/signals';
import {
  type ComputedDefinition,
  clipboardCells,
  columnOfTexts,
  type Edit,
  type Editing,
  type Herd,
  type KeptTables,
  keepTables,
  leaveBehind,
  type TableRecord,
} from '../../lib/index.ts';
import { changes, goOnWith, recordOf } from './feetRecord.ts';
import { herd, inUse, notKept } from './herdInUse.ts';

/** How long after the last change the tables are kept. */
const REST_MS = 200;

/** Columns that others of the herd hang on without a formula: which foot, when, how well seen. */
const shaping = new Set([
  ...['horse_id', 'date', 'limb', 'moment', 'repeat', 'view_quality', 'hair_over_hairline'],
  ...['farrier', 'work', 'therapeutic'],
]);

const keeping: Signal<boolean> = signal(false);
const known = new WeakMap<TableRecord, Editing>();

/** How the table of feet in use is typed into; `undefined` for any other table. */
export function editing(table: string): Editing | undefined {
  if (table !== 'feet' || !inUse.value) return undefined;
  const record = recordOf(inUse.value.feet);
  const before = known.get(record);
  if (before) return before;
  const made = editingOf(record);
  known.set(record, made);
  return made;
}

function editingOf(record: TableRecord): Editing {
  const listeners = new Set<() => void>();
  const tell = () => {
    for (const listener of listeners) listener();
  };
  record.subscribe((edits) => {
    follow(record, edits);
    keepSoon(record, tell);
    changes.value++;
    tell();
  });
  return {
    typed: (column) => record.names.includes(column) && !feet()?.recomputed.includes(column),
    words: (column) => record.words(column),
    unread: (column, row) => record.unread(column, row),
    put: (texts, more) => record.put(texts, more),
    fill: (columns, rows) => record.fill(columns, rows),
    clear: (columns, rows) => record.clear(columns, rows),
    addRows: (rows, at) =>
      record.addRows(
        rows.map((row) => onlyTyped(row, record)),
        at,
      ),
    removeRows: (rows) => record.removeRows(rows),
    clipboard: clipboardCells,
    undo: () => record.undo(),
    redo: () => record.redo(),
    get undoable() {
      return record.undoable;
    },
    get redoable() {
      return record.redoable;
    },
    get own() {
      return record.own;
    },
    addOwn(definition: ComputedDefinition) {
      // The sheet that computes it says whether it can be.
      const sheet = feet()?.feet;
      sheet?.add(definition);
      sheet?.undo();
      record.addOwn(definition);
    },
    removeOwn(name: string) {
      const sheet = feet()?.feet;
      if (sheet?.names.includes(name)) {
        sheet.remove(name);
        sheet.undo();
      }
      record.removeOwn(name);
    },
    get kept() {
      return notKept.value ? 'not kept' : keeping.value ? 'keeping' : 'kept';
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

function feet(): Herd | undefined {
  return herd.value instanceof Error ? undefined : herd.value;
}

const onlyTyped = <Cells extends Readonly<Record<string, unknown>>>(row: Cells, record: TableRecord): Cells =>
  Object.fromEntries(Object.entries(row).filter(([name]) => record.names.includes(name))) as Cells;

/**
 * Lets what is shown follow. A measured cell is passed on to the sheet in use, where only what depends on it is worked out
 * again; what the whole herd hangs on makes the herd afresh.
 */
function follow(record: TableRecord, edits: readonly Edit[]): void {
  const tables = inUse.value!;
  const sheet = feet()?.feet;
  const passed = sheet && tables.whose === 'own' ? edits.map((edit) => passedOn(edit, sheet.names)) : [undefined];
  if (sheet && passed.every((edit) => edit !== undefined)) for (const edit of passed) sheet.replay(edit);
  else {
    const invented = tables.whose === 'demo' || tables.feet.invented;
    inUse.value = { ...tables, whose: 'own', feet: goOnWith({ ...record.table(), ...(invented && { invented }) }) };
  }
}

/** The edit as the sheet in use takes it; `undefined` where the herd has to be made afresh. */
function passedOn(edit: Edit, names: readonly string[]): Edit | undefined {
  if (edit.kind !== 'cells') return undefined;
  const cells = edit.cells.filter(({ name }) => names.includes(name));
  const others = edit.cells.filter(({ name }) => !names.includes(name) && columnOfTexts(name) === undefined);
  return others.length > 0 || cells.some(({ name }) => shaping.has(name)) ? undefined : { ...edit, cells };
}

let timer: ReturnType<typeof setTimeout> | undefined;
let keep = () => {};
/** Typed into and not yet in the database, and how often something was typed. */
let unkept: TableRecord | undefined;
let changesSoFar = 0;

function keepSoon(record: TableRecord, tell: () => void): void {
  keeping.value = true;
  unkept = record;
  changesSoFar++;
  clearTimeout(timer);
  keep = () => {
    clearTimeout(timer);
    keep = () => {};
    keepNow(record).finally(tell);
  };
  timer = setTimeout(() => keep(), REST_MS);
}

/** The tables in use, where they are still those of the record. */
function tablesOf(record: TableRecord): KeptTables | undefined {
  const tables = inUse.value;
  if (!tables || recordOf(tables.feet) !== record) return undefined;
  const { horses, visits } = tables;
  const { invented } = tables.feet;
  return { feet: { ...record.table(), ...(invented && { invented }) }, horses, visits };
}

async function keepNow(record: TableRecord): Promise<void> {
  const tables = tablesOf(record);
  if (!tables) return;
  const changesKept = changesSoFar;
  try {
    await keepTables(tables);
    notKept.value = false;
  } catch (error) {
    console.info('What was typed could not be kept in this browser:', error);
    notKept.value = true;
  }
  if (changesKept !== changesSoFar) return;
  unkept = undefined;
  keeping.value = false;
}

/** What was typed last is left where it is kept at once: the database may not come to it any more. */
function leave(): void {
  const tables = unkept && tablesOf(unkept);
  if (tables) leaveBehind(tables);
  keep();
}

addEventListener('pagehide', leave);
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'hidden') leave();
});
