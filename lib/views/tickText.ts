import { fixed } from '../words/fixed.ts';
import { say } from '../words/say.ts';

const utc = (options: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat(say`en`, { ...options, timeZone: 'UTC' });
const [day, month, year] = [utc({ day: 'numeric', month: 'short' }), utc({ month: 'short' }), utc({ year: 'numeric' })];

/**
 * What stands at a tick of an axis, in the reader's language: numbers with as many decimals as the finest tick has, months
 * with the year below the first and each January, years alone where nothing is finer.
 * @param tick  a number, a moment in UTC or a name
 * @param ticks  all ticks of the axis
 * @example tickText(0.5, 1, [0, 0.5, 1]) // '0.5'
 */
export function tickText(tick: unknown, index: number, ticks: readonly unknown[] = [tick]): string {
  if (typeof tick === 'number') return numberText(tick, ticks as readonly number[]);
  return tick instanceof Date ? dateText(tick, index, ticks as readonly Date[]) : String(tick);
}

function numberText(tick: number, ticks: readonly number[]): string {
  const decimals = (value: number) => (String(Number(value.toPrecision(12))).split('.')[1] ?? '').length;
  return fixed(tick, Math.max(...ticks.map(decimals))).replace('-', '−');
}

function dateText(tick: Date, index: number, ticks: readonly Date[]): string {
  if (ticks.every((each) => each.getUTCDate() === 1 && each.getUTCMonth() === 0)) return year.format(tick);
  const turn = index === 0 || ticks[index - 1].getUTCFullYear() !== tick.getUTCFullYear();
  const fine = ticks.some((each) => each.getUTCDate() !== 1);
  return `${(fine ? day : month).format(tick)}${turn ? `\n${year.format(tick)}` : ''}`;
}
