import type { Column } from '../sheet/column.ts';
import { type DescribedColumn, describeColumn } from './describeColumn.ts';
import type { Writable } from './writable.ts';

/**
 * What is known of a column that is written: what its table says of it, and where that is silent, what is known by its name.
 * @param describe  what the table says
 * @returns its unit too, where it holds numbers
 */
export function fullDescription(
  name: string,
  column: Column,
  describe: ((name: string) => DescribedColumn) | undefined,
): DescribedColumn {
  const own = describe?.(name) ?? {};
  // A sheet that knows no title gives the name for one.
  const { title, description, formula, source, words, unit } = {
    ...describeColumn(name),
    ...known({ ...own, title: own.title === name ? undefined : own.title }),
  };
  return known({
    ...{ title, description, source, words },
    // What a table only holds, such as the weight joined from the horses, can't be worked out from its own columns.
    formula: own.origin === 'measured' ? undefined : formula,
    unit: column.kind !== 'number' ? undefined : column.unit === '1' ? (unit ?? '1') : column.unit,
  });
}

/** How a table itself describes its columns, as a sheet does. */
export function describedBy(table: Writable): ((name: string) => DescribedColumn) | undefined {
  const { describe } = table as { describe?: unknown };
  return typeof describe === 'function' ? (name) => describe.call(table, name) : undefined;
}

/** The properties that have a value. */
export function known<T extends object>(properties: T): T {
  return Object.fromEntries(Object.entries(properties).filter(([, value]) => value !== undefined)) as T;
}
