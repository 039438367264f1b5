/** A column of data: numbers with `NaN` for missing, or categories with `''` for missing. */
export type Data = Float64Array | readonly string[];

export interface RandomSpec {
  /** Grouping columns; `['horse', 'limb']` means limb within horse. */
  readonly by: readonly string[];
  /** Numeric columns whose slope varies between groups, besides the intercept. */
  readonly slopes?: readonly string[];
  /** Whether intercept and slopes may be correlated; true where left out. */
  readonly correlated?: boolean;
}

export interface ModelSpec {
  readonly response: string;
  /** Terms such as `'age'`, `'limb'`, `'time:diet'`; the intercept is always in. */
  readonly fixed: readonly string[];
  readonly random: readonly RandomSpec[];
}

/** One random term: for each row its level, and the covariates whose coefficients vary between levels. */
export interface RandomTerm {
  readonly by: string;
  readonly codes: Int32Array;
  readonly levels: readonly string[];
  /** `(Intercept)` or a slope's column; values are `undefined` for the intercept, else divided by `scale`. */
  readonly coefficients: readonly { readonly name: string; readonly values?: Float64Array; readonly scale: number }[];
}

/** A model's rows as matrices: what is left after missing rows have gone. */
export interface Design {
  readonly n: number;
  /** The rows used, as indices into the data. */
  readonly rows: Int32Array;
  readonly missing: number;
  readonly y: Float64Array;
  readonly terms: readonly { readonly name: string; readonly values: Float64Array }[];
  readonly random: readonly RandomTerm[];
}

interface Contrast {
  readonly name: string;
  readonly values: Float64Array;
}

/** The rows of a model as matrices: treatment contrasts, products for interactions, rows with a missing cell left out. */
export function design(data: Readonly<Record<string, Data>>, spec: ModelSpec): Design {
  const column = (name: string): Data => {
    if (!Object.hasOwn(data, name)) {
      throw new TypeError(`The model names ${name}; the data has ${Object.keys(data).join(', ')}`);
    }
    return data[name];
  };
  const names = new Set([spec.response, ...spec.fixed.flatMap((term) => term.split(':'))]);
  for (const { by, slopes = [] } of spec.random) {
    if (by.length === 0) throw new TypeError('A random term needs at least one grouping column in `by`');
    for (const name of [...by, ...slopes]) names.add(name);
  }
  if (spec.random.length === 0)
    throw new TypeError('A mixed model needs a random term; for none, use a linear regression');
  const used = [...names].map(column);
  const total = used[0].length;
  const kept: number[] = [];
  for (let row = 0; row < total; row++) if (used.every((values) => isThere(values[row]))) kept.push(row);
  const rows = Int32Array.from(kept);

  const numbers = (name: string): Float64Array => {
    const values = column(name);
    if (!(values instanceof Float64Array)) throw new TypeError(`${name} must be numeric here, and it holds text`);
    return Float64Array.from(rows, (row) => values[row]);
  };
  const contrasts = (name: string): Contrast[] => {
    const values = column(name);
    if (values instanceof Float64Array) return [{ name, values: numbers(name) }];
    const { codes, levels } = encode(rows, [values]);
    return levels.slice(1).map((level, index) => ({
      name: name + level,
      values: Float64Array.from(codes, (code) => (code === index + 1 ? 1 : 0)),
    }));
  };
  const terms: Contrast[] = [{ name: '(Intercept)', values: new Float64Array(rows.length).fill(1) }];
  for (const term of spec.fixed) terms.push(...term.split(':').map(contrasts).reduce(products));

  return {
    n: rows.length,
    rows,
    missing: total - rows.length,
    y: numbers(spec.response),
    terms,
    random: spec.random.flatMap((random) => randomTerms(random, encode(rows, random.by.map(column)), numbers)),
  };
}

function isThere(value: number | string): boolean {
  return typeof value === 'number' ? Number.isFinite(value) : value !== '';
}

function products(left: Contrast[], right: Contrast[]): Contrast[] {
  return right.flatMap((b) =>
    left.map((a) => ({ name: `${a.name}:${b.name}`, values: a.values.map((value, row) => value * b.values[row]) })),
  );
}

/** Uncorrelated coefficients are separate terms over the same groups. */
function randomTerms(
  { by, slopes = [], correlated = true }: RandomSpec,
  groups: { codes: Int32Array; levels: string[] },
  numbers: (name: string) => Float64Array,
): RandomTerm[] {
  const coefficients = [
    { name: '(Intercept)', scale: 1 },
    ...slopes.map((name) => {
      const values = numbers(name);
      const scale = Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length) || 1;
      return { name, values: values.map((value) => value / scale), scale };
    }),
  ];
  const term = { by: by.join(':'), ...groups };
  return correlated ? [{ ...term, coefficients }] : coefficients.map((each) => ({ ...term, coefficients: [each] }));
}

/** Codes of the combinations that occur, in code-point order of the first column, then the second, and so on. */
function encode(rows: Int32Array, columns: readonly Data[]): { codes: Int32Array; levels: string[] } {
  let codes = new Int32Array(rows.length);
  let levels = [''];
  for (const [position, values] of columns.entries()) {
    const known = new Map<string | number, number>();
    const own = Int32Array.from(rows, (row) => {
      const code = known.get(values[row]) ?? known.size;
      known.set(values[row], code);
      return code;
    });
    const names = [...known.keys()];
    const pairs = new Map<number, { name: string; first: number; second: string | number }>();
    const pair = codes.map((code, row) => code * names.length + own[row]);
    for (const [row, key] of pair.entries()) {
      if (pairs.has(key)) continue;
      const second = names[own[row]];
      const name = position === 0 ? String(second) : `${levels[codes[row]]}:${second}`;
      pairs.set(key, { name, first: codes[row], second });
    }
    const order = [...pairs].sort(([, a], [, b]) => a.first - b.first || (a.second < b.second ? -1 : 1));
    const rank = new Map(order.map(([key], index) => [key, index]));
    codes = pair.map((key) => rank.get(key)!);
    levels = order.map(([, { name }]) => name);
  }
  return { codes, levels };
}
