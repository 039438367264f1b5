/** What a column's numbers or codes stand for. `date` is whole days since 1970-01-01, `boolean` is 1, 0 or NaN. */
export type Kind = 'number' | 'date' | 'boolean' | 'text';

/**
 * A column as anyone may hand it in: numbers (`NaN` for missing) or text (`''` for missing).
 * `unit` is a UCUM code, `'1'` for a pure number; `error` is one standard error a value, in the same unit.
 */
export interface ColumnInput {
  readonly unit?: string;
  readonly kind?: Kind;
  readonly values: Float64Array | readonly string[];
  readonly error?: Float64Array;
}

/** A table: columns of one length by name, in order. */
export type Columns = Record<string, ColumnInput>;

export interface NumberColumn {
  readonly kind: 'number' | 'date' | 'boolean';
  readonly unit: string;
  readonly values: Float64Array;
  readonly error?: Float64Array;
}

/** Text as codes into a dictionary; code -1 is missing. `values` is made on first use. */
export class TextColumn {
  readonly kind = 'text';
  readonly unit = '1';
  /** Text has none; named so that a column of either kind can be taken apart. */
  declare readonly error?: undefined;
  #values: readonly string[] | undefined;

  constructor(
    readonly codes: Int32Array,
    readonly levels: readonly string[],
  ) {}

  static from(values: readonly string[]): TextColumn {
    const codes = new Int32Array(values.length);
    const known = new Map<string, number>();
    const levels: string[] = [];
    for (let row = 0; row < values.length; row++) {
      const value = values[row];
      if (value === '') {
        codes[row] = -1;
        continue;
      }
      let code = known.get(value);
      if (code === undefined) {
        code = levels.push(value) - 1;
        known.set(value, code);
      }
      codes[row] = code;
    }
    return new TextColumn(codes, levels);
  }

  get values(): readonly string[] {
    this.#values ??= Array.from(this.codes, (code) => (code < 0 ? '' : this.levels[code]));
    return this.#values;
  }

  at(row: number): string {
    const code = this.codes[row];
    return code < 0 ? '' : this.levels[code];
  }
}

/** A column in its one form inside. */
export type Column = NumberColumn | TextColumn;

/** The one form inside: text as codes, numbers with a unit and a kind. */
export function toColumn(input: ColumnInput | Column): Column {
  if (input instanceof TextColumn) return input;
  if (input.values instanceof Float64Array) {
    const kind = input.kind === undefined || input.kind === 'text' ? 'number' : input.kind;
    return { kind, unit: input.unit ?? (kind === 'date' ? 'd' : '1'), values: input.values, error: input.error };
  }
  return TextColumn.from(input.values);
}

/** How many rows a table has; a table whose columns differ in length is a programmer's mistake. */
export function rowCount(columns: Columns): number {
  let rows = -1;
  for (const [name, column] of Object.entries(columns)) {
    // Text that has its codes already need not be spelt out to be counted.
    const { length } = column instanceof TextColumn ? column.codes : column.values;
    if (rows < 0) rows = length;
    else if (length !== rows)
      throw new TypeError(`Column ${name} has ${length} rows where the columns before it have ${rows}`);
  }
  return Math.max(rows, 0);
}
