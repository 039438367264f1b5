import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isMissing } from '../../lib/files/missingWords.ts';
import { readTable, type TableRead } from '../../lib/files/readTable.ts';
import { type Column, TextColumn } from '../../lib/sheet/column.ts';

const folder = new URL('../fixtures/files/', import.meta.url);
const files = readdirSync(folder)
  .filter((name) => !name.endsWith('.md'))
  .map((name) => new Uint8Array(readFileSync(new URL(name, folder))));

/** Bytes that mean something to a reader of CSV, and others. */
const anyByte = fc.oneof(fc.constantFrom(...Buffer.from('",;\t\r\n =-\'0\0')), fc.nat(255));

/** A file of ours with some bytes changed, put in or taken out. */
const mutatedFile = fc
  .tuple(
    fc.constantFrom(...files),
    fc.array(fc.tuple(fc.nat(), fc.constantFrom('change', 'insert', 'remove'), anyByte), {
      minLength: 1,
      maxLength: 12,
    }),
  )
  .map(([file, edits]) => {
    const bytes = [...file];
    for (const [place, edit, byte] of edits)
      bytes.splice(place % (bytes.length + 1), edit === 'insert' ? 0 : 1, ...(edit === 'remove' ? [] : [byte]));
    return Uint8Array.from(bytes);
  });

function hasValue(column: Column, row: number): boolean {
  return column instanceof TextColumn ? column.codes[row] >= 0 : !Number.isNaN(column.values[row]);
}

/** The same file with every cell as text, by the same names and rows. */
function asText(source: Uint8Array, { headings }: TableRead): TableRead {
  const columns = headings.map(({ heading }) => {
    return { name: heading, title: heading, kind: 'text', unit: '1', headings: [] } as const;
  });
  return readTable(source, { schema: { name: 'text', columns, required: [], keys: ['x'] } });
}

describe('readTable, whatever the bytes', () => {
  it('reads or reports every cell of a file with mutated bytes, and never fails', () => {
    let compared = 0;
    fc.assert(
      fc.property(mutatedFile, (source) => {
        const read = readTable(source);
        const lengths = new Set(Object.values(read.columns).map(({ values }) => values.length));
        expect(lengths.size).toBeLessThanOrEqual(1);
        for (const { row, remedy, expected } of read.problems) {
          expect(Number.isInteger(row) && row >= 0).toBe(true);
          expect(expected !== '' && remedy !== '').toBe(true);
        }
        const [rows] = lengths;
        const text = asText(source, read);
        if (read.schema === undefined || rows !== Object.values(text.columns)[0]?.values.length) return;
        for (const { column, heading } of read.headings)
          for (let row = 0; row < rows; row++) {
            const cell = heading === '' ? '' : (text.columns[heading] as TextColumn).at(row);
            if (cell === undefined || isMissing(cell)) continue;
            const kept = read.entered.get(column)?.has(row) ?? false;
            expect([heading, cell, hasValue(read.columns[column] as Column, row) !== kept]).toEqual([
              heading,
              cell,
              true,
            ]);
            compared++;
          }
      }),
      { numRuns: 3000 },
    );
    expect(compared).toBeGreaterThan(10_000);
  }, 120_000);

  it('answers within bounds for files of nothing but quotes and delimiters', () => {
    for (const piece of ['"', '""', '"a', '",', '"\n', '","', "'=", '\r', ',', ';\n', '" "', '"""a'])
      expect(() => readTable(piece.repeat(40_000 / piece.length))).not.toThrow();
  }, 60_000);
});
