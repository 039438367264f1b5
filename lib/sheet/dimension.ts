import { type Powers, type UnitRow, unitRow } from './units.ts';

/** One unit to a power, a part of a compound unit. */
export interface Term {
  readonly row: UnitRow;
  readonly power: number;
}

/** A unit taken apart. `factor` says how many coherent base units (m, rad, kg, s and their powers) one of it is. */
export interface Unit {
  /** UCUM code, `1` for a pure number. */
  readonly code: string;
  readonly factor: number;
  readonly powers: Powers;
  readonly terms: readonly Term[];
}

const dimensions = ['length', 'angle', 'mass', 'time'] as const;

function unitOf(terms: readonly Term[]): Unit {
  const powers = { length: 0, angle: 0, mass: 0, time: 0, number: 0 };
  let factor = 1;
  for (const { row, power } of terms) {
    powers[row.dimension] += power;
    factor *= row.factor ** power;
  }
  const { length, angle, mass, time } = powers;
  return { code: codeOf(terms), factor, powers: { length, angle, mass, time }, terms };
}

function codeOf(terms: readonly Term[]): string {
  const part = ({ row, power }: Term) => `${row.code}${Math.abs(power) === 1 ? '' : Math.abs(power)}`;
  const above = terms.filter(({ power }) => power > 0).map(part);
  const below = terms.filter(({ power }) => power < 0).map((term) => `/${part(term)}`);
  return (above.join('.') || '1') + below.join('');
}

/** The pure number. */
export const pure: Unit = unitOf([]);

const known = new Map<string, Unit>([['1', pure]]);

/**
 * A unit from its UCUM code: units of length, angle, mass, time and number, with prefixes, whole powers, `.` and `/`
 * (which binds the one unit after it). Words and signs that people use (`in`, `lb`, `°`, `mm²`) are understood.
 * @throws TypeError for what is no unit here
 * @example parseUnit('[in_i]3/[lb_av]').powers // { length: 3, angle: 0, mass: -1, time: 0 }
 */
export function parseUnit(code: string): Unit {
  const before = known.get(code);
  if (before) return before;
  const terms: Term[] = [];
  for (const [, operator, written] of `.${code}`.matchAll(/([./])([^./]*)/g)) {
    const part = written.trim();
    if (part === '1') continue;
    const [, name, raised] = part.match(/^(.*?)([-+]?\d+|[⁻⁺]?[²³¹⁰⁴-⁹]+)?$/s)!;
    const row = unitRow(name);
    if (!row || name === '')
      throw new TypeError(
        `“${code.slice(0, 60)}” is not a unit known here. Write a UCUM code such as mm, deg, kg/cm2, [in_i] or %`,
      );
    const power = raised === undefined ? 1 : plainNumber(raised);
    terms.push({ row, power: operator === '/' ? -power : power });
  }
  const unit = unitOf(gathered(terms));
  if (known.size < 1000) known.set(code, unit);
  return unit;
}

function plainNumber(raised: string): number {
  return Number(raised.replace(/[⁰¹²³⁴-⁹⁻⁺]/g, (sign) => '0123456789-+'['⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁺'.indexOf(sign)]));
}

/** Powers of the same unit added up, what cancels left out. */
function gathered(terms: readonly Term[]): Term[] {
  const sums = new Map<UnitRow | string, Term>();
  for (const term of terms) {
    const power = (sums.get(term.row.code)?.power ?? 0) + term.power;
    sums.set(term.row.code, { row: term.row, power });
  }
  return [...sums.values()].filter(({ power }) => power !== 0);
}

/** Whether values in one unit can be turned into the other: the same powers of every dimension. */
export function convertible(a: Unit, b: Unit): boolean {
  return dimensions.every((dimension) => a.powers[dimension] === b.powers[dimension]);
}

/**
 * By what to multiply a value in `from` to have it in `to`.
 * @throws TypeError where the two measure different things
 * @example conversion(parseUnit('[in_i]'), parseUnit('mm')) // 25.4
 */
export function conversion(from: Unit, to: Unit): number {
  if (!convertible(from, to))
    throw new TypeError(`${from.code} can't be turned into ${to.code}: they measure different things`);
  return tidy(from.factor / to.factor);
}

/** A factor that is a short decimal but for rounding is meant to be that decimal: 25.4, not 25.400000000000002. */
export function tidy(factor: number): number {
  const short = Number(factor.toPrecision(12));
  return Math.abs(short - factor) <= 4 * Number.EPSILON * Math.abs(factor) ? short : factor;
}

/**
 * The unit of a product, in which each dimension has one unit only (the first that comes).
 * @returns the unit, and by what to multiply the bare product of the numbers to have it in that unit
 * @example product(parseUnit('cm'), parseUnit('mm')) // { unit: cm2, factor: 0.1 }
 */
export function product(a: Unit, b: Unit): { unit: Unit; factor: number } {
  const first = new Map<string, UnitRow>();
  const terms: Term[] = [];
  for (const { row, power } of [...a.terms, ...b.terms]) {
    // A percentage that is multiplied becomes a pure number.
    if (row.dimension === 'number') continue;
    const as = first.get(row.dimension) ?? row;
    first.set(row.dimension, as);
    terms.push({ row: as, power });
  }
  const unit = unitOf(gathered(terms));
  return { unit, factor: tidy((a.factor * b.factor) / unit.factor) };
}

/**
 * A unit to a power, also half a one where that leaves whole powers.
 * @returns the unit and the factor as `product` does; `undefined` where a power would not be whole
 */
export function power(unit: Unit, exponent: number): { unit: Unit; factor: number } | undefined {
  const { unit: plain, factor } = product(unit, pure);
  const terms = plain.terms
    .map(({ row, power }) => ({ row, power: power * exponent }))
    .filter(({ power }) => power !== 0);
  if (!terms.every(({ power }) => Number.isInteger(power))) return undefined;
  return { unit: unitOf(terms), factor: factor ** exponent };
}
