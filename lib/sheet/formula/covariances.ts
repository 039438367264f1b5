import { kept } from '../kept.ts';
import type { GroupForms } from './groupForms.ts';

/**
 * Covariances of groups' forms with single cells and with each other, where cells err independently of one another.
 * Each pair of groups is worked out once, so that a herd-wide mean costs one pass over the herd and not one a row.
 */
export class Covariances {
  readonly #variances: readonly Float64Array[];
  readonly #wholes: Pairs = new Map();
  readonly #ownCells: Pairs = new Map();

  /** @param variances for each measured column the squared standard error of its cells */
  constructor(variances: readonly Float64Array[]) {
    this.#variances = variances;
  }

  /** The squared standard error of a cell, numbered row × columns + column. */
  ofCell(cell: number): number {
    const columns = this.#variances.length;
    return this.#variances[cell % columns][Math.floor(cell / columns)];
  }

  /** The covariance of a group's form with one cell. */
  withCell(forms: GroupForms, group: number, cell: number): number {
    const weight = this.#weight(forms, group, cell);
    return weight === 0 ? 0 : weight * this.ofCell(cell);
  }

  /** The covariance of any group of the one with any group of the other; of a group with itself, its variance. */
  of(a: GroupForms, b: GroupForms): OfGroups {
    return pairOf(this.#wholes, a, b, (groupA, groupB) => {
      let sum = this.#cellsWith(a, groupA, b, groupB);
      for (const part of a.parts[groupA]) sum += part.weight * this.of(part.forms, b)(part.group, groupB);
      return sum;
    });
  }

  /** Of the first group's own cells, without its parts, with the whole of the second. */
  #cellsWith(a: GroupForms, groupA: number, b: GroupForms, groupB: number): number {
    let sum = this.#cells(a, b)(groupA, groupB);
    for (const part of b.parts[groupB]) sum += part.weight * this.#cellsWith(a, groupA, part.forms, part.group);
    return sum;
  }

  /** Of both groups' own cells, without their parts. */
  #cells(a: GroupForms, b: GroupForms): OfGroups {
    return pairOf(this.#ownCells, a, b, (groupA, groupB) => {
      const sizeA = a.starts[groupA + 1] - a.starts[groupA];
      const sizeB = b.starts[groupB + 1] - b.starts[groupB];
      return sizeA > sizeB ? this.#sum(b, groupB, a, groupA) : this.#sum(a, groupA, b, groupB);
    });
  }

  #sum(a: GroupForms, groupA: number, b: GroupForms, groupB: number): number {
    let sum = 0;
    let from = b.starts[groupB];
    const end = b.starts[groupB + 1];
    for (let at = a.starts[groupA]; at < a.starts[groupA + 1] && from < end; at++) {
      const cell = a.cells[at];
      from = firstAtLeast(b.cells, cell, from, end);
      if (from < end && b.cells[from] === cell) sum += a.weights[at] * b.weights[from++] * this.ofCell(cell);
    }
    return sum;
  }

  #weight(forms: GroupForms, group: number, cell: number): number {
    let weight = this.#ownWeight(forms, group, cell);
    for (const part of forms.parts[group]) weight += part.weight * this.#weight(part.forms, part.group, cell);
    return weight;
  }

  #ownWeight({ starts, cells, weights }: GroupForms, group: number, cell: number): number {
    const end = starts[group + 1];
    const at = firstAtLeast(cells, cell, starts[group], end);
    return at < end && cells[at] === cell ? weights[at] : 0;
  }
}

type OfGroups = (groupA: number, groupB: number) => number;
type Pairs = Map<GroupForms, Map<GroupForms, OfGroups>>;

/** What `work` gives for each pair of groups, worked out when it is first asked for. */
function pairOf(pairs: Pairs, a: GroupForms, b: GroupForms, work: OfGroups): OfGroups {
  const ofA = kept(pairs, a, () => new Map<GroupForms, OfGroups>());
  return kept(ofA, b, () => {
    const known = new Map<number, number>();
    const count = b.starts.length - 1;
    return (groupA, groupB) => kept(known, groupA * count + groupB, () => work(groupA, groupB));
  });
}

/** The first place from `from` on whose number is at least `wanted`; `end` if there is none. Gallops, then halves. */
function firstAtLeast(sorted: Uint32Array, wanted: number, from: number, end: number): number {
  if (from >= end || sorted[from] >= wanted) return from;
  let step = 1;
  let low = from;
  while (low + step < end && sorted[low + step] < wanted) {
    low += step;
    step *= 2;
  }
  let high = Math.min(low + step, end);
  while (high - low > 1) {
    const middle = (low + high) >>> 1;
    if (sorted[middle] < wanted) low = middle;
    else high = middle;
  }
  return high;
}
