import { type Column, type ColumnInput, rowCount, toColumn } from './column.ts';
import { groupRows } from './groups.ts';
import { kept } from './kept.ts';
import { findPartners } from './partners.ts';
import type { Relation } from './relation.ts';
import type { Groups, Table } from './table.ts';

/**
 * A table that never changes: columns as they come, partners and groups found once.
 * @throws TypeError where the columns differ in length; `column` throws one for a name the table lacks
 */
export function plainTable(
  columns: Readonly<Record<string, ColumnInput | Column>>,
  relations: readonly Relation[] = [],
): Table {
  const byName = new Map(Object.entries(columns).map(([name, column]) => [name, toColumn(column)]));
  const rows = rowCount(Object.fromEntries(byName));
  const partners = new Map<Relation, Int32Array>();
  const groups = new Map<string, Groups>();

  function column(name: string): Column {
    const found = byName.get(name);
    if (!found) throw new TypeError(`There is no column ${name}; there are ${[...byName.keys()].join(', ')}`);
    return found;
  }

  const table: Table = {
    rows,
    names: [...byName.keys()],
    relations,
    column,
    partners: (relation) => kept(partners, relation, () => findPartners(relation, table)),
    groups: (keys) => kept(groups, JSON.stringify(keys), () => groupRows(keys.map(column), rows)),
  };
  return table;
}
