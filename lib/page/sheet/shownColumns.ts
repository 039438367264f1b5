import type { Column, Kind } from '../../sheet/column.ts';
import { type DisplayUnits, toDisplay } from '../../sheet/display.ts';
import type { Sheet } from '../../sheet/sheet.ts';

/** A column as the reader sees it. */
export interface ShownColumn {
  readonly name: string;
  readonly title: string;
  readonly kind: Kind;
  /** UCUM code of the unit the reader sees, and how it is written. */
  readonly shownUnit: string;
  readonly symbol: string;
  /** What a value inside is multiplied by for the reader. */
  readonly factor: number;
  /** A count or a number of something: no decimals. */
  readonly whole: boolean;
  /** Typed in on this page: shown as it was typed. */
  readonly typed?: boolean;
  /** Worked out from other columns by this formula; `undefined` where it was measured or typed. */
  readonly formula?: string;
}

/**
 * How the columns of a sheet are shown, in the order asked for.
 * @param names all columns where left out; a name the sheet lacks is passed over
 * @param typed whether a column is typed in
 */
export function shownColumns(
  sheet: Sheet,
  names: readonly string[] | undefined,
  units: DisplayUnits,
  typed: (name: string) => boolean = () => false,
): ShownColumn[] {
  const known = new Set(sheet.names);
  return (names ?? sheet.names)
    .filter((name) => known.has(name))
    .map((name) => {
      const { kind, unit, title, formula } = sheet.describe(name);
      const shown = kind === 'number' ? toDisplay(1, unit, units) : { value: 1, unit: '1', symbol: '' };
      return {
        name,
        title,
        kind,
        shownUnit: shown.unit,
        symbol: shown.symbol,
        factor: shown.value,
        whole: unit === '1' && isWhole(sheet.column(name)),
        formula,
        ...(typed(name) && { typed: true }),
      };
    });
}

function isWhole(column: Column): boolean {
  return column.kind === 'number' && column.values.every((value) => Number.isNaN(value) || Number.isInteger(value));
}
