import { FootSheet } from '../hoof/footSheet.ts';
import { type Limb, limbs } from '../hoof/limbs.ts';
import type { Measure, Range } from '../hoof/measure.ts';
import { measured } from '../hoof/measured.ts';
import { measures } from '../hoof/measures/index.ts';
import { builtInRanges, type Ranges } from '../hoof/ranges.ts';
import { errorsBeyond } from '../hoof/verdict.ts';
import type { ColumnInput, NumberColumn } from '../sheet/column.ts';
import { type LevelGroup, type LevelSummary, linePlaces } from '../views/levelDistribution.ts';
import { Engine, type EngineOptions, type FoundColumn, identifier, text } from './engine.ts';
import { LargeTableError } from './largeTableError.ts';
import { rangeCondition } from './rangeCondition.ts';
import { sourceOf } from './source.ts';
import { storedKind } from './storedKind.ts';

/** How a column's values lie in one group of rows. */
export interface Spread {
  readonly column: string;
  readonly limb: Limb;
  readonly moment: LevelGroup['moment'];
  /** The month as `2026-03`; `''` where all are together. */
  readonly month: string;
  readonly count: number;
  readonly missing: number;
  /** Missing (`NaN`) where there are too few values. */
  readonly mean: number;
  readonly sd: number;
  /** The quantiles at 5, 25, 50, 75 and 95 percent. */
  readonly quantiles: readonly number[];
}

/** How many readings lie outside one range. */
export interface LargeShare {
  readonly measure: Measure;
  readonly range: Range;
  /** Readings for which the range holds and the measure is known, and of them those outside by the number alone. */
  readonly of: number;
  readonly outside: number;
  readonly missing: number;
}

const moments = ['before', 'after', 'between'] as const;
const moment = "CASE WHEN moment IN ('before', 'after') THEN moment ELSE 'between' END";
const shares = [0.05, 0.25, 0.5, 0.75, 0.95];

/**
 * A table of feet with its computed columns, as `computeLargeFeet` writes it, to be asked questions whose answers are small.
 * The engine reads only the columns that a question needs; no row comes into memory as a row.
 */
export class LargeTable {
  readonly #engine: Engine;
  readonly #columns: ReadonlyMap<string, FoundColumn>;

  private constructor(engine: Engine, columns: readonly FoundColumn[]) {
    this.#engine = engine;
    this.#columns = new Map(columns.map((column) => [column.name, column]));
  }

  /**
   * @param file  Parquet or CSV, or several files by a pattern
   * @throws LargeTableError where it can't be read, or DuckDB is not installed
   * @example const feet = await LargeTable.open('tidy/feet.parquet')
   */
  static async open(file: string, options: EngineOptions = {}): Promise<LargeTable> {
    const engine = await Engine.open(options);
    try {
      const { from, columns } = await sourceOf(engine, file);
      // Whoever measures once a visit may have no column for before and after.
      const moment = columns.some(({ name }) => name === 'moment') ? '' : ", '' AS moment";
      await engine.run(`CREATE VIEW feet AS SELECT *${moment} FROM ${from}`);
      return new LargeTable(engine, columns);
    } catch (error) {
      await engine.close();
      throw error;
    }
  }

  /** The numbers that it holds, measured and computed, in order. */
  get numbers(): readonly string[] {
    return [...this.#columns.values()].filter((column) => storedKind(column) === 'number').map(({ name }) => name);
  }

  /**
   * Counts, means, standard deviations and quantiles of columns, limb by limb and moment by moment.
   * @param by  `month`: month by month too
   */
  async spread(columns: readonly string[], by?: 'month'): Promise<Spread[]> {
    const month = by === 'month' ? "STRFTIME(date, '%Y-%m')" : "''";
    const answers = columns.map((column) => {
      const x = this.#number(column);
      return `SELECT ${text(column)} AS "column", limb, ${moment} AS moment, ${month} AS month, COUNT(${x}) AS count,
        COUNT(*) - COUNT(${x}) AS missing, AVG(${x}) AS mean, STDDEV_SAMP(${x}) AS sd,
        QUANTILE_CONT(${x}, [${shares.join(', ')}]) AS quantiles
        FROM feet WHERE limb IN (${limbs.map(text).join(', ')}) GROUP BY ALL`;
    });
    const found: Spread[] = [];
    for (const answer of answers)
      for (const row of await this.#engine.rows(`${answer} ORDER BY month, limb, moment`)) {
        const { mean, sd, quantiles } = row;
        found.push({
          ...(row as unknown as Spread),
          ...{ mean: (mean as number) ?? Number.NaN, sd: (sd as number) ?? Number.NaN },
          quantiles: (quantiles as number[] | null) ?? shares.map(() => Number.NaN),
        });
      }
    return found;
  }

  /** For each range of a computed column that the table has, how many readings lie outside. */
  async shares(ranges: Ranges = builtInRanges): Promise<LargeShare[]> {
    const asked = measures.flatMap((measure) =>
      measure.table === 'feet' && this.#columns.has(measure.name)
        ? (ranges.get(measure.name) ?? []).map((range, nth, all) => ({ measure, range, before: all.slice(0, nth) }))
        : [],
    );
    if (asked.length === 0) return [];
    const has = (name: string) => this.#columns.has(name);
    const counts = asked.map(({ measure, range, before }, nth) => {
      const x = identifier(measure.name);
      // The first range whose conditions hold is the one that counts.
      const holds = [rangeCondition(range, has), ...before.map((other) => `NOT ${rangeCondition(other, has)}`)].join(
        ' AND ',
      );
      return `COUNT(*) FILTER (${holds} AND ${x} IS NOT NULL) AS of_${nth}, COUNT(*) FILTER (${holds} AND ${outside(range, x)}) AS outside_${nth},
        COUNT(*) FILTER (${holds} AND ${x} IS NULL) AS missing_${nth}`;
    });
    const [row] = await this.#engine.rows(`SELECT ${counts.join(', ')} FROM feet`);
    return asked.map(({ measure, range }, nth) => {
      const [of, out, missing] = ['of', 'outside', 'missing'].map((name) => row[`${name}_${nth}`] as number);
      return { measure, range, of, outside: out, missing };
    });
  }

  /**
   * What the chart of the page *Level* draws: quartiles of each limb and moment, and where values lie.
   * @param column  a difference whose error does not hang on its value, as `wall_level_mm`; the errors are those of the
   *   table of measured columns, because so large a table may pool many ways of measuring
   */
  async level(column: string): Promise<LevelSummary> {
    const x = this.#number(column);
    const usualError = usualErrorOf(column);
    const where = `FROM feet WHERE limb IN (${limbs.map(text).join(', ')})`;
    const band = Number.isNaN(usualError) ? 'NULL' : String(errorsBeyond * usualError);
    const found = await this.#engine.rows(
      `SELECT limb, ${moment} AS moment, COUNT(${x}) AS count, COUNT(*) - COUNT(${x}) AS missing, MAX(ABS(${x})) AS reach,
        COUNT(*) FILTER (ABS(${x}) > ${band}) AS beyond, QUANTILE_CONT(${x}, [0.25, 0.5, 0.75]) AS quartiles ${where} GROUP BY ALL`,
    );
    const reach = found.reduce((most, row) => Math.max(most, (row.reach as number) ?? 0), 0);
    const lines = await this.#engine.rows(
      `SELECT limb, ${moment} AS moment, ROUND(${linePlaces} * ${x} / ${reach || 1}) AS place, MIN(${x}) AS value ${where} AND ${x} IS NOT NULL
        GROUP BY ALL ORDER BY place`,
    );
    // The chart says it only where it can't say what is beyond the error.
    const [{ middle }] = Number.isNaN(usualError)
      ? await this.#engine.rows(`SELECT QUANTILE_CONT(${x}, 0.5) AS middle ${where}`)
      : [{ middle: undefined }];
    const groups = limbs.flatMap((limb) =>
      moments.flatMap((at): LevelGroup[] => {
        const here = (row: Record<string, unknown>) => row.limb === limb && row.moment === at;
        const group = found.find((row) => here(row) && (row.count as number) > 0);
        if (group === undefined) return [];
        const [low, center, high] = group.quartiles as number[];
        const counts = { count: group.count as number, beyond: group.beyond as number };
        const own = lines.filter(here).map(({ value }) => value as number);
        return [{ limb, moment: at, ...counts, low, middle: center, high, lines: own }];
      }),
    );
    const missing = found.reduce((sum, row) => sum + (row.missing as number), 0);
    const unit = measures.find(({ name }) => name === column)?.unit ?? '1';
    return { unit, groups, reach, median: (middle as number | undefined) ?? Number.NaN, usualError, missing };
  }

  async close(): Promise<void> {
    await this.#engine.close();
  }

  #number(name: string): string {
    const column = this.#columns.get(name);
    if (column === undefined || storedKind(column) !== 'number')
      throw new LargeTableError(`There is no column of numbers ${name}; there are ${this.numbers.join(', ')}`);
    return identifier(name);
  }
}

function outside({ atLeast, atMost, limitsOutside = false }: Range, x: string): string {
  const equal = limitsOutside ? '=' : '';
  const sides = [
    ...(atLeast === undefined ? [] : [`${x} <${equal} ${atLeast}`]),
    ...(atMost === undefined ? [] : [`${x} >${equal} ${atMost}`]),
  ];
  return sides.length === 0 ? 'FALSE' : `(${sides.join(' OR ')})`;
}

/** The error of one value in a good view, from the errors of what was measured; `NaN` where unknown. */
function usualErrorOf(column: string): number {
  const columns: Record<string, ColumnInput> = Object.create(null);
  for (const { name, unit, table, anatomy, error } of measured)
    if (table === 'feet')
      columns[name] = {
        ...{ unit, values: Float64Array.of((anatomy[0] + anatomy[1]) / 2) },
        error: error && Float64Array.of(error.value),
      };
  const measure = measures.find(({ name, table }) => name === column && table === 'feet');
  if (measure === undefined) return Number.NaN;
  try {
    const { name, formula, unit } = measure;
    const sheet = FootSheet.from(columns).add({ name, formula, unit });
    return (sheet.column(name) as NumberColumn).error?.[0] ?? Number.NaN;
  } catch {
    return Number.NaN;
  }
}
