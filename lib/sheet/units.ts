/** How far a unit reaches into each dimension: an area has `length: 2`. */
export interface Powers {
  readonly length: number;
  readonly angle: number;
  readonly mass: number;
  readonly time: number;
}

/** A unit as a row of data. `factor` says how many of m, rad, kg or s one of it is. */
export interface UnitRow {
  /** UCUM code. */
  readonly code: string;
  readonly dimension: keyof Powers | 'number';
  readonly factor: number;
  /** Takes UCUM's prefixes, as `mm` and `kg` do. */
  readonly prefixed?: boolean;
  /** How people write it, and how we do: the first is shown. */
  readonly names: readonly string[];
  /** After "per" and after 1, where that differs: `mm/day`, `1 day`. */
  readonly one?: string;
  /** Decimals that make sense of a reading. */
  readonly digits?: number;
}

const inch = 0.0254;
const pound = 0.45359237;
const day = 86_400;

export const units: readonly UnitRow[] = [
  { code: '1', dimension: 'number', factor: 1, names: [''], digits: 2 },
  { code: '%', dimension: 'number', factor: 0.01, names: ['%', 'percent', 'per cent'], digits: 1 },
  { code: 'm', dimension: 'length', factor: 1, names: ['m', 'metre', 'metres', 'meter', 'meters'], prefixed: true },
  { code: 'mm', dimension: 'length', factor: 0.001, names: ['mm', 'millimetres', 'millimeters'], digits: 1 },
  { code: 'cm', dimension: 'length', factor: 0.01, names: ['cm', 'centimetres', 'centimeters'], digits: 2 },
  { code: '[in_i]', dimension: 'length', factor: inch, names: ['in', 'inch', 'inches', '"', '″'], digits: 2 },
  { code: '[ft_i]', dimension: 'length', factor: 12 * inch, names: ['ft', 'foot', 'feet'], digits: 2 },
  { code: '[hd_i]', dimension: 'length', factor: 4 * inch, names: ['hands', 'hand'], one: 'hand', digits: 2 },
  { code: 'rad', dimension: 'angle', factor: 1, names: ['rad', 'radian', 'radians'], digits: 3 },
  { code: 'deg', dimension: 'angle', factor: Math.PI / 180, names: ['°', 'degree', 'degrees'], digits: 1 },
  { code: 'g', dimension: 'mass', factor: 0.001, names: ['g', 'gram', 'grams'], prefixed: true, digits: 0 },
  { code: 'kg', dimension: 'mass', factor: 1, names: ['kg', 'kilo', 'kilos', 'kilogram', 'kilograms'], digits: 0 },
  { code: '[lb_av]', dimension: 'mass', factor: pound, names: ['lb', 'lbs', 'pound', 'pounds'], digits: 0 },
  { code: '[oz_av]', dimension: 'mass', factor: pound / 16, names: ['oz', 'ounce', 'ounces'], digits: 1 },
  { code: 's', dimension: 'time', factor: 1, names: ['s', 'second', 'seconds'], prefixed: true, digits: 1 },
  { code: 'min', dimension: 'time', factor: 60, names: ['min', 'minute', 'minutes'], digits: 1 },
  { code: 'h', dimension: 'time', factor: 3600, names: ['h', 'hour', 'hours'], digits: 1 },
  { code: 'd', dimension: 'time', factor: day, names: ['days', 'day'], one: 'day', digits: 0 },
  { code: 'wk', dimension: 'time', factor: 7 * day, names: ['weeks', 'week'], one: 'week', digits: 1 },
  { code: 'mo', dimension: 'time', factor: 30.4375 * day, names: ['months', 'month'], one: 'month', digits: 1 },
  { code: 'a', dimension: 'time', factor: 365.25 * day, names: ['years', 'year'], one: 'year', digits: 1 },
];

/** UCUM's prefixes as far as a yard needs them. */
export const prefixes: Readonly<Record<string, number>> = {
  k: 1e3,
  h: 1e2,
  da: 10,
  d: 0.1,
  c: 0.01,
  m: 1e-3,
  u: 1e-6,
  n: 1e-9,
};

const byName = new Map(units.flatMap((row) => [row.code, ...row.names].map((name) => [name, row] as const)));

/**
 * The row of one unit without its power, by UCUM code or by a name people use.
 * @returns the row, made up for a prefixed unit that has none of its own (`dm`); `undefined` for what is no unit
 */
export function unitRow(name: string): UnitRow | undefined {
  const row = byName.get(name);
  if (row) return row;
  for (const [prefix, factor] of Object.entries(prefixes)) {
    const base = name.startsWith(prefix) ? byName.get(name.slice(prefix.length)) : undefined;
    if (base?.prefixed && base.code === name.slice(prefix.length))
      return { code: name, dimension: base.dimension, factor: factor * base.factor, names: [name] };
  }
  return undefined;
}
