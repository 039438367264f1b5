import { errorOf } from './formula/errorOf.ts';
import { seesOtherRows } from './formula/rowSlopes.ts';
import type { Node } from './formula/syntax.ts';
import { gather } from './gather.ts';
import { many } from './incremental/stage.ts';
import { kept } from './kept.ts';
import { plainTable } from './plainTable.ts';
import type { Table } from './table.ts';

/** A formula over measured columns, and the names of those that it is made from. */
export interface MeasuredFormula {
  readonly node: Node;
  readonly columns: ReadonlySet<string>;
}

interface Kept extends MeasuredFormula {
  readonly errors: Float64Array | undefined;
  /** Rows whose errors are out of date. */
  readonly rows: Set<number>;
}

/**
 * Standard errors of computed columns, by name, once they were asked for. After a change those of formulas that look at one
 * row at a time are worked out again in the rows that changed, and the others whole where they rest on what changed.
 */
export class KeptErrors {
  readonly #kept = new Map<string, Kept>();

  /** Whether next to nothing is left to work out. */
  has(name: string): boolean {
    return this.#kept.has(name);
  }

  /** As `errorOf` gives them; the same array follows later changes. */
  of(name: string, formula: () => MeasuredFormula, table: Table): Float64Array | undefined {
    const { node, columns, errors, rows } = kept(this.#kept, name, () => {
      const measured = formula();
      return { ...measured, errors: errorOf(measured.node, table), rows: new Set<number>() };
    });
    if (errors !== undefined && rows.size > 0) {
      const some = [...rows];
      const picked = [...columns].map((column) => [column, gather(table.column(column), some)] as const);
      const found = errorOf(node, plainTable(Object.fromEntries(picked)))!;
      some.forEach((row, i) => {
        errors[row] = found[i];
      });
      rows.clear();
    }
    return errors;
  }

  /** Some cells of a measured column have changed. */
  change(column: string, rows: readonly number[], total: number): void {
    for (const [name, kept] of this.#kept) {
      if (!kept.columns.has(column)) continue;
      if (seesOtherRows(kept.node) || many(kept.rows.size + rows.length, total)) this.#kept.delete(name);
      else for (const row of rows) kept.rows.add(row);
    }
  }

  clear(): void {
    this.#kept.clear();
  }
}
