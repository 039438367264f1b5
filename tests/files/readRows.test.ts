import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CellStore } from '../../lib/files/cellStore.ts';
import { readRows } from '../../lib/files/readRows.ts';

function rowsOf(text: string, stores: readonly CellStore[], delimiter = ',', decimal = '.') {
  const layout = { delimiter: delimiter.charCodeAt(0), decimal: decimal.charCodeAt(0), keepEmptyRows: false, named: 1 };
  return readRows(new TextEncoder().encode(text), 0, layout, stores);
}

const digits = (most: number) => fc.string({ unit: fc.constantFrom(...'0123456789'), minLength: 1, maxLength: most });
const plain = fc
  .tuple(fc.constantFrom('', '-'), digits(4), fc.option(digits(3)))
  .map(([sign, whole, part]) => (part === null ? sign + whole : `${sign}${whole}.${part}`));

describe('readRows', () => {
  it('reads a plain number as the double nearest to it, whatever its length (law)', () => {
    fc.assert(
      fc.property(fc.array(plain, { minLength: 1 }), fc.constantFrom('.', ','), (numbers, decimal) => {
        const store = new CellStore('number');
        const text = numbers.map((number) => `${number.replace('.', decimal)}\n`).join('');
        expect(rowsOf(text, [store], ';', decimal).rows).toBe(numbers.length);
        expect([...store.values]).toEqual(numbers.map(Number));
        expect(store.oddRows).toEqual([]);
      }),
    );
  });

  it('keeps the text of a number beyond the limits, or with a nought before it where that makes it a name', () => {
    const cells = ['99.9', '100.1', '9.9', '05.2', '012.5', '10.0', '0.5'];
    const store = new CellStore('number', { least: 0.5, most: 100, strict: true });
    rowsOf(`${cells.join('\n')}\n`, [store]);
    expect([...store.values]).toEqual([99.9, Number.NaN, 9.9, Number.NaN, Number.NaN, 10, 0.5]);
    expect(store.oddRows).toEqual([1, 3, 4]);
    expect(store.texts.texts()).toEqual(['100.1', '05.2', '012.5']);
  });

  it('takes no other sign for a digit or a mark', () => {
    const cells = ['5:.5', '50/5', '5O.5', '50.:', '50.5x', ':10.5', '/10.5', '50.5'];
    const store = new CellStore('number');
    rowsOf(`${cells.join('\n')}\n`, [store]);
    expect([...store.values]).toEqual([...new Array(7).fill(Number.NaN), 50.5]);
  });

  it('gives a text the same code wherever it comes again, and like texts codes of their own (law)', () => {
    const word = fc.string({ unit: fc.constantFrom('a', 'b', 'é', '1'), minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(fc.array(word, { minLength: 1 }), (words) => {
        const store = new CellStore('text');
        rowsOf(words.map((text) => `${text}\n`).join(''), [store]);
        const texts = store.texts.texts();
        expect(Array.from(store.codes, (code) => texts[code])).toEqual(words);
        expect(new Set(texts).size).toBe(texts.length);
      }),
    );
  });
});
