import { ExactSums } from '../exactSums.ts';
import type { Blocks } from './blocks.ts';
import type { RandomShape, RandomSpec, Shape } from './design.ts';
import { layOut } from './layout.ts';
import { orthonormalOfProducts } from './orthonormalOfProducts.ts';
import { type Parted, union } from './sumSpec.ts';
import { pair, type SumStore, type SumTable } from './sumStore.ts';

/** What is fitted to the sums. */
export interface ModelOfSums {
  readonly fixed: readonly string[];
  readonly random: readonly RandomSpec[];
  readonly parted: readonly Parted[];
  /** The grouping within which all others are nested. */
  readonly group: readonly string[];
}

/** A column of the model: one column of sums, where there is one, and a number beside it, the same for all rows of a group. */
interface Column {
  readonly sum?: number;
  readonly beside: (group: number) => number;
  readonly byGroup: boolean;
}

interface RandomColumns extends RandomShape {
  readonly table: SumTable;
  readonly columns: readonly Column[];
}

const one: Column = { beside: () => 1, byGroup: false };

/**
 * The blocks of a model from sums alone. Every number in them is a sum of products of two of the model's columns over some
 * rows: it is worked out without rounding, and rounded once. Columns are taken from their means first, so that large means
 * cost no digits.
 */
export function blocksOfSums(store: SumStore, model: ModelOfSums): { shape: Shape; blocks: Blocks } {
  store.settle();
  const { n } = store;
  const group = store.table(model.group)!;
  const parts = partsOf(store, model, group);
  const terms = fixedColumns(store, model, parts);
  const response = plain(store.terms[store.terms.length - 1].sumOf[0]);
  const random = randomColumns(store, model, parts);

  const whole = store.tables[0];
  const means = [...terms.map(({ column }) => column), response].map((column) =>
    column === one ? 0 : meanOf(column, whole, group, n),
  );
  const columns = [...terms.map(({ column }) => column), response].map((column, j) => lessBy(column, means[j]));
  const products = productsOf(store, columns, group);
  const lengths = columns.map((_, j) => {
    const [square, sum] = [products.at(pair(j, j)), products.at(pair(j, 0))];
    return Math.sqrt(square + means[j] * (2 * sum + means[j] * n));
  });
  const { r, kept, dropped, leastSquares, residualSquares } = orthonormalOfProducts(products, columns.length, lengths);
  const p = kept.length;

  const { levels } = group;
  const groupOf = random.map(({ table }) => table.levels.to(levels));
  const layout = layOut(
    random.map((term, i) => ({ width: term.columns.length, levels: term.table.levels.size, clusterOf: groupOf[i] })),
    levels.size,
    p,
  );
  const wide = p + 1;
  const zz = new Float64Array(layout.zzStart[levels.size]);
  const zu = new Float64Array(layout.zuStart[levels.size]);
  const uu = new Float64Array(wide * wide);
  for (let i = 0; i < p; i++) uu[i * (wide + 1)] = 1;
  uu[wide * wide - 1] = residualSquares;

  const used = [...kept.map((index) => columns[index]), columns[columns.length - 1]];
  for (const [i, { table, columns: own, coefficients }] of random.entries()) {
    const { placeOf } = layout.local[i];
    for (const [a, coefficient] of own.entries()) {
      const sums = used.map((column) => summer(store, table, coefficient, column));
      const row = new Float64Array(wide);
      for (let level = 0; level < placeOf.length; level++) {
        const h = groupOf[i][level];
        for (let j = 0; j < wide; j++) row[j] = sums[j](level, h) / coefficients[a].scale;
        toBasis(row, r, leastSquares);
        zu.set(row, layout.zuStart[h] + (placeOf[level] + a) * wide);
      }
    }
    for (let j = 0; j <= i; j++) {
      const other = random[j];
      const cells = store.table(union(table.levels.columns, other.table.levels.columns))!;
      const [mine, theirs, groups] = [table.levels, other.table.levels, levels].map((each) => cells.levels.to(each));
      for (const [a, x] of own.entries()) {
        for (const [b, y] of other.columns.entries()) {
          const sum = summer(store, cells, x, y);
          const scale = coefficients[a].scale * other.coefficients[b].scale;
          for (let cell = 0; cell < mine.length; cell++) {
            const h = groups[cell];
            const [at, d] = [layout.zzStart[h], layout.size[h]];
            const [u, w] = [placeOf[mine[cell]] + a, layout.local[j].placeOf[theirs[cell]] + b];
            zz[at + u * d + w] = zz[at + w * d + u] = sum(cell, h) / scale;
          }
        }
      }
    }
  }
  // The columns themselves are those less their means, and the means again, which lie along the first of the basis.
  for (const [j, index] of kept.entries()) r[j] += means[index] * Math.sqrt(n);
  leastSquares[0] += means[means.length - 1] * Math.sqrt(n);
  return {
    shape: {
      ...{ n, missing: store.missing },
      terms: terms.map(({ name }) => ({ name })),
      random: random.map(({ by, levels: names, coefficients }) => ({ by, levels: names, coefficients })),
    },
    blocks: { ...layout, n, p, zz, zu, uu, r, kept, dropped, leastSquares },
  };
}

/** Sums of products with the model's columns turned into such with the basis, and with what least squares leaves; in place. */
function toBasis(row: Float64Array, r: Float64Array, leastSquares: Float64Array): void {
  const p = leastSquares.length;
  for (let j = 0; j < p; j++) {
    for (let k = 0; k < j; k++) row[j] -= r[k * p + j] * row[k];
    row[j] /= r[j * (p + 1)];
    row[p] -= leastSquares[j] * row[j];
  }
}

/** The two columns that each parted column gives, by their names. */
function partsOf(store: SumStore, { parted }: ModelOfSums, group: SumTable): Map<string, Column> {
  const parts = new Map<string, Column>();
  for (const { column, within, mean } of parted) {
    const sum = store.terms.find(({ name }) => name === column)!.sumOf[0];
    const sums = group.sums[0][sum]!;
    const counts = group.sums[0][0]!;
    const means = Float64Array.from({ length: group.levels.size }, (_, h) => sums.at(h) / counts.at(h));
    parts.set(within, { sum, beside: (h) => -means[h], byGroup: true });
    parts.set(mean, { beside: (h) => means[h], byGroup: true });
  }
  return parts;
}

function plain(sum: number | undefined): Column {
  return { sum, beside: () => 0, byGroup: false };
}

function lessBy({ sum, beside, byGroup }: Column, mean: number): Column {
  return { sum, beside: (h) => beside(h) - mean, byGroup };
}

/** The intercept, then the fixed terms: numbers as they are, treatment contrasts of categories, products of both. */
function fixedColumns(store: SumStore, { fixed }: ModelOfSums, parts: ReadonlyMap<string, Column>) {
  const terms = fixed.flatMap((name) => {
    const part = parts.get(name);
    if (part) return [{ name, column: part }];
    const term = store.terms.find((each) => each.name === name);
    if (!term) throw new TypeError(`No sums were kept of ${name}; there are sums of ${kept(store)}`);
    let combinations: { name: string; codes: readonly number[] }[] = [{ name: '', codes: [] }];
    for (const part of term.parts) {
      const text = store.kinds.get(part) === 'text' ? store.values.get(part)!.met : undefined;
      const each = text
        ? text.slice(1).map((value, i) => ({ name: `${part}${value}`, codes: [i + 1] }))
        : [{ name: part, codes: [] }];
      combinations = each.flatMap((right) =>
        combinations.map((left) => ({
          name: left.name === '' ? right.name : `${left.name}:${right.name}`,
          codes: [...left.codes, ...right.codes],
        })),
      );
    }
    return combinations.map(({ name, codes }) => {
      const level = term.levels.find(codes);
      return { name, column: plain(level === undefined ? undefined : term.sumOf[level]) };
    });
  });
  return [{ name: '(Intercept)', column: one }, ...terms];
}

function kept(store: SumStore): string {
  return store.terms
    .slice(1)
    .map(({ name }) => name)
    .join(', ');
}

/** The random terms; uncorrelated coefficients are separate terms over the same groups. */
function randomColumns(store: SumStore, model: ModelOfSums, parts: ReadonlyMap<string, Column>): RandomColumns[] {
  const { n } = store;
  const group = store.table(model.group)!;
  return model.random.flatMap(({ by, slopes = [], correlated = true }) => {
    const table = store.table(by);
    if (!table) throw new TypeError(`No sums were kept by ${by.join(' and ')}`);
    const all = [
      { name: '(Intercept)', scale: 1, column: one },
      ...slopes.map((name) => {
        const column = parts.get(name) ?? plain(store.terms.find((term) => term.name === name)?.sumOf[0]);
        const scale = Math.sqrt(productsOf(store, [column], group).at(0) / n) || 1;
        return { name, scale, column };
      }),
    ];
    const levels = namesOf(store, table.levels.columns, table, by);
    const shape = { by: by.join(':'), levels, table };
    const term = (those: typeof all) => ({
      ...shape,
      coefficients: those.map(({ name, scale }) => ({ name, scale })),
      columns: those.map(({ column }) => column),
    });
    return correlated ? [term(all)] : all.map((each) => term([each]));
  });
}

function namesOf(store: SumStore, columns: readonly string[], { levels }: SumTable, by: readonly string[]): string[] {
  const met = columns.map((name) => store.values.get(name)!.met);
  const places = by.map((name) => columns.indexOf(name));
  return Array.from({ length: levels.size }, (_, level) => {
    const codes = levels.codesOf(level);
    return places.map((place) => met[place][codes[place]]).join(':');
  });
}

/** The sum of one column over all rows, over their number. */
function meanOf(column: Column, whole: SumTable, group: SumTable, n: number): number {
  const table = column.byGroup ? group : whole;
  const sum = new ExactSums(1);
  for (let level = 0; level < table.levels.size; level++) {
    if (column.sum !== undefined) sum.addTimes(0, 1, table.sums[0][column.sum]!, level);
    sum.addTimes(0, column.beside(level), table.sums[0][0]!, level);
  }
  sum.carry();
  return sum.at(0) / n;
}

/** The products of every two columns over all rows. */
function productsOf(store: SumStore, columns: readonly Column[], group: SumTable): ExactSums {
  const products = new ExactSums(pair(columns.length, 0));
  for (const [a, x] of columns.entries()) {
    for (const [b, y] of columns.slice(0, a + 1).entries()) {
      const at = pair(a, b);
      if (x.sum !== undefined && y.sum !== undefined) products.addTimes(at, 1, store.products, pair(x.sum, y.sum));
      const table = x.byGroup || y.byGroup ? group : store.tables[0];
      const add = adder(store, table, x, y);
      for (let level = 0; level < table.levels.size; level++) add(products, at, level, level);
    }
  }
  products.carry();
  return products;
}

/** Sums of the products of two columns over the rows of each of a table's levels. */
function summer(store: SumStore, table: SumTable, x: Column, y: Column): (level: number, group: number) => number {
  const both = x.sum !== undefined && y.sum !== undefined ? productsIn(store, table, x.sum, y.sum) : undefined;
  const add = adder(store, table, x, y);
  const sum = new ExactSums(1);
  return (level, group) => {
    sum.clear(0);
    if (both) sum.addTimes(0, 1, both, level);
    add(sum, 0, level, group);
    sum.carry();
    return sum.at(0);
  };
}

/** Adds what the numbers beside two columns add to the sum of their products: (x + j)(y + k) - xy = j (y + k) + k x. */
function adder(store: SumStore, table: SumTable, x: Column, y: Column) {
  const counts = sumsIn(store, table, 0);
  const [first, second] = [x, y].map(({ sum }) => (sum === undefined ? undefined : sumsIn(store, table, sum)));
  const right = new ExactSums(1);
  return (into: ExactSums, at: number, level: number, group: number): void => {
    const j = x.beside(group);
    const k = y.beside(group);
    if (j === 1) {
      if (second) into.addTimes(at, 1, second, level);
      into.addTimes(at, k, counts, level);
    } else if (j !== 0) {
      right.clear(0);
      if (second) right.addTimes(0, 1, second, level);
      right.addTimes(0, k, counts, level);
      into.addTimes(at, j, right, 0);
    }
    if (first) into.addTimes(at, k, first, level);
  };
}

/** A column's sums in a table: as a term, or as the coefficient of another. */
function sumsIn(store: SumStore, table: SumTable, sum: number): ExactSums {
  return productsIn(store, table, sum, 0);
}

function productsIn(store: SumStore, { coefficients, sums, levels }: SumTable, a: number, b: number): ExactSums {
  for (const [coefficient, column] of [
    [a, b],
    [b, a],
  ]) {
    const c = coefficients.indexOf(store.columns[coefficient].term.name);
    const found = c < 0 ? undefined : sums[c][column];
    if (found) return found;
  }
  const names = [a, b].map((column) => store.columns[column].term.name).filter((name) => name !== '');
  throw new TypeError(`No sums of ${names.join(' times ')} were kept by ${levels.columns.join(' and ')}`);
}
