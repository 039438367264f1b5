import { say } from '../words/say.ts';
import { type Cell, cellAt, toCell } from './cell.ts';
import type { Column, ColumnInput, Columns } from './column.ts';
import type { CellChanges, ComputedDefinition, Definition, Edit } from './edits.ts';
import { FormulaError } from './formula/syntax.ts';
import { listed } from './listed.ts';
import type { LiveTable } from './liveTable.ts';
import { rowsOf } from './rowEdits.ts';

/** Cells side by side: `cells[i][j]` goes to row `row + i` of the column `columns[j]`. */
export interface PastedBlock {
  readonly row: number;
  readonly columns: readonly string[];
  readonly cells: readonly (readonly Cell[])[];
}

/** One new value; nothing to do where it stands there already. */
export function settingCell(table: LiveTable, name: string, row: number, value: Cell): Edit | undefined {
  return cellsEdit('set', [changed(table, name, [row], () => value)]);
}

/** One value in many rows. */
export function fillingCells(table: LiveTable, name: string, rows: readonly number[], value: Cell): Edit | undefined {
  return cellsEdit('fill', [changed(table, name, rows, () => value)]);
}

/** A block of values; all of them fit or none is taken. */
export function pastingBlock(table: LiveTable, { row, columns, cells }: PastedBlock): Edit | undefined {
  const width = cells.find((line) => line.length !== columns.length)?.length;
  if (width !== undefined)
    throw new TypeError(`A pasted row has ${width} cells where ${columns.length} columns are named`);
  const rows = cells.map((_, i) => row + i);
  return cellsEdit(
    'paste',
    columns.map((name, j) => changed(table, name, rows, (i) => cells[i][j])),
  );
}

function cellsEdit(how: 'set' | 'fill' | 'paste', changes: readonly CellChanges[]): Edit | undefined {
  const cells = changes.filter(({ rows }) => rows.length > 0);
  return cells.length === 0 ? undefined : { kind: 'cells', how, cells };
}

/** The rows of a measured column that get another value than they have. */
function changed(table: LiveTable, name: string, into: readonly number[], value: (i: number) => Cell): CellChanges {
  const column = measured(table, name);
  const rows: number[] = [];
  const before: Cell[] = [];
  const after: Cell[] = [];
  for (const [i, row] of into.entries()) {
    checkRow(table, row);
    const cell = toCell(name, column.kind, value(i));
    const present = cellAt(column, row);
    if (cell === present) continue;
    rows.push(row);
    before.push(present);
    after.push(cell);
  }
  return { name, kind: column.kind, rows, before, after };
}

function measured(table: LiveTable, name: string): Column {
  const column = table.measured(name);
  if (column !== undefined) return column;
  const formula = table.formula(name)!;
  const from = [...formula.needs.keys()].join(', ');
  throw new TypeError(`${name} is computed as ${formula.definition.formula}. Change ${from || 'its formula'} instead`);
}

function checkRow(table: LiveTable, row: number): void {
  if (Number.isInteger(row) && row >= 0 && row < table.rows) return;
  throw new RangeError(`There is no row ${row}: rows go from 0 to ${table.rows - 1}. Add rows first`);
}

/**
 * New rows, side by side.
 * @param at  the row that the first becomes
 */
export function addingRows(
  table: LiveTable,
  added: readonly Readonly<Record<string, Cell>>[],
  at: number,
): Edit | undefined {
  if (!Number.isInteger(at) || at < 0 || at > table.rows)
    throw new RangeError(`Rows can be added at 0 to ${table.rows}, not at ${at}`);
  for (const row of added) for (const name of Object.keys(row)) measured(table, name);
  const columns = measuredColumns(table, (column, name): ColumnInput => {
    const cells = added.map((row) => toCell(name, column.kind, Object.hasOwn(row, name) ? row[name] : null));
    return column.kind === 'text'
      ? { kind: 'text', values: cells.map((cell) => String(cell ?? '')) }
      : {
          kind: column.kind,
          unit: column.unit,
          values: Float64Array.from(cells, (cell) => Number(cell ?? Number.NaN)),
        };
  });
  return added.length === 0 ? undefined : { kind: 'rows', how: 'add', rows: added.map((_, i) => at + i), columns };
}

export function removingRows(table: LiveTable, rows: Iterable<number>): Edit | undefined {
  const gone = [...new Set(rows)].sort((a, b) => a - b);
  for (const row of gone) checkRow(table, row);
  if (gone.length === 0) return undefined;
  return { kind: 'rows', how: 'remove', rows: gone, columns: measuredColumns(table, (column) => rowsOf(column, gone)) };
}

function measuredColumns(table: LiveTable, take: (column: Column, name: string) => ColumnInput): Columns {
  const columns = table.names.flatMap((name) => {
    const column = table.measured(name);
    return column === undefined ? [] : [[name, take(column, name)] as const];
  });
  return Object.fromEntries(columns);
}

/** New columns at the end. */
export function addingColumns(table: LiveTable, columns: readonly Definition[]): Edit {
  const names = new Set(table.names);
  for (const definition of columns) {
    const { name } = definition;
    if (names.has(name) && 'formula' in definition) {
      // A loop says more than a name that is taken.
      table.refuseLoop(definition);
      throw new FormulaError(
        table.names.includes(name) && table.formula(name) === undefined
          ? say`There is a column ${name} already. Choose another name`
          : say`There is a column ${name} already. Choose another name, or replace its formula`,
        0,
        definition.formula.length,
      );
    }
    checkNewName(name, names);
    names.add(name);
  }
  const places = columns.map((_, i) => table.names.length + i);
  return { kind: 'columns', how: 'add', places, columns };
}

export function removingColumn(table: LiveTable, name: string, keys: readonly string[]): Edit {
  refuseIfUsed(table, name, keys, 'removed');
  return { kind: 'columns', how: 'remove', places: [table.names.indexOf(name)], columns: [table.definition(name)] };
}

export function renamingColumn(table: LiveTable, name: string, to: string, keys: readonly string[]): Edit | undefined {
  refuseIfUsed(table, name, keys, 'renamed');
  if (to === name) return undefined;
  checkNewName(to, new Set(table.names));
  return { kind: 'name', before: name, after: to };
}

export function changingFormula(table: LiveTable, after: ComputedDefinition): Edit {
  const before = table.formula(after.name)?.definition;
  if (before === undefined)
    throw new TypeError(`${after.name} is measured and has no formula. Add a column of another name`);
  return { kind: 'formula', before, after };
}

/** A column's name may be anything but nothing, and there is one column of a name. */
function checkNewName(name: string, names: ReadonlySet<string>): void {
  if (typeof name !== 'string' || name.trim() === '') throw new TypeError('A column needs a name');
  if (names.has(name)) throw new TypeError(`There is a column ${name} already. Choose another name`);
}

function refuseIfUsed(table: LiveTable, name: string, keys: readonly string[], what: string): void {
  const users = table.usersOf(name);
  if (users.length > 0)
    throw new TypeError(
      `${name} can't be ${what}: ${listed(users)} ${users.length === 1 ? 'is' : 'are'} made from it. Change or remove ${users.length === 1 ? 'that' : 'those'} first`,
    );
  if (keys.includes(name)) throw new TypeError(`${name} can't be ${what}: it is one of the keys that tell rows apart`);
}
