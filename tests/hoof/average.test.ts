import { expect, it } from 'vitest';
import { average } from '../../lib/hoof/average.ts';
import { TextColumn } from '../../lib/sheet/column.ts';

const groups = { codes: Int32Array.of(0, 0, 1, 0), count: 2 };

it('averages numbers over what is there, and their errors as those of independent readings', () => {
  const { x, readings } = average(
    { x: { unit: 'mm', values: Float64Array.of(3, 5, 7, Number.NaN), error: Float64Array.of(3, 4, 2, 1) } },
    groups,
  );
  expect(x.values).toEqual(Float64Array.of(4, 7));
  expect(x.error).toEqual(Float64Array.of(2.5, 2));
  expect(readings.values).toEqual(Float64Array.of(3, 1));
});

it('says yes where one reading says so, and missing where none says anything', () => {
  const { shod } = average(
    { shod: { kind: 'boolean', values: Float64Array.of(0, 1, Number.NaN, Number.NaN) } },
    groups,
  );
  expect(shod.values).toEqual(Float64Array.of(1, Number.NaN));
  const first = { shod: { kind: 'boolean', values: Float64Array.of(1, 0, 0, Number.NaN) } } as const;
  expect(average(first, groups).shod.values).toEqual(Float64Array.of(1, 0));
});

it('takes the first word and the first day that are there', () => {
  const { build, date } = average(
    {
      build: TextColumn.from(['', 'pony', 'heavy', 'cob']),
      date: { kind: 'date', values: Float64Array.of(Number.NaN, 5, 6, 7) },
    },
    groups,
  );
  expect(build.values).toEqual(['pony', 'heavy']);
  expect(date.values).toEqual(Float64Array.of(5, 6));
});

it('leaves a group without values missing', () => {
  const { x } = average({ x: { values: Float64Array.of(1) } }, { codes: Int32Array.of(1), count: 2 });
  expect(x.values).toEqual(Float64Array.of(Number.NaN, 1));
});

it('is no copy where every row stands alone', () => {
  const values = Float64Array.of(1, 2);
  expect(average({ x: { values } }, { codes: Int32Array.of(0, 1), count: 2 }).x.values).toBe(values);
  expect(average({ x: { values } }, { codes: Int32Array.of(1, 0), count: 2 }).x.values).toEqual(Float64Array.of(2, 1));
  const three = { x: { values: Float64Array.of(1, 2, 3) } };
  expect(average(three, { codes: Int32Array.of(0, 2, 1), count: 3 }).x.values).toEqual(Float64Array.of(1, 3, 2));
});
