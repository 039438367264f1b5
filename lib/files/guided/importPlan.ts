import type { TableName } from '../../hoof/context.ts';
import type { Limb } from '../../hoof/limbs.ts';
import type { SerialDays } from './cellGrid.ts';

/** What becomes of one column of a file. */
export type ColumnUse =
  /** It is a column of the table, of one limb where the file has a row a horse. */
  | {
      readonly kind: 'column';
      readonly column: string;
      /** UCUM code of numbers without a unit, where it is not the column's own. */
      readonly unit?: string;
      readonly limb?: Limb;
    }
  /** It is kept under its own heading. */
  | { readonly kind: 'own' }
  | { readonly kind: 'nothing' };

/** Whether two uses make the same of a column. */
export function sameUse(one: ColumnUse | undefined, other: ColumnUse | undefined): boolean {
  if (one?.kind !== 'column' || other?.kind !== 'column') return one?.kind === other?.kind;
  return one.column === other.column && one.unit === other.unit && one.limb === other.limb;
}

/** How a file is read, as plain data: it can be kept for the next file with the same headings. */
export interface ImportPlan {
  readonly table: TableName;
  /** The row of the headings, from 0. */
  readonly headingRow: number;
  /** For each column of the file, in order. */
  readonly uses: readonly ColumnUse[];
  /** The order of day and month, where the user states it. */
  readonly dates?: 'dmy' | 'mdy';
  /** From where day numbers count; left out, they are reported. */
  readonly serial?: SerialDays;
  /** Words of the file for limbs, as the user explained them. */
  readonly limbs: readonly (readonly [said: string, limb: Limb])[];
  /** What holds for all rows, as typed, where the file has no column for it. */
  readonly given: readonly (readonly [column: string, text: string])[];
}

/** The limbs that have columns of their own; none where a row is a foot. */
export function limbsAcross({ uses }: ImportPlan): Limb[] {
  return [...new Set(uses.flatMap((use) => (use.kind === 'column' && use.limb ? [use.limb] : [])))];
}
