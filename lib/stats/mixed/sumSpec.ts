import type { RandomSpec } from './design.ts';
import type { MixedModelSpec } from './mixedModel.ts';

/** A column that enters as what it is beyond the mean of its group, and as that mean, each under a name of its own. */
export interface Parted {
  readonly column: string;
  readonly within: string;
  readonly mean: string;
}

export interface ModelSumsSpec extends MixedModelSpec {
  /** Numeric columns that enter as what they are beyond the mean of their group, and as that mean: the names of both terms. */
  readonly parted?: readonly Parted[];
}

/** What sums are kept of, as columns of the data. */
export interface SumSpec {
  readonly response: string;
  /** Fixed terms, and numeric columns besides that slopes or parted columns are made of. */
  readonly terms: readonly string[];
  /** The random terms, each with the numeric columns whose slopes vary. */
  readonly random: readonly { readonly by: readonly string[]; readonly slopes: readonly string[] }[];
  /** Columns that must be numeric. */
  readonly numbers: readonly string[];
}

/** What sums a model needs. */
export function sumSpecOf({ response, fixed, random, parted = [] }: ModelSumsSpec): SumSpec {
  const source = (name: string) => parted.find(({ within, mean }) => name === within || name === mean)?.column ?? name;
  const slopes = random.map(({ slopes = [] }) => [...new Set(slopes.map(source))]);
  const numbers = [...slopes.flat(), ...parted.map(({ column }) => column)];
  return {
    response,
    terms: [...new Set([...fixed.map(source), ...numbers])],
    random: random.map(({ by }, i) => ({ by, slopes: slopes[i] })),
    numbers: [response, ...numbers],
  };
}

/** The columns of the data that sums are made of. */
export function columnsOf({ response, terms, random }: SumSpec): string[] {
  return [...new Set([response, ...terms.flatMap((term) => term.split(':')), ...random.flatMap(({ by }) => by)])];
}

/** The grouping whose columns are among those of every other. */
export function outermost(random: readonly RandomSpec[]): readonly string[] {
  if (random.some(({ by }) => by.length === 0))
    throw new TypeError('A random term needs at least one grouping column in `by`');
  const around = random.find((one) => random.every(({ by }) => one.by.every((name) => by.includes(name))));
  if (!around)
    throw new TypeError(
      random.length === 0
        ? 'A mixed model needs a random term; for none, use a linear regression'
        : `Sums are kept of groups within groups, and none of ${random.map(({ by }) => by.join(':')).join(', ')} is around all the others; name the outer columns in \`by\`, or use mixedModel for groups that cross`,
    );
  return around.by;
}

/**
 * Which groupings need which sums: each random term all of them, and where neither of two is nested in the other by its
 * columns, both together what their coefficients have in common.
 */
export function tablesOf({ random }: SumSpec) {
  const tables: { by: readonly string[]; coefficients: string[]; terms: string[] | 'all' }[] = [
    { by: [], coefficients: [''], terms: 'all' },
  ];
  const want = (by: readonly string[], slopes: readonly string[], terms: readonly string[] | 'all') => {
    const known = tables.find((table) => sameSet(table.by, by));
    if (!known) tables.push({ by, coefficients: ['', ...slopes], terms: terms === 'all' ? terms : [...terms] });
    else {
      known.coefficients.push(...slopes.filter((name) => !known.coefficients.includes(name)));
      if (terms === 'all') known.terms = terms;
      else if (known.terms !== 'all') known.terms.push(...terms);
    }
  };
  for (const { by, slopes } of random) want(by, slopes, 'all');
  for (const [i, one] of random.entries()) {
    for (const two of random.slice(0, i)) {
      const both = union(one.by, two.by);
      const nested = [one, two].some(({ by }) => by.length === both.length);
      if (!nested) want(both, one.slopes, ['', ...two.slopes]);
    }
  }
  return tables;
}

export function union(one: readonly string[], two: readonly string[]): string[] {
  return [...one, ...two.filter((name) => !one.includes(name))];
}

export function sameSet(one: readonly string[], two: readonly string[]): boolean {
  return one.length === two.length && one.every((name) => two.includes(name));
}
