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
  const rows = completeRows(used, total);

  const numbers = (name: string): Float64Array => {
    const values = column(name);
    if (!(values instanceof Float64Array)) throw new TypeError(`${name} must be numeric here, and it holds text`);
    const taken = new Float64Array(rows.length);
    for (let i = 0; i < rows.length; i++) taken[i] = values[rows[i]];
    return taken;
  };
  const contrasts = (name: string): Contrast[] => {
    const values = column(name);
    if (values instanceof Float64Array) return [{ name, values: numbers(name) }];
    const { codes, levels } = encode(rows, [values]);
    return levels.slice(1).map((level, index) => ({
      name: name + level,
      values: indicator(codes, index + 1),
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

function completeRows(columns: readonly Data[], total: number): Int32Array {
  const missing = new Uint8Array(total);
  for (const values of columns) {
    if (values instanceof Float64Array) {
      for (let row = 0; row < total; row++) if (!Number.isFinite(values[row])) missing[row] = 1;
    } else {
      for (let row = 0; row < total; row++) if (values[row] === '') missing[row] = 1;
    }
  }
  const rows = new Int32Array(total);
  let kept = 0;
  for (let row = 0; row < total; row++) if (missing[row] === 0) rows[kept++] = row;
  return rows.subarray(0, kept);
}

function indicator(codes: Int32Array, level: number): Float64Array {
  const values = new Float64Array(codes.length);
  for (let i = 0; i < codes.length; i++) if (codes[i] === level) values[i] = 1;
  return values;
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
    const own = codesOf(rows, values);
    // A pair of codes is numbered when first met; then the numbers are put in order.
    const width = own.names.length;
    const number = new Map<number, number>();
    const met: { first: number; second: number | string }[] = [];
    const pairs = new Int32Array(rows.length);
    for (let i = 0; i < rows.length; i++) {
      const key = codes[i] * width + own.codes[i];
      let known = number.get(key);
      if (known === undefined) {
        known = met.push({ first: codes[i], second: own.names[own.codes[i]] }) - 1;
        number.set(key, known);
      }
      pairs[i] = known;
    }
    const order = [...met.keys()].sort(
      (a, b) => met[a].first - met[b].first || (met[a].second < met[b].second ? -1 : 1),
    );
    const rank = new Int32Array(order.length);
    for (const [index, known] of order.entries()) rank[known] = index;
    const before = levels;
    levels = order.map((known) => {
      const { first, second } = met[known];
      return position === 0 ? String(second) : `${before[first]}:${second}`;
    });
    for (let i = 0; i < pairs.length; i++) pairs[i] = rank[pairs[i]];
    codes = pairs;
  }
  return { codes, levels };
}

function codesOf(rows: Int32Array, values: Data): { codes: Int32Array; names: (number | string)[] } {
  const known = new Map<number | string, number>();
  const codes = new Int32Array(rows.length);
  for (let i = 0; i < rows.length; i++) {
    const value = values[rows[i]];
    let code = known.get(value);
    if (code === undefined) {
      code = known.size;
      known.set(value, code);
    }
    codes[i] = code;
  }
  return { codes, names: [...known.keys()] };
}
