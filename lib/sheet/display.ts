import { fixed } from '../words/fixed.ts';
import { say } from '../words/say.ts';
import { conversion, parseUnit, type Term, type Unit } from './dimension.ts';

/** In which units the reader wants lengths and masses. */
export interface DisplayUnits {
  readonly length: 'mm' | 'cm' | 'in';
  readonly mass: 'kg' | 'lb';
}

const metric: Readonly<Record<string, boolean>> = { m: true, cm: true, mm: true, kg: true, g: true };

/** Decimals for units made of several; those of one unit stand in its row. */
const compoundDigits: Readonly<Record<string, number>> = {
  mm2: 0,
  cm2: 1,
  '[in_i]2': 2,
  'kg/cm2': 2,
  '[lb_av]/[in_i]2': 1,
  'mm/d': 2,
  'cm/d': 3,
  '[in_i]/d': 4,
  'mm/wk': 1,
  'cm/wk': 2,
  '[in_i]/wk': 3,
  'deg/d': 2,
  'deg/wk': 2,
  'cm3/kg': 0,
  '[in_i]3/[lb_av]': 0,
};

export interface FormatOptions {
  /** One standard error, in the value's own unit; the decimals then follow from it. */
  readonly error?: number;
  readonly digits?: number;
  /** Writes + before what is above zero: for differences. */
  readonly signed?: boolean;
}

/**
 * The UCUM code in which to show values of a unit. A metric length stays as it is where the reader wants mm (nobody
 * measures a girth in mm), an area or a volume also where cm are wanted in lengths.
 * @example displayUnit('kg/cm2', { length: 'in', mass: 'lb' }) // '[lb_av]/[in_i]2'
 */
export function displayUnit(code: string, units: DisplayUnits): string {
  const { terms } = parseUnit(code);
  const shown = terms
    .map((term) => `${term.power < 0 ? '/' : '.'}${wanted(term, units)}${Math.abs(term.power)}`)
    .join('');
  return terms.length === 0 ? code : parseUnit(shown.startsWith('/') ? `1${shown}` : shown.slice(1)).code;
}

function wanted({ row, power }: Term, units: DisplayUnits): string {
  if (row.dimension === 'mass') return units.mass === 'lb' ? '[lb_av]' : metric[row.code] ? row.code : 'kg';
  if (row.dimension === 'angle') return 'deg';
  if (row.dimension !== 'length') return row.code;
  if (units.length === 'in') return '[in_i]';
  if (units.length === 'cm') return 'cm';
  return metric[row.code] ? row.code : Math.abs(power) === 1 ? 'mm' : 'cm';
}

/** A value as it is shown: the number, the UCUM code of its unit, and how that is written. */
export function toDisplay(
  value: number,
  unit: string,
  units: DisplayUnits,
): { value: number; unit: string; symbol: string } {
  const shown = displayUnit(unit, units);
  return { value: value * conversion(parseUnit(unit), parseUnit(shown)), unit: shown, symbol: symbolOf(shown) };
}

/** Names of units that are words and not signs. */
const unitWords: Readonly<Record<string, string>> = {
  day: say`day`,
  days: say`days`,
  week: say`week`,
  weeks: say`weeks`,
  month: say`month`,
  months: say`months`,
  year: say`year`,
  years: say`years`,
  hand: say`hand`,
  hands: say`hands`,
};

/**
 * How a unit is written for people: `mm`, `°`, `kg/cm²`, `°/week`; nothing for a pure number.
 * @param one  whether a single one is meant: `day` and not `days`
 */
export function symbolOf(code: string, one = false): string {
  const { terms } = parseUnit(code);
  const raised = (power: number) =>
    power === 1 ? '' : Array.from(String(power), (digit) => '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(digit)]).join('');
  const above = terms.filter(({ power }) => power > 0);
  const below = terms.filter(({ power }) => power < 0);
  const singular = one || above.length > 1;
  const word = (name: string) => unitWords[name] ?? name;
  const top = above.map(({ row, power }) => word((singular && row.one) || row.names[0]) + raised(power)).join('·');
  const bottom = below.map(({ row, power }) => `/${word(row.one ?? row.names[0])}${raised(-power)}`).join('');
  return top === '' && bottom !== '' ? say`per ${bottom.slice(1)}` : top + bottom;
}

/**
 * A measured or computed number in words that fit a sentence, in the units the reader chose and with as many decimals
 * as make sense of it.
 * @param value  in `unit`; `NaN` gives `not measured`
 * @param unit  UCUM code
 * @example formatQuantity(4.23, 'mm', { length: 'mm', mass: 'kg' }, { error: 0.8 }) // '4.2 ± 0.8 mm'
 */
export function formatQuantity(value: number, unit: string, units: DisplayUnits, options: FormatOptions = {}): string {
  if (!Number.isFinite(value)) return say`not measured`;
  const shown = toDisplay(value, unit, units);
  const error = Math.abs(toDisplay(options.error ?? Number.NaN, unit, units).value);
  const uncertain = error > 0 && error < Number.POSITIVE_INFINITY;
  const digits = options.digits ?? (uncertain ? errorDigits(error) : usualDigits(shown.unit, shown.value));
  const number = written(shown.value, digits, options.signed ?? false);
  const text = uncertain ? `${number} ± ${written(error, digits, false)}` : number;
  const symbol = symbolOf(shown.unit, text === '1');
  return symbol === '' ? text : /^[°%]/.test(symbol) ? text + symbol : `${text} ${symbol}`;
}

/** The error's first digit counts, and the second where the first is 1. */
export function errorDigits(error: number): number {
  const [first, exponent] = error.toExponential(1).split('e');
  return Math.min(Math.max((first.startsWith('1') ? 1 : 0) - Number(exponent), 0), 6);
}

/** The decimals that make sense of a value in a unit, where nothing is known of its error. */
export function usualDigits(code: string, value: number): number {
  const unit: Unit = parseUnit(code);
  const known = unit.terms.length === 1 && unit.terms[0].power === 1 ? unit.terms[0].row.digits : compoundDigits[code];
  if (code === '1') return 2;
  // Three figures where nobody has said what makes sense.
  return known ?? (value === 0 ? 1 : Math.min(Math.max(2 - Math.floor(Math.log10(Math.abs(value))), 0), 6));
}

/** A number with fixed decimals and a true minus sign; a zero has no sign. */
export function written(value: number, digits: number, signed: boolean): string {
  const text = fixed(Math.abs(value), digits);
  const zero = !/[1-9]/.test(text);
  return `${zero ? '' : value < 0 ? '−' : signed ? '+' : ''}${text}`;
}
