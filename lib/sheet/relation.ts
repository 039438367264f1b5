/**
 * Another row of the same table that a formula may look at, by name: the other foot of the pair, the visit before.
 * A relation is data; the sheet reads it for values, errors, lineage and SQL alike.
 */
export interface Relation {
  readonly name: string;
  /** In a sentence, before the column's own words: `the other side's`. */
  readonly words: string;
  /** Columns that must be equal in both rows. `optional` ones are left out where the sheet lacks them. */
  readonly match: readonly string[];
  readonly optional?: readonly string[];
  /** The partner's value of one text column for each value of this row's: `{ limb: { LF: 'RF', RF: 'LF' } }`. */
  readonly swap?: Readonly<Record<string, Readonly<Record<string, string>>>>;
  /**
   * The partner is the row with the nearest smaller value of this column among the rows equal in `match`
   * (`optional` must be equal too, at that nearest value: where no such row stands there, the result is missing).
   */
  readonly before?: string;
}
