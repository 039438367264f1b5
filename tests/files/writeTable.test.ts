import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTable } from '../../lib/files/readTable.ts';
import { schemaOf } from '../../lib/files/schemaOf.ts';
import { tableChunks, writeTable } from '../../lib/files/writeTable.ts';
import { type Columns, TextColumn, toColumn } from '../../lib/sheet/column.ts';
import { anyNumber, anyTable, anyText, plain } from './tables.ts';

const numbers = (...values: number[]) => ({ values: Float64Array.from(values) });

describe('writeTable', () => {
  it('writes numbers with all their digits, nothing for missing, and no infinity', () => {
    const values = numbers(52, 0.1 + 0.2, -0, 5e-324, 1e21, Number.NaN, Number.POSITIVE_INFINITY);
    expect(writeTable({ a: values, b: { values: 'pqrstuv'.split('') } })).toBe(
      'a,b\n52,p\n0.30000000000000004,q\n-0,r\n5e-324,s\n1e+21,t\n,u\n,v\n',
    );
  });

  it('writes dates as ISO dates, yes and no as TRUE and FALSE', () => {
    expect(
      writeTable({
        date: { kind: 'date', ...numbers(0, 20_521, Number.NaN) },
        shod: { kind: 'boolean', ...numbers(1, Number.NaN, 0) },
      }),
    ).toBe('date,shod\n1970-01-01,TRUE\n2026-03-09,\n,FALSE\n');
  });

  it('quotes what holds a delimiter, a quote, a line break or outer space, and doubles quotes', () => {
    const texts = ['a,b', 'say "no"', 'two\nlines', ' x', 'a;b', 'plain', ''];
    expect(writeTable({ n: numbers(1, 2, 3, 4, 5, 6, 7), t: { values: texts } })).toBe(
      'n,t\n1,"a,b"\n2,"say ""no"""\n3,"two\nlines"\n4," x"\n5,"a;b"\n6,plain\n7,\n',
    );
  });

  it('puts an apostrophe before a text that a spreadsheet would run, in cells and headings, never before a number', () => {
    const texts = ['=1+1', '+1', '-1', '@a', '\ta', "'=1", 'it’s', "'tis"];
    expect(writeTable({ '=n': numbers(-1, -2, -3, -4, -5, -6, -7, -8), t: { values: texts } })).toBe(
      `'=n,t\n-1,'=1+1\n-2,'+1\n-3,'-1\n-4,'@a\n-5,"'\ta"\n-6,''=1\n-7,it’s\n-8,'tis\n`,
    );
  });

  it('keeps a text that looks like a number, a date, yes or missing in quotes', () => {
    expect(writeTable({ t: { values: ['007', '2026-03-09', 'TRUE', 'NA', 'H7'] } })).toBe(
      't\n"007"\n"2026-03-09"\n"TRUE"\n"NA"\nH7\n',
    );
  });

  it('writes a missing cell that stands alone in its row as "", which is no empty line', () => {
    expect(writeTable({ a: numbers(1, Number.NaN) })).toBe('a\n1\n""\n');
  });

  it('writes some of the columns and rows, in the order asked for', () => {
    const table = { a: numbers(1, 2, 3), b: numbers(4, 5, 6), c: { values: ['x', 'y', 'z'] } };
    expect(writeTable(table, { columns: ['c', 'a'], rows: Uint32Array.of(2, 0) })).toBe('c,a\nz,3\nx,1\n');
  });

  it('writes what has names and columns as a sheet does', () => {
    const columns: Columns = { limb: TextColumn.from(['LF', 'RF']), toe_angle_deg: numbers(52, 51) };
    const sheet = { names: ['limb', 'toe_angle_deg'], column: (name: string) => toColumn(columns[name]) };
    expect(writeTable(sheet)).toBe('limb,toe_angle_deg\nLF,52\nRF,51\n');
  });

  it('gives back what was entered and could not be used, where it is asked to', () => {
    const source = 'horse,date,limb,toe angle\nBella,2026-03-09,LF,520\nBella,2026-03-09,RF,"fifty, or so"\n';
    const { columns, entered } = readTable(source);
    expect(writeTable(columns, { entered })).toBe(
      'horse_id,date,limb,toe_angle_deg\nBella,2026-03-09,LF,"520"\nBella,2026-03-09,RF,"fifty, or so"\n',
    );
    expect(writeTable(columns)).toContain('Bella,2026-03-09,LF,\n');
  });

  it('refuses a column without a name and a date without an ISO form', () => {
    expect(() => writeTable({ a: numbers(1), '': numbers(2) })).toThrow('Column 2 has no name');
    expect(() => writeTable({ date: { kind: 'date', ...numbers(0.5) } })).toThrow(
      "0.5 is no whole number of days between the years 0 and 9999; it can't be written as a date",
    );
  });

  it('writes any number as the shortest decimal that reads back to the same bits', () => {
    fc.assert(
      fc.property(fc.array(anyNumber.filter((value) => !Number.isNaN(value))), (values) => {
        const lines = writeTable({ a: numbers(...values) }).split('\n');
        const written = lines.slice(1, -1);
        expect(written.map(Number)).toEqual(values);
        for (const [i, text] of written.entries()) if (!Object.is(values[i], -0)) expect(text).toBe(String(values[i]));
      }),
    );
  });

  it('writes the same bytes in chunks, each of whole rows', () => {
    const rows = 30_000;
    const table = {
      n: { values: Float64Array.from({ length: rows }, (_, row) => row / 7) },
      t: { values: Array.from({ length: rows }, (_, row) => `horse ${row % 11}, é`) },
    };
    const chunks = [...tableChunks(table)];
    expect(chunks.length).toBeGreaterThan(5);
    for (const chunk of chunks) expect(chunk[chunk.length - 1]).toBe(10);
    expect(new TextDecoder().decode(Buffer.concat(chunks))).toBe(writeTable(table));
  });
});

describe('read after write', () => {
  it('gives any table back as it was, to the bit, when told its kinds', () => {
    fc.assert(
      fc.property(anyTable, (table) => {
        const { columns, problems } = readTable(writeTable(table), { schema: schemaOf(table) });
        expect(plain(columns)).toEqual(plain(table));
        expect(problems).toEqual([]);
      }),
      { numRuns: 2000 },
    );
  });

  it('gives any table back whose kinds can be seen, without being told', () => {
    fc.assert(
      fc.property(anyTable, (table) => {
        const visible: Columns = Object.create(null);
        for (const [name, input] of Object.entries(table)) {
          const column = toColumn(input);
          const some = column.kind === 'text' ? column.levels.length > 0 : !column.values.every(Number.isNaN);
          if (some) visible[`q ${name}`] = input;
        }
        const { columns, problems } = readTable(new TextEncoder().encode(writeTable(visible)));
        expect(plain(columns)).toEqual(plain(visible));
        if (Object.keys(visible).length > 0) expect(problems).toEqual([]);
      }),
      { numRuns: 2000 },
    );
  });

  it('takes no text for anything else', () => {
    fc.assert(
      fc.property(fc.array(anyText, { minLength: 1 }), (texts) => {
        const table = { 'some text': { values: texts } };
        const { columns } = readTable(writeTable(table), { schema: schemaOf(table) });
        expect([...columns['some text'].values]).toEqual(texts);
      }),
      { numRuns: 2000 },
    );
  });
});
