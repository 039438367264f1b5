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

/** One random term: its levels, and what its coefficients are of. */
export interface RandomShape {
  readonly by: string;
  readonly levels: readonly string[];
  /** `(Intercept)` or a slope's column, which was divided by `scale`. */
  readonly coefficients: readonly { readonly name: string; readonly scale: number }[];
}

/** What a model is of, apart from its rows. */
export interface Shape {
  readonly n: number;
  readonly missing: number;
  readonly terms: readonly { readonly name: string }[];
  readonly random: readonly RandomShape[];
}

/** A random term with its rows: for each its level, and the covariates whose coefficients vary between levels. */
export interface RandomTerm extends RandomShape {
  readonly codes: Int32Array;
  /** Values are `undefined` for the intercept, else divided by `scale`. */
  readonly coefficients: readonly { readonly name: string; readonly values?: Float64Array; readonly scale: number }[];
}

/** A model's rows as matrices: what is left after missing rows have gone. */
export interface Design extends Shape {
  /** The rows used, as indices into the data. */
  readonly rows: Int32Array;
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
    return taken(values, rows, new Float64Array(rows.length));
  };
  const known = new Map<string, Coded<string>>();
  const categories = (name: string): Coded<string> => {
    if (!known.has(name)) {
      const values = column(name);
      if (values instanceof Float64Array) {
        const { codes, levels } = coded(taken(values, rows, new Float64Array(rows.length)));
        known.set(name, { codes, levels: levels.map(String) });
      } else known.set(name, coded(taken(values, rows, new Array<string>(rows.length))));
    }
    return known.get(name)!;
  };
  const contrasts = (name: string): Contrast[] => {
    const values = column(name);
    if (values instanceof Float64Array) return [{ name, values: numbers(name) }];
    const { codes, levels } = categories(name);
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
    random: spec.random.flatMap((random) => randomTerms(random, random.by.map(categories).reduce(paired), numbers)),
  };
}

/** The rows without a missing cell in any of the columns. */
export function completeRows(columns: readonly Data[], total: number): Int32Array {
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

function taken<Values extends { [row: number]: Value }, Value>(
  from: { readonly [row: number]: Value },
  rows: Int32Array,
  into: Values,
): Values {
  for (let i = 0; i < rows.length; i++) into[i] = from[rows[i]];
  return into;
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
  groups: Coded<string>,
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

/** For each row the place of its value among those that occur, which are in order. */
interface Coded<Value> {
  readonly codes: Int32Array;
  readonly levels: readonly Value[];
}

/** In the order of numbers or of code points. */
function coded<Value extends number | string>(values: ArrayLike<Value>): Coded<Value> {
  const known = new Map<Value, number>();
  const codes = new Int32Array(values.length);
  let code = -1;
  for (let i = 0; i < codes.length; i++) {
    const value = values[i];
    // Rows of one group often lie together.
    if (i === 0 || value !== values[i - 1]) {
      code = known.get(value) ?? known.size;
      known.set(value, code);
    }
    codes[i] = code;
  }
  const met = [...known.keys()];
  const order = Int32Array.from(met.keys()).sort((a, b) => (met[a] < met[b] ? -1 : 1));
  const rank = new Int32Array(order.length);
  for (let place = 0; place < order.length; place++) rank[order[place]] = place;
  for (let i = 0; i < codes.length; i++) codes[i] = rank[codes[i]];
  return { codes, levels: Array.from(order, (index) => met[index]) };
}

/** The combinations that occur, in the order of the first, then the second. */
function paired(first: Coded<string>, second: Coded<string>): Coded<string> {
  const width = second.levels.length;
  const pairs = new Float64Array(first.codes.length);
  for (let i = 0; i < pairs.length; i++) pairs[i] = first.codes[i] * width + second.codes[i];
  const { codes, levels } = coded(pairs);
  const name = (pair: number) => `${first.levels[Math.floor(pair / width)]}:${second.levels[pair % width]}`;
  return { codes, levels: levels.map(name) };
}
