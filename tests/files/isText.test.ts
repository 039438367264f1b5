import { deflateRawSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { decode } from '../../lib/files/decode.ts';
import { isText } from '../../lib/files/isText.ts';
import { problemSentence } from '../../lib/files/problems.ts';
import { readTable } from '../../lib/files/readTable.ts';

const table = `horse,date,limb,toe angle\n${'Bella,2026-03-09,LF,52\n'.repeat(40)}`;
/** As a spreadsheet's own file begins: the head of a zip archive, then packed bytes. */
const workbook = Buffer.concat([
  Buffer.from('PK\x03\x04\x14\0\x06\0\x08\0\0\0!\0', 'latin1'),
  deflateRawSync(Buffer.from(Array.from({ length: 2000 }, (_, i) => `<c r="${i * i}">${i * 7919}</c>`).join(''))),
]);

it('text in any encoding is text, with a stray control character too', () => {
  for (const bytes of [Buffer.from(table), Buffer.from(table, 'utf16le'), Buffer.from(`${table}a\0b`), Buffer.of(10)])
    expect(isText(decode(bytes).bytes)).toBe(true);
});

it('a spreadsheet’s own file and a picture are not', () => {
  expect(isText(decode(workbook).bytes)).toBe(false);
  expect(isText(decode(Buffer.from('\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\x02\0', 'latin1')).bytes)).toBe(false);
});

it('what is no text gives no columns and one problem that says the way out', () => {
  const { columns, problems } = readTable(workbook, { file: 'feet.xlsx' });
  expect(Object.keys(columns)).toEqual([]);
  expect(problems.map(problemSentence)).toEqual([
    'feet.xlsx: Expected a table written as text. Where it is a spreadsheet’s own file, save it there as CSV.',
  ]);
});
