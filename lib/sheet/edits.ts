import { counted } from '../words/counted.ts';
import { say } from '../words/say.ts';
import type { Cell } from './cell.ts';
import type { ColumnInput, Columns, Kind } from './column.ts';
import { isoFromDays } from './days.ts';

/** New values in one column: `after[i]` replaces `before[i]` in row `rows[i]`. */
export interface CellChanges {
  readonly name: string;
  readonly kind: Kind;
  readonly rows: readonly number[];
  readonly before: readonly Cell[];
  readonly after: readonly Cell[];
}

/** A column whose values are typed in. */
export interface MeasuredDefinition {
  readonly name: string;
  readonly title?: string;
  readonly column: ColumnInput;
}

/** A column whose values come from a formula. */
export interface ComputedDefinition<Name extends string = string> {
  readonly name: Name;
  readonly formula: string;
  /** UCUM code in which to give the result; the formula's own where left out. */
  readonly unit?: string;
  readonly title?: string;
}

/** A column of a sheet as it is added: typed in, or computed. */
export type Definition = MeasuredDefinition | ComputedDefinition;

/**
 * One entry of a sheet's history, as plain data: enough to do it, to take it back, and to say what it was.
 * Rows and places are counted from 0 in the table that has the rows or columns in question.
 */
export type Edit =
  | { readonly kind: 'cells'; readonly how: 'set' | 'fill' | 'paste'; readonly cells: readonly CellChanges[] }
  | {
      readonly kind: 'rows';
      readonly how: 'add' | 'remove';
      readonly rows: readonly number[];
      readonly columns: Columns;
    }
  | {
      readonly kind: 'columns';
      readonly how: 'add' | 'remove';
      readonly places: readonly number[];
      readonly columns: readonly Definition[];
    }
  | { readonly kind: 'formula'; readonly before: ComputedDefinition; readonly after: ComputedDefinition }
  | { readonly kind: 'name'; readonly before: string; readonly after: string };

/** The edit that takes this one back. */
export function inverse(edit: Edit): Edit {
  if (edit.kind === 'cells') {
    const cells = edit.cells.map((change) => ({ ...change, before: change.after, after: change.before }));
    return { ...edit, cells };
  }
  if (edit.kind === 'rows' || edit.kind === 'columns') return { ...edit, how: edit.how === 'add' ? 'remove' : 'add' };
  return { ...edit, before: edit.after, after: edit.before } as Edit;
}

const hows = {
  set: say`set`,
  fill: say`fill`,
  paste: say`paste`,
  add: say`add`,
  remove: say`remove`,
} satisfies Readonly<Record<string, string>>;

/**
 * What an edit did, in words.
 * @example inWords(edit) // 'set toe_angle_deg of row 12 from 52 to 50'
 */
export function inWords(edit: Edit): string {
  switch (edit.kind) {
    case 'cells':
      return cellsInWords(edit.how, edit.cells);
    case 'rows':
      return `${hows[edit.how]} ${rowsInWords(edit.rows)}`;
    case 'columns':
      return columnsInWords(hows[edit.how], edit.columns.map(definitionInWords));
    case 'formula':
      return say`change ${edit.after.name} from ${edit.before.formula} to ${edit.after.formula}`;
    case 'name':
      return say`rename ${edit.before} to ${edit.after}`;
  }
}

function cellsInWords(how: 'set' | 'fill' | 'paste', cells: readonly CellChanges[]): string {
  const [first] = cells;
  if (first === undefined) return say`${hows[how]} nothing`;
  const { name, kind, rows, before, after } = first;
  if (how === 'set') {
    const [from, to] = [before[0], after[0]].map((cell) => cellInWords(cell, kind));
    return say`set ${name} of ${rowsInWords(rows)} from ${from} to ${to}`;
  }
  if (how === 'fill') return say`fill ${name} of ${rowsInWords(rows)} with ${cellInWords(after[0], kind)}`;
  return say`paste ${cells.map((change) => change.name).join(', ')} of ${rowsInWords(rows)}`;
}

function cellInWords(cell: Cell, kind: Kind): string {
  if (cell === null) return say`missing`;
  if (kind === 'date') return isoFromDays(Number(cell));
  if (kind === 'boolean') return cell === 1 ? say`yes` : say`no`;
  return String(cell);
}

/** `row 4`, `rows 4 to 9`, `3 rows (1, 5, 9)`, `40 rows`. */
function rowsInWords(rows: readonly number[]): string {
  if (rows.length === 1) return say`row ${rows[0]}`;
  const first = rows[0];
  if (rows.length > 1 && rows.every((row, i) => row === first + i))
    return say`rows ${first} to ${rows[rows.length - 1]}`;
  const which = rows.length > 0 && rows.length <= 5 ? ` (${rows.join(', ')})` : '';
  return counted(rows.length, { one: say`${rows.length} row${which}`, other: say`${rows.length} rows${which}` });
}

function definitionInWords(definition: Definition): string {
  return 'formula' in definition ? say`${definition.name} as ${definition.formula}` : definition.name;
}

function columnsInWords(how: string, columns: readonly string[]): string {
  const names = columns.join(', ');
  return counted(columns.length, {
    one: say`${how} column ${names}`,
    other: say`${how} ${columns.length} columns ${names}`,
  });
}

/** Edits done and edits taken back, without limit. */
export class History {
  readonly #done: Edit[] = [];
  #undone: Edit[] = [];

  get done(): readonly Edit[] {
    return this.#done;
  }

  get undone(): readonly Edit[] {
    return this.#undone;
  }

  /** A new edit; what had been taken back can't be done again after it. */
  record(edit: Edit): void {
    this.#done.push(edit);
    this.#undone = [];
  }

  /** The last edit that stands, moved to those taken back. */
  back(): Edit | undefined {
    const edit = this.#done.pop();
    if (edit !== undefined) this.#undone.push(edit);
    return edit;
  }

  /** The last edit taken back, moved to those that stand. */
  forth(): Edit | undefined {
    const edit = this.#undone.pop();
    if (edit !== undefined) this.#done.push(edit);
    return edit;
  }
}
