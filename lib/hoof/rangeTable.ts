import type { Columns } from '../sheet/column.ts';
import { conversion, convertible, parseUnit } from '../sheet/dimension.ts';
import { say } from '../words/say.ts';
import type { Range } from './measure.ts';
import { measures } from './measures/index.ts';
import type { Problem } from './problem.ts';
import type { Ranges } from './ranges.ts';

const units = new Map(measures.map(({ name, unit }) => [name, unit]));
const numberNames = ['at_least', 'at_most', 'weight_from_kg', 'weight_to_kg'] as const;
const textNames = [
  'measure',
  'unit',
  'limits',
  'below',
  'above',
  'end',
  'build',
  'except_build',
  'shod',
  'source',
  'firmness',
  'published_outside',
] as const;
type RangeRow = Record<(typeof numberNames)[number], number> & Record<(typeof textNames)[number], string>;

/**
 * All ranges as one flat table, one row a range, to be written as a file, changed and read back.
 * @returns columns `measure`, `unit`, `at_least`, `at_most` (in that unit), `limits` (`inside` or `outside`), `below`,
 *   `above`, the conditions `end`, `build`, `except_build` (words parted by `;`), `shod` (`yes`, `no`),
 *   `weight_from_kg`, `weight_to_kg`, then `source`, `firmness`, `published_outside` (`52 of 58 dau-2015; …`)
 */
export function rangesToColumns(ranges: Ranges): Columns {
  const rows: RangeRow[] = [];
  for (const [measure, list] of ranges) for (const range of list) rows.push(toRow(measure, range));
  const columns: Columns = Object.create(null);
  const add = (name: keyof RangeRow, unit?: string): void => {
    columns[name] = { unit, values: Float64Array.from(rows, (row) => row[name] as number) };
  };
  const addText = (name: keyof RangeRow): void => {
    columns[name] = { values: rows.map((row) => row[name] as string) };
  };
  addText('measure');
  addText('unit');
  add('at_least');
  add('at_most');
  for (const name of ['limits', 'below', 'above', 'end', 'build', 'except_build', 'shod'] as const) addText(name);
  add('weight_from_kg', 'kg');
  add('weight_to_kg', 'kg');
  for (const name of ['source', 'firmness', 'published_outside'] as const) addText(name);
  return columns;
}

function toRow(measure: string, range: Range): RangeRow {
  const { end, build, exceptBuild, shod, weightKg } = range.when ?? {};
  return {
    measure,
    unit: units.get(measure) ?? '1',
    at_least: range.atLeast ?? Number.NaN,
    at_most: range.atMost ?? Number.NaN,
    limits: range.limitsOutside ? 'outside' : 'inside',
    below: range.below ?? '',
    above: range.above ?? '',
    end: end ?? '',
    build: build?.join(';') ?? '',
    except_build: exceptBuild?.join(';') ?? '',
    shod: shod === undefined ? '' : shod ? 'yes' : 'no',
    weight_from_kg: weightKg?.[0] ?? Number.NaN,
    weight_to_kg: weightKg?.[1] ?? Number.NaN,
    source: range.source,
    firmness: range.firmness,
    published_outside: (range.publishedOutside ?? [])
      .map(({ outside, of, source }) => `${outside} of ${of} ${source}`)
      .join('; '),
  };
}

const own = say`your own range file`;
const firmnesses: readonly Range['firmness'][] = ['published', 'common practice, no source', 'from memory'];

/**
 * Ranges from such a table, to stand in place of all built-in ones.
 * @param columns  the columns that `rangesToColumns` writes; only `measure` is required, and numbers may stand as text.
 *   A `unit` other than the measure's is converted
 * @returns the ranges, and a problem for each row that couldn't be used; such a row is left out
 * @throws TypeError where there is no `measure` column
 */
export function rangesFromColumns(columns: Columns, file = 'ranges'): { ranges: Ranges; problems: readonly Problem[] } {
  if (!Object.hasOwn(columns, 'measure'))
    throw new TypeError('The range table has no column measure; expected one row a range with the name of its measure');
  const ranges = new Map<string, Range[]>();
  const problems: Problem[] = [];
  const textAt = (name: string, row: number): string => {
    const values = Object.hasOwn(columns, name) ? columns[name].values : undefined;
    if (values === undefined) return '';
    return values instanceof Float64Array ? (Number.isNaN(values[row]) ? '' : String(values[row])) : values[row].trim();
  };
  for (let row = 0; row < columns.measure.values.length; row++) {
    const bad = (column: string, expected: string): void => {
      const remedy = say`Correct the row; until then this measure goes without the range`;
      problems.push({
        code: 'range-not-understood',
        file,
        row: row + 2,
        column,
        value: textAt(column, row),
        expected,
        remedy,
      });
    };
    const measure = textAt('measure', row);
    const unit = units.get(measure);
    if (unit === undefined) {
      bad('measure', say`the name of a computed column with ranges, such as frog_ratio`);
      continue;
    }
    const given = textAt('unit', row) || unit;
    const factor = factorBetween(given, unit);
    if (factor === undefined) {
      bad('unit', say`${unit}, or a unit that converts to it`);
      continue;
    }
    const numbers = numberNames.map((name) => numberFrom(textAt(name, row)));
    const broken = numberNames.find((name, i) => Number.isNaN(numbers[i]) && textAt(name, row) !== '');
    if (broken !== undefined) {
      bad(broken, say`a number, or nothing for no limit`);
      continue;
    }
    const [atLeast, atMost, from, to] = numbers.map((n) => (Number.isNaN(n) ? undefined : n));
    if ((atLeast ?? -Infinity) > (atMost ?? Infinity)) {
      bad('at_least', say`no more than at_most`);
      continue;
    }
    const list = ranges.get(measure) ?? [];
    ranges.set(measure, list);
    list.push({
      atLeast: atLeast === undefined ? undefined : atLeast * factor,
      atMost: atMost === undefined ? undefined : atMost * factor,
      limitsOutside: textAt('limits', row) === 'outside' || undefined,
      below: textAt('below', row) || undefined,
      above: textAt('above', row) || undefined,
      when: conditions(textAt, row, from, to),
      source: textAt('source', row) || own,
      firmness: firmnesses.find((words) => words === textAt('firmness', row)) ?? 'common practice, no source',
      publishedOutside: counts(textAt('published_outside', row)),
    });
  }
  return { ranges, problems };
}

function numberFrom(text: string): number {
  return text === '' ? Number.NaN : Number(text);
}

function factorBetween(from: string, to: string): number | undefined {
  try {
    return convertible(parseUnit(from), parseUnit(to)) ? conversion(parseUnit(from), parseUnit(to)) : undefined;
  } catch {
    return undefined;
  }
}

function conditions(
  textAt: (name: string, row: number) => string,
  row: number,
  from: number | undefined,
  to: number | undefined,
): Range['when'] {
  const words = (name: string): string[] | undefined => {
    const list = textAt(name, row)
      .split(';')
      .map((word) => word.trim())
      .filter((word) => word !== '');
    return list.length > 0 ? list : undefined;
  };
  const end = textAt('end', row);
  const shod = textAt('shod', row);
  const when = {
    end: end === 'front' || end === 'hind' ? end : undefined,
    build: words('build'),
    exceptBuild: words('except_build'),
    shod: shod === 'yes' || shod === '1' ? true : shod === 'no' || shod === '0' ? false : undefined,
    weightKg: from === undefined && to === undefined ? undefined : ([from ?? 0, to ?? Infinity] as const),
  } as const;
  return Object.values(when).some((value) => value !== undefined) ? when : undefined;
}

function counts(text: string): Range['publishedOutside'] {
  const found = [...text.matchAll(/(\d+) of (\d+) ([^;]+)/g)].map(([, outside, of, source]) => ({
    outside: Number(outside),
    of: Number(of),
    source: source.trim(),
  }));
  return found.length > 0 ? found : undefined;
}
