import { expect, test } from 'vitest';
import { clipboardCells } from '../../../lib/files/clipboardCells.ts';
import { FootSheet } from '../../../lib/hoof/footSheet.ts';
import type { Editing } from '../../../lib/page/sheet/editing.ts';
import { shownColumns } from '../../../lib/page/sheet/shownColumns.ts';
import {
  beginningText,
  clearCells,
  fillDown,
  pasteBlock,
  type TypedGrid,
  travel,
  travelKey,
  typeCell,
  workedOut,
} from '../../../lib/page/sheet/typing.ts';
import type { Columns } from '../../../lib/sheet/column.ts';
import { TableRecord } from '../../../lib/store/tableRecord.ts';

/** A grid of angle, length and what is worked out from them, over a record with four rows. */
function grid(length: 'mm' | 'cm' | 'in' = 'mm', rows = Uint32Array.of(0, 1, 2, 3), whole = true) {
  const columns: Columns = {
    toe_angle_deg: { unit: 'deg', values: Float64Array.of(52, 50, 48, 46) },
    toe_length_mm: { unit: 'mm', values: Float64Array.of(85, 84, 83, 82) },
  };
  const record = new TableRecord('feet', { columns, problems: [], file: 'feet.csv' });
  const sheet = FootSheet.from(columns, [], { computed: [{ name: 'twice', formula: '2 * toe_length_mm' }] });
  const made: Editing = {
    rowKey: (row) => record.idAt(row),
    typed: (name) => name !== 'twice',
    words: () => undefined,
    unread: (name, row) => record.unread(name, row),
    put: (texts, more) => record.put(texts, more),
    fill: (names, rows) => record.fill(names, rows),
    clear: (names, rows) => record.clear(names, rows),
    addRows: (rows, at) => record.addRows(rows, at),
    removeRows: (rows) => record.removeRows(rows),
    clipboard: clipboardCells,
    undo: () => record.undo(),
    redo: () => record.redo(),
    undoable: undefined,
    redoable: undefined,
    own: [],
    addOwn: () => {},
    removeOwn: () => {},
    kept: 'kept',
    subscribe: () => () => {},
  };
  const shown = shownColumns(sheet, ['toe_angle_deg', 'twice', 'toe_length_mm'], { length, mass: 'kg' }, made.typed);
  const typed: TypedGrid = {
    editing: made,
    columns: shown,
    data: shown.map(({ name }) => sheet.column(name)),
    rows,
    whole,
  };
  const values = (name: string) => [...(record.table().columns[name].values as Float64Array)];
  return { typed, values, record };
}

const at = (top: number, left: number, bottom = top, right = left) => ({ top, bottom, left, right });

test('one cell is typed, and said with its column', () => {
  const { typed, values } = grid();
  expect(typeCell(typed, 1, 0, '51,5°')).toBe('toe_angle_deg: 51,5°');
  expect(values('toe_angle_deg')[1]).toBe(51.5);
  expect(typeCell(typed, 1, 0, '')).toBe('toe_angle_deg: emptied');
});

test('a cell that can’t be used is said with what was expected', () => {
  const { typed } = grid();
  expect(typeCell(typed, 0, 0, 'steep')).toMatch(/“steep” can’t be used\. Expected an angle in degrees.+\. Correct/);
  expect(beginningText(typed, 0, 0)).toBe('steep');
});

test('numbers without a unit are in the reader’s', () => {
  const { typed, values } = grid('in');
  typeCell(typed, 0, 2, '3 1/4');
  expect(values('toe_length_mm')[0]).toBe(82.55);
});

test('a block goes to the rows shown, passes over what is worked out, and adds rows below the last', () => {
  const { typed, values, record } = grid();
  const { said, region } = pasteBlock(typed, at(3, 0), '51\tx\t8,6 cm\n50\ty\t8,5 cm\n');
  expect(said).toBe('Pasted: 4 cells have changed. 1 row added. 1 column is worked out and stayed as it was');
  expect(region).toEqual(at(3, 0, 4, 2));
  expect(values('toe_angle_deg')).toEqual([52, 50, 48, 51, 50]);
  expect(values('toe_length_mm')).toEqual([85, 84, 83, 86, 85]);
  record.undo();
  expect(values('toe_length_mm')).toEqual([85, 84, 83, 82]);
});

test('in a sorted view a block follows the rows as shown, and what finds no row is said', () => {
  const { typed, values } = grid('mm', Uint32Array.of(3, 0), false);
  const { said } = pasteBlock(typed, at(0, 0), 'few\t\t\t\n40\n41\n42');
  expect(said).toContain('1 column found no place to the right');
  expect(said).toContain('2 lines found no row');
  expect(said).toContain('1 cell can’t be used and is marked');
  expect(values('toe_angle_deg')).toEqual([40, 50, 48, Number.NaN]);
});

test('one cell goes into all that are chosen', () => {
  const { typed, values } = grid();
  pasteBlock(typed, at(1, 0, 2, 0), '45°');
  expect(values('toe_angle_deg')).toEqual([52, 45, 45, 46]);
});

test('a block is repeated over several times as many rows, and laid once where they are no multiple of its own', () => {
  const { typed, values, record } = grid();
  const { region } = pasteBlock(typed, at(0, 0, 3, 0), '45\n46\n');
  expect(region).toEqual(at(0, 0, 3, 0));
  expect(values('toe_angle_deg')).toEqual([45, 46, 45, 46]);
  record.undo();
  expect(values('toe_angle_deg')).toEqual([52, 50, 48, 46]);
  pasteBlock(typed, at(0, 0, 2, 0), '45\tx\t90\n46\tx\t91\n');
  expect(values('toe_angle_deg')).toEqual([45, 46, 48, 46]);
  expect(values('toe_length_mm')).toEqual([90, 91, 83, 82]);
});

test('a row of cells goes into every row chosen, though only its first column is', () => {
  const { typed, values } = grid();
  pasteBlock(typed, at(1, 0, 3, 0), '45\tx\t90');
  expect(values('toe_angle_deg')).toEqual([52, 45, 45, 45]);
  expect(values('toe_length_mm')).toEqual([85, 90, 90, 90]);
});

test('an empty clipboard changes nothing', () => {
  const { typed, record } = grid();
  pasteBlock(typed, at(0, 0), '');
  expect(record.touched).toBe(false);
});

test('filling down goes from the first row chosen, or from the row above', () => {
  const { typed, values } = grid();
  expect(fillDown(typed, at(0, 0, 2, 2))).toBe('Filled down: 4 cells have changed');
  expect(values('toe_length_mm')).toEqual([85, 85, 85, 82]);
  fillDown(typed, at(3, 0));
  expect(values('toe_angle_deg')).toEqual([52, 52, 52, 52]);
  expect(fillDown(typed, at(0, 0))).toBe('There is no row above to fill from');
  expect(fillDown(typed, at(1, 1))).toBe(workedOut(typed.columns[1]));
});

test('emptying leaves alone what is worked out', () => {
  const { typed, values } = grid();
  expect(clearCells(typed, at(0, 0, 1, 2))).toBe('4 cells emptied');
  expect(values('toe_length_mm')).toEqual([Number.NaN, Number.NaN, 83, 82]);
  expect(clearCells(typed, at(0, 1))).toContain('is worked out');
});

test('travelling says what was taken back, or that there is nothing', () => {
  const { typed } = grid();
  expect(travel(typed.editing, 'back')).toBe('There is nothing to take back');
  typeCell(typed, 0, 0, '51');
  expect(travel(typed.editing, 'back')).toBe('Taken back: typing in Toe angle');
  expect(travel(typed.editing, 'forth')).toBe('Done again: typing in Toe angle');
});

test.each([
  [{ key: 'z', ctrlKey: true }, 'back'],
  [{ key: 'Z', metaKey: true, shiftKey: true }, 'forth'],
  [{ key: 'y', ctrlKey: true }, 'forth'],
  [{ key: 'z' }, undefined],
  [{ key: 'z', ctrlKey: true, altKey: true }, undefined],
])('keys that travel: %o', (event, way) => {
  expect(travelKey(event as KeyboardEvent)).toBe(way);
});
