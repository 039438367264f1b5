import type { ColumnInput, Columns } from '../sheet/column.ts';
import { daysFromIso } from '../sheet/days.ts';
import { Sheet, type SheetOptions } from '../sheet/sheet.ts';
import type { NameOf, Sources } from '../sheet/typing.ts';
import { footRelations } from './relations.ts';

/** A sheet whose formulas may look at a horse's other feet and at the visit before: `opposite(toe_angle_deg)`. */
export class FootSheet<C extends Columns = Columns> extends Sheet<C> {
  /**
   * A sheet over columns of one length, with the relations between feet. They go by `horse_id`, `date`, `limb` and, where
   * there, `moment` and `repeat`; a sheet without feet may lack these as long as no formula asks for another foot.
   * A `date` of ISO texts becomes whole days, so that a formula can ask for the visit before.
   * @param keys  names of the columns that together tell one row from another
   * @throws TypeError where lengths differ, a key is no column, or values are neither a `Float64Array` nor texts
   */
  static override from<C extends Sources>(
    columns: C,
    keys: readonly NameOf<C>[] = [],
    options: SheetOptions = {},
  ): FootSheet<C> {
    return new FootSheet<C>(withDays(columns), keys, { relations: footRelations, ...options });
  }
}

function withDays<C extends Sources>(columns: C): C {
  const date: ColumnInput | undefined = Object.hasOwn(columns, 'date') ? columns.date : undefined;
  if (date === undefined || date.values instanceof Float64Array) return columns;
  const values = Float64Array.from(date.values, daysFromIso);
  if (date.values.some((text, row) => text !== '' && Number.isNaN(values[row]))) return columns;
  return { ...columns, date: { ...date, kind: 'date', unit: 'd', values } };
}
