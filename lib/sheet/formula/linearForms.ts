import { Grouped } from '../grouped.ts';
import { kept } from '../kept.ts';
import { relationNamed } from '../relationNamed.ts';
import type { Table } from '../table.ts';
import type { Carrier } from './carriers.ts';
import { keysOf } from './children.ts';
import { type GroupForms, groupForms, type LinearForm } from './groupForms.ts';
import { Numbering } from './numbering.ts';
import { rowSlopes } from './rowSlopes.ts';
import type { Node } from './syntax.ts';

/** Where a value is missing, the form means nothing. */
export interface ValuedForm extends LinearForm {
  readonly values: Float64Array;
}

/** Formulas near their present values, as linear forms over the cells of measured columns. Each is worked out once. */
export class LinearForms {
  readonly #table: Table;
  readonly #columns: readonly string[];
  readonly #numbering = new Numbering();
  readonly #forms = new Map<number, ValuedForm>();
  readonly #summaries = new Map<number, GroupForms>();

  /** @param columns the measured columns that errors come from; cells are numbered by their order */
  constructor(table: Table, columns: readonly string[]) {
    this.#table = table;
    this.#columns = columns;
  }

  /**
   * The values of a formula and its linear form in each row.
   * @param node of a resolved tree over measured columns, giving numbers
   */
  of(node: Node): ValuedForm {
    return kept(this.#forms, this.#numbering.of(node), () => this.#work(node));
  }

  #work(node: Node): ValuedForm {
    const { values, inputs } = rowSlopes(node, this.#table, this.#numbering);
    const cells: LinearForm['cells'][number][] = [];
    const groups: LinearForm['groups'][number][] = [];
    for (const { carrier, slopes } of inputs) {
      if (carrier.kind === 'root') cells.push({ column: this.#columns.indexOf(carrier.name), slopes });
      else if (carrier.kind === 'summary')
        groups.push({ forms: this.#summary(carrier), codes: this.#table.groups(keysOf(carrier.call)).codes, slopes });
      else {
        const partners = this.#table.partners(relationNamed(carrier.call.name, this.#table.relations));
        const other = this.of(carrier.call.args[0]);
        for (const { column, rows, slopes: theirs } of other.cells)
          cells.push({
            column,
            rows: rows === undefined ? partners : lookedUp(rows, partners),
            slopes: chained(slopes, theirs, partners),
          });
        for (const { forms, codes, slopes: theirs } of other.groups)
          groups.push({ forms, codes: lookedUp(codes, partners), slopes: chained(slopes, theirs, partners) });
      }
    }
    return { values, cells, groups };
  }

  #summary({ call, row }: Carrier & { kind: 'summary' }): GroupForms {
    return kept(this.#summaries, this.#numbering.of(call), () => {
      const [x, p] = call.args;
      const inner = this.of(x);
      const groups = this.#table.groups(keysOf(call));
      const grouped = new Grouped(inner.values, groups);
      const share = p?.kind === 'number' ? p.value : Number.NaN;
      const weights = row.weights(grouped, row.of(grouped, share), share);
      return groupForms(inner, weights, groups, this.#columns.length);
    });
  }
}

function lookedUp(codes: Int32Array, partners: Int32Array): Int32Array {
  return partners.map((partner) => (partner < 0 ? -1 : codes[partner]));
}

/** What doesn't count stays 0 where there is no partner. */
function chained(slopes: Float64Array, theirs: Float64Array, partners: Int32Array): Float64Array {
  return slopes.map((slope, row) => (slope === 0 ? 0 : partners[row] < 0 ? Number.NaN : slope * theirs[partners[row]]));
}
