/** In what the engines differ that we write statements for: all else in a statement is understood by each of them alike. */
export interface Dialect {
  /** A name, whatever letters it has. */
  readonly identifier: (name: string) => string;
  /** A text that is not empty. */
  readonly text: (value: string) => string;
  /** Whole days since 1970-01-01 from a column of dates, as a double. */
  readonly days: (date: string) => string;
}

function doubled(sign: string): (text: string) => string {
  return (text) => `${sign}${text.replaceAll(sign, sign + sign)}${sign}`;
}

const standard: Dialect = {
  identifier: doubled('"'),
  text: doubled("'"),
  days: (date) => `(1E0 * EXTRACT(DAY FROM (${date} - DATE '1970-01-01') DAY(7)))`,
};

const dateDiff = (date: string) => `(1E0 * DATE_DIFF('day', DATE '1970-01-01', ${date}))`;

/** The engines by name; `standard` is SQL:2016. */
export const dialects = {
  standard,
  duckdb: { ...standard, days: dateDiff },
  trino: { ...standard, days: dateDiff },
  spark: {
    identifier: doubled('`'),
    // Two texts side by side are one, so that a quote can't be doubled.
    text: (value) => `'${value.replaceAll(/[\\']/g, '\\$&')}'`,
    days: (date) => `(1E0 * DATEDIFF(${date}, DATE '1970-01-01'))`,
  },
} as const satisfies Record<string, Dialect>;

/** The engines that the statements of formulas are written for. */
export type DialectName = keyof typeof dialects;
