import fc from 'fast-check';
import { type ColumnInput, type Columns, type Kind, toColumn } from '../../lib/sheet/column.ts';

/** Texts that trouble files: quotes, delimiters, line breaks, apostrophes, formulas, numbers, spaces, other scripts. */
const hostileTexts = [
  ...["'", "''", "'=1+1", "''=1", '=1+1', '+1', '-1', '-', '@SUM(A1)', '\t=1', '\r', '\n', '＝1', "'a", " ' = "],
  ...['"', '""', 'a"b', '"a"', 'a,b', 'a;b', 'a\tb', 'a\r\nb', ' a', 'a ', '\u00a0a\u00a0', '\ufeffa', ' '],
  ...['5', '007', '1e5', '-0', '52°', '3 1/4"', 'NA', 'n/a', '?', 'TRUE', 'false', '2026-03-09', '03/04/2026'],
  ...['__proto__', 'constructor', 'toString', '<script>alert(1)</script>', 'é', '馬', '🐴', '\0', 'sep=;'],
];

export const anyText = fc.oneof(
  fc.constantFrom(...hostileTexts),
  fc.string({ unit: 'binary', maxLength: 12 }),
  fc.string({ maxLength: 12 }),
);

export const anyNumber = fc.oneof(
  { weight: 3, arbitrary: fc.double({ noNaN: true, noDefaultInfinity: true }) },
  { weight: 2, arbitrary: fc.integer({ min: -99_999, max: 99_999 }).map((n) => n / 10) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(0, -0, 5e-324, -5e-324, 2 ** 53, 2 ** 31, 1e21, 0.1 + 0.2, Number.MAX_VALUE),
  },
  { weight: 1, arbitrary: fc.constant(Number.NaN) },
);

const anyName = anyText.filter((name) => name !== '');

const anyDay = fc.oneof(fc.integer({ min: -354_285, max: 2_932_896 }), fc.constant(Number.NaN));

function columnOf(kind: Kind, rows: number): fc.Arbitrary<ColumnInput> {
  const length = { minLength: rows, maxLength: rows };
  const numbers = (cell: fc.Arbitrary<number>, unit: string) =>
    fc.array(cell, length).map((cells) => ({ kind, unit, values: Float64Array.from(cells) }));
  if (kind === 'number') return numbers(anyNumber, '1');
  if (kind === 'date') return numbers(anyDay, 'd');
  if (kind === 'boolean') return numbers(fc.constantFrom(0, 1, Number.NaN), '1');
  return fc.array(fc.oneof(anyText, fc.constant('')), length).map((values) => ({ kind, unit: '1', values }));
}

/** Any table of up to six columns of every kind and up to eight rows. */
export const anyTable: fc.Arbitrary<Columns> = fc
  .tuple(
    fc.uniqueArray(anyName, { minLength: 1, maxLength: 6 }),
    fc.array(fc.constantFrom<Kind>('number', 'date', 'boolean', 'text'), { minLength: 6, maxLength: 6 }),
    fc.nat(8),
  )
  .chain(([names, kinds, rows]) =>
    fc.tuple(...names.map((_, c) => columnOf(kinds[c], rows))).map((inputs) => {
      const columns: Columns = Object.create(null);
      names.forEach((name, c) => {
        columns[name] = inputs[c];
      });
      return columns;
    }),
  );

/** Those in which no text begins with a byte order mark, which the usual readers of UTF-8 take for no part of it. */
export const anyUnmarkedTable = anyTable.filter((table) =>
  Object.entries(table).every(([name, { values }]) =>
    [name, ...values].every((text) => typeof text !== 'string' || !text.startsWith('\ufeff')),
  ),
);

/** A table as plain lists, in which `-0` and `NaN` are told apart from `0` and missing text. */
export function plain(columns: Columns): object[] {
  return Object.entries(columns).map(([name, input]) => {
    const { kind, unit, values } = toColumn(input);
    return { name, kind, unit, values: [...values] };
  });
}
