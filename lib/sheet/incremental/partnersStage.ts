import { findPartners, type Rows } from '../partners.ts';
import type { Relation } from '../relation.ts';
import { listed } from './groupsStage.ts';
import { type Changes, type ColumnStage, changedRows, many, Stage } from './stage.ts';

/** Where a relation leads from each row; whatever changes in the columns it goes by, all partners are found anew. */
export class PartnersStage extends Stage {
  partners: Int32Array = new Int32Array(0);
  #guests: { starts: Int32Array; rows: Int32Array } | undefined;

  /** @param needs  the columns that the relation goes by */
  constructor(
    readonly relation: Relation,
    readonly table: Rows,
    needs: readonly ColumnStage[],
  ) {
    super(needs);
  }

  refresh(): Changes {
    this.partners = findPartners(this.relation, this.table);
    this.#guests = undefined;
    return 'all';
  }

  /** The rows that the relation leads to this one. */
  guests(row: number): Int32Array {
    this.#guests ??= listed(this.partners, this.partners.length);
    const { starts, rows } = this.#guests;
    return rows.subarray(starts[row], starts[row + 1]);
  }
}

/** A column seen through a relation. Its changed rows are those whose partner changed; the values stay where they are. */
export class LookupStage extends Stage {
  constructor(
    readonly source: ColumnStage,
    readonly partners: PartnersStage,
  ) {
    super([source, partners]);
  }

  refresh(): Changes {
    const total = this.partners.partners.length;
    const changed = this.partners.changes === 'none' ? changedRows([this.source], total) : 'all';
    if (changed === 'all') return 'all';
    const rows: number[] = [];
    for (const row of changed) for (const guest of this.partners.guests(row)) rows.push(guest);
    if (many(rows.length, total)) return 'all';
    return rows.length === 0 ? 'none' : { rows, before: [] };
  }
}
