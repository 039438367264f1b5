import fc from 'fast-check';
import { expect, it } from 'vitest';
import { footFacts } from '../../lib/hoof/footFacts.ts';
import { FootSheet } from '../../lib/hoof/footSheet.ts';
import { herd } from '../../lib/hoof/herd.ts';
import { limbs } from '../../lib/hoof/limbs.ts';
import { measured } from '../../lib/hoof/measured.ts';
import { measures } from '../../lib/hoof/measures/index.ts';
import { oppositeRows } from '../../lib/hoof/oppositeRows.ts';
import { builtInRanges, rangeFor } from '../../lib/hoof/ranges.ts';
import { verdict } from '../../lib/hoof/verdict.ts';
import type { Columns, NumberColumn } from '../../lib/sheet/column.ts';
import { conversion, parseUnit } from '../../lib/sheet/dimension.ts';
import { numbers } from './feet.ts';

const footColumns = measured.filter(({ table }) => table === 'feet');
const horseColumns = measured.filter(({ table }) => table === 'horses');

/** Numbers that a foot may have, here and there missing; none on a limit. */
const reading = ({ anatomy: [least, most] }: { anatomy: readonly [number, number] }) =>
  fc.option(fc.double({ min: least + (most - least) * 0.1, max: least + (most - least) * 0.6, noNaN: true }), {
    nil: Number.NaN,
    freq: 12,
  });

const someFeet = fc
  .uniqueArray(fc.tuple(fc.integer({ min: 0, max: 2 }), fc.constantFrom(...limbs)), {
    minLength: 1,
    maxLength: 12,
    selector: ([horse, limb]) => horse * 10 + limbs.indexOf(limb),
  })
  .chain((feet) =>
    fc.record({
      feet: fc.constant(feet),
      measured: fc.array(fc.record(Object.fromEntries(footColumns.map((row) => [row.name, reading(row)]))), {
        minLength: feet.length,
        maxLength: feet.length,
      }),
      horses: fc.array(fc.record(Object.fromEntries(horseColumns.map((row) => [row.name, reading(row)]))), {
        minLength: 3,
        maxLength: 3,
      }),
    }),
  );

type SomeFeet = typeof someFeet extends fc.Arbitrary<infer T> ? T : never;

/** The tables with every measured column in the unit that `unitOf` says. */
function tables({ feet, measured: readings, horses }: SomeFeet, unitOf: (own: string) => string) {
  const inUnit = (rows: readonly Record<string, number>[], { name, unit }: { name: string; unit: string }) => {
    const factor = conversion(parseUnit(unit), parseUnit(unitOf(unit)));
    return [name, { unit: unitOf(unit), values: Float64Array.from(rows, (row) => row[name] * factor) }] as const;
  };
  const feetColumns: Columns = {
    horse_id: { values: feet.map(([horse]) => `horse ${horse}`) },
    date: { kind: 'date', values: new Float64Array(feet.length) },
    limb: { values: feet.map(([, limb]) => limb) },
    ...Object.fromEntries(footColumns.map((row) => inUnit(readings, row))),
  };
  const horseTable: Columns = {
    horse_id: { values: ['horse 0', 'horse 1', 'horse 2'] },
    ...Object.fromEntries(horseColumns.map((row) => inUnit(horses, row))),
  };
  return { feet: feetColumns, horses: horseTable };
}

/** The state and side of every verdict on every foot. */
function verdicts(feet: FootSheet): string[] {
  const facts = footFacts(feet);
  return measures
    .filter(({ table }) => table === 'feet')
    .flatMap(({ name }) => {
      const { values, error } = feet.column(name) as NumberColumn;
      return Array.from(values, (value, row) => {
        const range = rangeFor(builtInRanges.get(name) ?? [], facts(row));
        const { state, side } = verdict(value, error?.[row] ?? Number.NaN, range);
        return `${name} ${row}: ${state} ${side}`;
      });
    });
}

const otherUnits: readonly Readonly<Record<string, string>>[] = [
  { mm: 'cm', cm: 'm', deg: 'rad', kg: 'g' },
  { mm: '[in_i]', cm: '[in_i]', deg: 'deg', kg: '[lb_av]' },
];

it('a change of every input’s unit leaves every verdict unchanged', () => {
  fc.assert(
    fc.property(someFeet, fc.constantFrom(...otherUnits), (herdOfFeet, units) => {
      const own = herd(tables(herdOfFeet, (unit) => unit));
      const other = herd(tables(herdOfFeet, (unit) => units[unit] ?? unit));
      expect(verdicts(other.feet)).toEqual(verdicts(own.feet));
    }),
    { numRuns: 40 },
  );
});

it('a level changes its sign where inside and outside are swapped, and nothing else', () => {
  const swapped = (name: string): string =>
    name.startsWith('medial') ? name.replace('medial', 'lateral') : name.replace('lateral', 'medial');
  fc.assert(
    fc.property(someFeet, (herdOfFeet) => {
      const own = herd(tables(herdOfFeet, (unit) => unit)).feet;
      const mirrored = herd(
        tables(
          {
            ...herdOfFeet,
            measured: herdOfFeet.measured.map((row) =>
              Object.fromEntries(Object.keys(row).map((name) => [name, row[swapped(name)]])),
            ),
          },
          (unit) => unit,
        ),
      ).feet;
      const levels = measures.filter(({ view, sign }) => (view === 'front' || view === 'rear') && sign !== undefined);
      expect(levels).toHaveLength(7);
      for (const { name } of levels)
        expect(numbers(mirrored, name)).toEqual(numbers(own, name).map((value) => 0 - value));
    }),
    { numRuns: 40 },
  );
});

it('left minus right is the same on both feet of a pair, and changes its sign where they are swapped', () => {
  fc.assert(
    fc.property(someFeet, (herdOfFeet) => {
      const other = { LF: 'RF', RF: 'LF', LH: 'RH', RH: 'LH' } as const;
      const swapped = herdOfFeet.feet.map(([horse, limb]) => [horse, other[limb]] as [number, typeof limb]);
      const own = herd(tables(herdOfFeet, (unit) => unit)).feet;
      const mirrored = herd(tables({ ...herdOfFeet, feet: swapped }, (unit) => unit)).feet;
      const partner = oppositeRows(own);
      for (const { name } of measures.filter((measure) => measure.sign?.startsWith('left minus right'))) {
        const values = numbers(own, name);
        expect(values).toEqual(Array.from(partner, (at) => (at < 0 ? Number.NaN : values[at])));
        expect(numbers(mirrored, name)).toEqual(values.map((value) => 0 - value));
      }
    }),
    { numRuns: 40 },
  );
});

it('the opposite of the opposite is the foot itself, where it has an opposite', () => {
  fc.assert(
    fc.property(someFeet, (herdOfFeet) => {
      const { feet } = tables(herdOfFeet, (unit) => unit);
      const sheet = FootSheet.from(feet as Columns, ['horse_id', 'date', 'limb'])
        .add({ name: 'there', formula: 'opposite(toe_length_mm)' })
        .add({ name: 'and_back', formula: 'opposite(opposite(toe_length_mm))' });
      const own = numbers(sheet, 'toe_length_mm');
      const partner = sheet.partners(sheet.relations[0]);
      expect(numbers(sheet, 'and_back')).toEqual(own.map((value, row) => (partner[row] < 0 ? Number.NaN : value)));
      expect(numbers(sheet, 'there')).toEqual(own.map((_, row) => (partner[row] < 0 ? Number.NaN : own[partner[row]])));
    }),
    { numRuns: 60 },
  );
});
