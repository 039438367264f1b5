import type { Cell } from '../sheet/cell.ts';
import { say } from '../words/say.ts';
import type { ColumnPlan } from './columnPlan.ts';
import { type DateOrder, dateOrder, dayOf, faultOf } from './dateOrder.ts';
import { isMissing } from './missingWords.ts';
import { parseDate } from './parseDate.ts';
import type { DecimalMark } from './parseQuantity.ts';
import { type ProblemCode, problem } from './problems.ts';
import { expectedNumber, numberIn, trueOrFalse } from './readColumn.ts';

/** What a typed cell says; or why it can't be used, in words. */
export type CellRead =
  | { readonly cell: Cell }
  | { readonly code: ProblemCode; readonly expected: string; readonly remedy: string };

export interface CellReading {
  /** The decimal mark, where it matters: `1,234`. */
  readonly mark?: DecimalMark;
  /** The order of day and month in the dates around it; left out, only the cell itself tells. */
  readonly dates?: DateOrder;
}

/**
 * Reads one cell as someone types it, in the same words as a cell of a file: `52°`, `8,5 cm`, `3 1/4 in`, `9 Mar 2026`,
 * `near fore`. Nothing, or a word for it, is missing.
 * @param plan  what its column is; `headingUnit` is the unit of a number without one
 * @example readCell(planOf('toe_length_mm'), '8,5 cm') // { cell: 85 }
 */
export function readCell(plan: ColumnPlan, text: string, { mark = '.', dates }: CellReading = {}): CellRead {
  if (text.trim() === '') return { cell: null };
  switch (plan.kind) {
    case 'number': {
      const { value, fault } = numberIn(text, plan, mark);
      if (fault) return refused(fault, expectedNumber(plan, fault));
      return { cell: Number.isNaN(value) ? null : value };
    }
    case 'date': {
      const reading = parseDate(text);
      const order = dates ?? (reading ? dateOrder([reading]) : 'iso');
      const day = dayOf(reading, order);
      const fault = faultOf(text, reading, day, plan);
      if (fault === 'date-order')
        return { code: fault, expected: say`a date that can be read one way only`, remedy: say`Write year-month-day` };
      if (fault) return refused(fault, '');
      return { cell: Number.isNaN(day) ? null : day };
    }
    default:
      return readWord(plan, text);
  }
}

function readWord({ kind, schema }: ColumnPlan, text: string): CellRead {
  const understand = schema?.understand ?? (kind === 'boolean' ? trueOrYes : undefined);
  if (understand === undefined) return { cell: text.trim() };
  const word = understand(text);
  if (word !== undefined && word !== '') return { cell: kind === 'boolean' ? Number(word === 'yes') : word };
  if (isMissing(text)) return { cell: null };
  return refused('not-a-word', (schema?.words ?? ['yes', 'no']).join(', '));
}

const trueOrYes = (text: string) =>
  trueOrFalse(text) ?? (/^y(es)?$/i.test(text.trim()) ? 'yes' : /^no?$/i.test(text.trim()) ? 'no' : undefined);

function refused(code: ProblemCode, detail: string): CellRead {
  const { expected, remedy } = problem(code, { file: '', row: 0 }, detail);
  return { code, expected, remedy };
}
