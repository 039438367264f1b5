import type { Column } from './column.ts';
import type { Relation } from './relation.ts';

/** The rows of a table sorted into groups by their values in some key columns. */
export interface Groups {
  /** For each row its group, 0 to count - 1. A missing key is a key like any other. */
  readonly codes: Int32Array;
  readonly count: number;
}

/** What a formula reads from: columns by name, partner rows by relation, groups by keys. A sheet is one. */
export interface Table {
  readonly rows: number;
  /** Names of all columns, measured and computed, in order. */
  readonly names: readonly string[];
  readonly relations: readonly Relation[];
  /** The column of that name; a `FormulaError` or `TypeError` where there is none. */
  column(name: string): Column;
  /** For each row the row that the relation leads to, or -1. */
  partners(relation: Relation): Int32Array;
  groups(keys: readonly string[]): Groups;
}
