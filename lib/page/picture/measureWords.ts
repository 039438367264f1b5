import { type DisplayUnits, formatQuantity } from '../../sheet/display.ts';
import type { PictureMeasure } from './work.ts';

/**
 * A measure with its error, in the reader's units.
 * @example measureWords({ value: 52.03, error: 0.4, unit: 'deg' }, units) // '52.0 ± 0.4°'
 */
export function measureWords(
  { value, error, unit }: Pick<PictureMeasure, 'value' | 'error' | 'unit'>,
  units: DisplayUnits,
): string {
  return formatQuantity(value, unit, units, { error });
}
