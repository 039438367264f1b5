import { bool, type DataType, dateDay, dictionary, type Field, field, float64, utf8 } from '@uwdata/flechette';
import type { Column } from '../../sheet/column.ts';
import { describedBy, fullDescription } from '../fullDescription.ts';
import { namedColumns, type Writable } from '../writable.ts';
import { isDay } from './isDay.ts';

/**
 * A table's columns as fields of an Arrow schema. What the type can't say stands in each field's metadata: `kind`, `unit`
 * (UCUM), `title`, `description`, `formula`, `source`, and in `words` the only words that it may hold.
 * @throws TypeError for a column without a name
 */
export function arrowFields(table: Writable): Field[] {
  const source = namedColumns(table);
  const describe = describedBy(table);
  return source.names.map((name, at) => {
    if (name === '') throw new TypeError(`Column ${at + 1} has no name; give it one to write the table`);
    const column = source.column(name);
    const { words, ...about } = fullDescription(name, column, describe);
    const said = { kind: column.kind, ...about, ...(words && { words: words.join(' ') }) };
    return field(name, typeOf(column, at), true, new Map(Object.entries(said)));
  });
}

/** @param id  of the dictionary, which no other column of the table may have */
function typeOf(column: Column, id: number): DataType {
  if (column.kind === 'text') return dictionary(utf8(), undefined, false, id);
  if (column.kind === 'boolean') return bool();
  return column.kind === 'date' && column.values.every(isDay) ? dateDay() : float64();
}
