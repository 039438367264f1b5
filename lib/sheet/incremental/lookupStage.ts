import { type Column, TextColumn } from '../column.ts';
import { findPartners, type Rows } from '../partners.ts';
import type { Relation } from '../relation.ts';
import { listed } from './groupsStage.ts';
import { type Changes, ColumnStage, changedRows, DeltaBuilder, Stage } from './stage.ts';

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

/** For each row the value that its partner has in a column. */
export class LookupStage extends ColumnStage {
  #column: Column | undefined;

  constructor(
    readonly source: ColumnStage,
    readonly partners: PartnersStage,
  ) {
    super([source, partners]);
  }

  get column(): Column {
    return this.#column!;
  }

  refresh(): Changes {
    const { partners } = this.partners;
    const source = this.source.column;
    const rows = this.#column && this.partners.changes === 'none' ? changedRows([this.source], partners.length) : 'all';
    if (rows === 'all') {
      this.#column = lookedUp(source, partners);
      return 'all';
    }
    const [from, to] = [kept(source), kept(this.#column!)];
    const delta = new DeltaBuilder();
    for (const row of rows)
      for (const guest of this.partners.guests(row)) {
        delta.add(guest, to[guest]);
        to[guest] = from[row];
      }
    if (source.kind === 'text') this.#column = new TextColumn(to as Int32Array, source.levels);
    return delta.changes;
  }
}

function kept(column: Column): Float64Array | Int32Array {
  return column.kind === 'text' ? column.codes : column.values;
}

function lookedUp(source: Column, partners: Int32Array): Column {
  const from = kept(source);
  if (source.kind === 'text')
    return new TextColumn(
      partners.map((partner) => (partner < 0 ? -1 : from[partner])),
      source.levels,
    );
  const values = new Float64Array(partners.length);
  for (let row = 0; row < values.length; row++) values[row] = partners[row] < 0 ? Number.NaN : from[partners[row]];
  return { kind: source.kind, unit: source.unit, values };
}
