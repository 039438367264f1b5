import { describe, expect, it } from 'vitest';
import { bibliography, withoutSource } from '../../lib/hoof/bibliography.ts';
import { FootSheet } from '../../lib/hoof/footSheet.ts';
import type { Measure, Range } from '../../lib/hoof/measure.ts';
import { measured } from '../../lib/hoof/measured.ts';
import { measures } from '../../lib/hoof/measures/index.ts';
import type { Columns, NumberColumn } from '../../lib/sheet/column.ts';
import { parseUnit } from '../../lib/sheet/dimension.ts';

const units: Record<string, string> = {
  ...Object.fromEntries(measured.map(({ name, unit }) => [name, unit])),
  body_weight_kg: 'kg',
  weight_divisor: 'cm3/kg',
};
const common = { horse_id: 'horse', limb: 'LF', moment: 'between' };

/** One foot with its others, all columns that measures may ask for, and every measure of that table. */
function sheetOf(measure: Measure): FootSheet {
  const rows = [measure.example.given, ...(measure.example.others ?? [])].map((cells) => ({ ...common, ...cells }));
  const numbers = ['share_in_front', ...Object.keys(units)];
  const columns: Columns = {
    date: { kind: 'date', values: new Float64Array(rows.length) },
    ...Object.fromEntries(
      ['horse_id', 'limb', 'moment'].map((name) => [name, { values: rows.map((row) => String(row[name as 'limb'])) }]),
    ),
    ...Object.fromEntries(
      numbers
        .filter((name) => measure.table === 'feet' || name !== 'body_weight_kg')
        .map((name) => [
          name,
          {
            unit: units[name] ?? '1',
            values: Float64Array.from(rows, (row) => Number((row as Record<string, unknown>)[name] ?? Number.NaN)),
          },
        ]),
    ),
  };
  const sheet = FootSheet.from(columns, ['horse_id', 'date', 'limb']);
  for (const { name, formula, unit, table } of measures)
    if (table === measure.table) sheet.add({ name, formula, unit });
  return sheet;
}

const isSource = (source: string): boolean =>
  Object.hasOwn(bibliography, source) || (withoutSource as readonly string[]).includes(source);

describe('every computed column', () => {
  it('has a name of its own that no measured column has', () => {
    const names = [...measures, ...measured].map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  });

  it.each(measures)('$name works out its example', (measure) => {
    const column = sheetOf(measure).column(measure.name) as NumberColumn;
    expect(column.unit).toBe(measure.unit);
    expect(column.values[0]).toBeCloseTo(measure.example.value, 9);
  });

  it.each(measures)('$name is missing where what it is made of is missing', (measure) => {
    const empty = { ...measure, example: { ...measure.example, given: { limb: 'LF' }, others: [] } };
    expect((sheetOf(empty).column(measure.name) as NumberColumn).values[0]).toBeNaN();
  });

  it.each(measures)(
    '$name carries words, a sentence with its value, and sources that stand in the bibliography',
    (measure) => {
      expect(measure.title).not.toBe('');
      expect(measure.about.length).toBeGreaterThan(40);
      for (const sentence of [measure.sentence, measure.sentenceBelowZero ?? measure.sentence])
        expect(sentence.split('{value}')).toHaveLength(2);
      expect(measure.sentenceBelowZero === undefined).toBe(measure.sign === undefined);
      parseUnit(measure.unit);
      expect(isSource(measure.source)).toBe(true);
      for (const range of measure.ranges) {
        expect(isSource(range.source)).toBe(true);
        expect(range.atLeast ?? -Infinity).toBeLessThanOrEqual(range.atMost ?? Infinity);
        for (const { outside, of, source } of range.publishedOutside ?? []) {
          expect(isSource(source)).toBe(true);
          expect(outside).toBeLessThanOrEqual(of);
        }
      }
    },
  );

  it.each(measures.flatMap(({ name, ranges }) => ranges.map((range) => [name, range] as [string, Range])))(
    '%s says how firm its range is as its source is known',
    (_, range) => {
      const reference = Object.hasOwn(bibliography, range.source) ? bibliography[range.source] : undefined;
      if (range.firmness === 'published') expect(reference?.provenance).toMatch(/^read/);
      if (range.firmness === 'from memory') expect(reference?.provenance ?? range.source).toBe('from memory');
      if (range.firmness === 'common practice, no source') expect(range.source).toBe(range.firmness);
    },
  );
});

describe('every measured column', () => {
  it.each(measured)('$name names its unit, its limits and how to take it', (row) => {
    parseUnit(row.unit);
    expect(row.name.endsWith(`_${row.unit}`)).toBe(true);
    expect(row.anatomy[0]).toBeLessThan(row.anatomy[1]);
    expect(row.landmarks.length).toBeGreaterThan(20);
    expect(row.how.length).toBeGreaterThan(20);
    if (row.error) expect(isSource(row.error.source)).toBe(true);
  });

  it('has headings that no other column of its table has', () => {
    for (const table of ['feet', 'horses']) {
      const headings = measured.filter((row) => row.table === table).flatMap((row) => row.headings);
      expect(headings.filter((heading, i) => headings.indexOf(heading) !== i)).toEqual([]);
    }
  });
});
