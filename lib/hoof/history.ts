import { median } from '../stats/index.ts';
import type { Finding } from './finding.ts';

/**
 * A foot's value held against its own earlier ones.
 * @param error  one standard error of the value; `NaN` where unknown
 * @param earlier  at the same moment of earlier visits, none missing, with their errors and days
 * @param ownSpread  how a foot's values usually spread about its own median, as a standard deviation; `NaN` where unknown
 * @returns the change from the median with its error; `distance` is the change over the larger of its error and the
 *   usual spread; `undefined` where there is nothing earlier
 */
export function history(
  value: number,
  error: number,
  earlier: readonly { readonly value: number; readonly error: number; readonly date: number }[],
  ownSpread: number,
): Finding['own'] {
  if (earlier.length === 0) return undefined;
  const middle = median(earlier.map(({ value }) => value));
  const ofMean = Math.sqrt(earlier.reduce((sum, { error }) => sum + error ** 2, 0)) / earlier.length;
  // The error of a median of several readings is about √(π/2) of that of their mean; one or two have their mean.
  const changeError = Math.hypot(error, earlier.length < 3 ? ofMean : ofMean * Math.sqrt(Math.PI / 2));
  const change = value - middle;
  const scale = Math.max(ownSpread || 0, changeError || 0);
  const last = earlier.reduce((a, b) => (b.date > a.date ? b : a));
  return {
    median: middle,
    earlier: earlier.length,
    change,
    changeError,
    distance: scale > 0 ? change / scale : 0,
    last: { value: last.value, date: last.date },
  };
}
