import type { Groups } from '../table.ts';

/**
 * A formula near its present values, as a sum of slope × deviation: for each row a few cells of measured columns and a
 * few groups, whose own forms are shared by all the rows that name them.
 */
export interface LinearForm {
  /** `rows` says which row's cell each row uses (-1: none); left out where it is its own. */
  readonly cells: readonly { readonly column: number; readonly rows?: Int32Array; readonly slopes: Float64Array }[];
  readonly groups: readonly { readonly forms: GroupForms; readonly codes: Int32Array; readonly slopes: Float64Array }[];
}

/** For each group of rows a sum of weight × cell, cells in rising order, and of weight × another group's form. */
export interface GroupForms {
  readonly starts: Int32Array;
  /** Cells are numbered row by row: row × columns + column. */
  readonly cells: Uint32Array;
  readonly weights: Float64Array;
  readonly parts: readonly (readonly Part[])[];
}

interface Part {
  readonly forms: GroupForms;
  readonly group: number;
  readonly weight: number;
}

/** Forms inside forms are written out to cells while that takes no more than this many times the cells at hand. */
const WRITE_OUT = 8;

/**
 * The forms of a summary's groups: each row's form, weighted by the summary's slope in that row, added up by group.
 * @param form one linear form a row, of the expression that is summarised
 * @param slopes the summary's slope in each row; rows with slope 0 are left out, `NaN` makes the group's error unknown
 * @param groups the group of each row
 * @param columns how many measured columns there are, for numbering cells
 */
export function groupForms(form: LinearForm, slopes: Float64Array, groups: Groups, columns: number): GroupForms {
  const parts = partsOf(form, slopes, groups);
  const writtenOut = writeOut(parts, WRITE_OUT * slopes.length * (form.cells.length + 1));
  const entries = new Entries(groups.count, slopes.length * form.cells.length + writtenOut.size);
  for (let row = 0; row < slopes.length; row++) {
    if (slopes[row] === 0) continue;
    for (const { column, rows, slopes: inner } of form.cells) {
      const weight = slopes[row] * inner[row];
      if (weight === 0) continue;
      const from = rows === undefined ? row : rows[row];
      entries.add(groups.codes[row], from * columns + column, weight);
    }
  }
  const kept: Part[][] = Array.from({ length: groups.count }, () => []);
  for (let group = 0; group < groups.count; group++) {
    for (const part of parts[group]) {
      if (!writtenOut.forms.has(part.forms)) {
        kept[group].push(part);
        continue;
      }
      const { starts, cells, weights } = part.forms;
      for (let at = starts[part.group]; at < starts[part.group + 1]; at++)
        entries.add(group, cells[at], part.weight * weights[at]);
      for (const inner of part.forms.parts[part.group])
        kept[group].push({ ...inner, weight: part.weight * inner.weight });
    }
  }
  return { ...entries.sorted(), parts: kept };
}

/** For each group the forms of other groups it rests on, each once. */
function partsOf(form: LinearForm, slopes: Float64Array, groups: Groups): Part[][] {
  const parts: Part[][] = Array.from({ length: groups.count }, () => []);
  for (const { forms, codes, slopes: inner } of form.groups) {
    const count = forms.starts.length - 1;
    const sums = new Map<number, number>();
    for (let row = 0; row < slopes.length; row++) {
      if (slopes[row] === 0) continue;
      const weight = slopes[row] * inner[row];
      if (weight === 0) continue;
      const key = groups.codes[row] * count + codes[row];
      sums.set(key, (sums.get(key) ?? 0) + weight);
    }
    for (const [key, weight] of sums) parts[Math.floor(key / count)].push({ forms, group: key % count, weight });
  }
  return parts;
}

/** Which forms to write out to their cells, and how many cells that makes. */
function writeOut(parts: readonly (readonly Part[])[], limit: number): { forms: Set<GroupForms>; size: number } {
  const sizes = new Map<GroupForms, number>();
  for (const group of parts)
    for (const { forms, group: inner } of group)
      sizes.set(forms, (sizes.get(forms) ?? 0) + forms.starts[inner + 1] - forms.starts[inner]);
  const small = [...sizes].filter(([, size]) => size <= limit);
  return { forms: new Set(small.map(([forms]) => forms)), size: small.reduce((sum, [, size]) => sum + size, 0) };
}

/** Triples of group, cell and weight, to be sorted. */
class Entries {
  #length = 0;
  readonly #groups: Int32Array;
  readonly #cells: Uint32Array;
  readonly #weights: Float64Array;

  constructor(
    readonly count: number,
    capacity: number,
  ) {
    this.#groups = new Int32Array(capacity);
    this.#cells = new Uint32Array(capacity);
    this.#weights = new Float64Array(capacity);
  }

  add(group: number, cell: number, weight: number): void {
    const at = this.#length++;
    this.#groups[at] = group;
    this.#cells[at] = cell;
    this.#weights[at] = weight;
  }

  /** By group, then by cell, each cell once. */
  sorted(): { starts: Int32Array; cells: Uint32Array; weights: Float64Array } {
    const starts = new Int32Array(this.count + 1);
    for (let at = 0; at < this.#length; at++) starts[this.#groups[at] + 1]++;
    for (let group = 0; group < this.count; group++) starts[group + 1] += starts[group];
    const next = starts.slice(0, this.count);
    const order = new Uint32Array(this.#length);
    for (let at = 0; at < this.#length; at++) order[next[this.#groups[at]]++] = at;

    const merged = new Int32Array(this.count + 1);
    const cells = new Uint32Array(this.#length);
    const weights = new Float64Array(this.#length);
    let to = 0;
    for (let group = 0; group < this.count; group++) {
      const members = order.subarray(starts[group], starts[group + 1]);
      members.sort((a, b) => this.#cells[a] - this.#cells[b]);
      for (const at of members) {
        const cell = this.#cells[at];
        if (to > merged[group] && cells[to - 1] === cell) weights[to - 1] += this.#weights[at];
        else {
          cells[to] = cell;
          weights[to++] = this.#weights[at];
        }
      }
      merged[group + 1] = to;
    }
    return { starts: merged, cells: cells.subarray(0, to), weights: weights.subarray(0, to) };
  }
}
