import {
  type ComputedDefinition,
  cellHistory,
  clipboardCells,
  type Editing,
  journalOf,
  type TableRecord,
} from '../../lib/index.ts';
import { feetRecord, shownHerd } from './feetRecord.ts';
import { inUse, keeping } from './inUse.ts';

const known = new WeakMap<TableRecord, Editing>();

/** How the table of feet in use is typed into; `undefined` for any other table. */
export function editing(table: string): Editing | undefined {
  const record = table === 'feet' ? feetRecord.value : undefined;
  if (!record) return undefined;
  const before = known.get(record);
  if (before) return before;
  const made = editingOf(record);
  known.set(record, made);
  return made;
}

function editingOf(record: TableRecord): Editing {
  return {
    rowKey: (row) => record.idAt(row),
    typed: (column) => record.names.includes(column) && !shownHerd()?.recomputed.includes(column),
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
      const sheet = shownHerd()?.feet;
      sheet?.add(definition);
      sheet?.undo();
      record.addOwn(definition);
    },
    removeOwn(name: string) {
      const sheet = shownHerd()?.feet;
      if (sheet?.names.includes(name)) {
        sheet.remove(name);
        sheet.undo();
      }
      record.removeOwn(name);
    },
    get kept() {
      return keeping.value.kept;
    },
    get whyNotKept() {
      return keeping.value.why;
    },
    async history(column, row) {
      const open = inUse.value?.record;
      if (!open?.written || row >= record.rows) return [];
      return cellHistory(await journalOf(open.info.id), { table: 'feet', row: record.idAt(row), column });
    },
    async picture(column, row) {
      const feet = shownHerd()?.feet;
      return feet && (await import('./pictureOrigin.ts')).pictureOrigin(feet, column, row);
    },
    subscribe(listener) {
      const ends = [record.subscribe(listener), keeping.subscribe(listener)];
      return () => {
        for (const end of ends) end();
      };
    },
  };
}

const onlyTyped = <Cells extends Readonly<Record<string, unknown>>>(row: Cells, record: TableRecord): Cells =>
  Object.fromEntries(Object.entries(row).filter(([name]) => record.names.includes(name))) as Cells;
