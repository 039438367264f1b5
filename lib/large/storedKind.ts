import type { Kind } from '../sheet/column.ts';
import { type FoundColumn, identifier } from './engine.ts';

/** What a column of a file is to us; `undefined` for lists and structures. */
export function storedKind({ type }: FoundColumn): Kind | undefined {
  if (/\[|^(STRUCT|MAP|UNION|BLOB|TIME\b|INTERVAL)/.test(type)) return undefined;
  if (/^(VARCHAR|ENUM|UUID)/.test(type)) return 'text';
  if (/^(DATE|TIMESTAMP)/.test(type)) return 'date';
  return type === 'BOOLEAN' ? 'boolean' : 'number';
}

/** Such a column as our statements expect it: missing is `NULL`, never an empty text nor NaN. */
export function storedValue(column: FoundColumn, from: string): string {
  const name = `${from}.${identifier(column.name)}`;
  switch (storedKind(column)) {
    case 'text':
      return `NULLIF(CAST(${name} AS VARCHAR), '')`;
    case 'date':
      return `CAST(${name} AS DATE)`;
    case 'number':
      return `NULLIF(CAST(${name} AS DOUBLE), 'NaN'::DOUBLE)`;
    default:
      return name;
  }
}
