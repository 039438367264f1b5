import fc from 'fast-check';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readTable } from '../../lib/files/readTable.ts';
import { type Columns, TextColumn, toColumn } from '../../lib/sheet/column.ts';
import { type JournalEntry, RECORD_VERSION } from '../../lib/store/journal.ts';
import { recordFiles, type WholeRecord } from '../../lib/store/recordFiles.ts';
import { readRecordZip, writeRecordZip } from '../../lib/store/recordZip.ts';
import type { KeptTable } from '../../lib/store/tables.ts';

function table(csv: string, schema: 'feet' | 'horses' | 'visits'): KeptTable {
  const { columns, problems, entered } = readTable(csv, { file: `${schema}.csv`, schema });
  return { columns, problems, entered, file: `${schema}.csv` };
}

const entry: JournalEntry = {
  ...{ id: 'k3f9x2-1', at: 1_773_000_000_000, counter: 7, device: 'phone', who: 'Ada “the boss”\n', table: 'feet' },
  words: 'typing in Toe angle',
  edits: [
    {
      ...{ kind: 'cells', column: 'toe_angle_deg', holds: 'number', unit: 'deg', rows: ['k3f9x2/0', '__proto__/1'] },
      before: [null, { text: 'about 50' }],
      after: [52.300000000000004, null],
    },
  ],
};

const record: WholeRecord = {
  name: 'North yard',
  tables: {
    feet: {
      ...table(
        `horse_id,date,limb,toe_angle_deg,shod,paint,007
=1+1,2026-03-09,LF,520,yes,"red, ""dark""",5
__proto__,03/04/2026,near fore,about 50,no,'=x,6
"line
break",2026-03-10,LH,0.1,,‮تjust,
`,
        'feet',
      ),
      own: [{ name: 'twice', formula: 'toe_angle_deg * 2', unit: 'deg' }],
      opened: 'k3f9x2',
      ids: { origins: ['k3f9x2', 'q'], codes: Int32Array.of(0, 1, 0), numbers: Float64Array.of(0, 0, 4) },
    },
    horses: table('horse_id,weight_kg,girth_cm\nBella,512,\n', 'horses'),
  },
  journal: [entry, { ...entry, id: 'k3f9x2-2', counter: 8 }],
  earlier: [
    { opening: 'k3f9x2-2', table: 'feet', kept: table('horse_id,date,limb,toe_angle_deg\nBella,x,LF,50\n', 'feet') },
  ],
  pages: [{ title: 'Toes “2”\n', controls: { table: 'occasions', column: '__proto__', by: '' } }],
  photographs: new Map([
    ['b.jpg', Uint8Array.of(255, 216, 0, 1)],
    ['a.jpg', Uint8Array.of()],
  ]),
};

/** A record without what makes two of the same content differ: classes of columns, empty maps. */
function plain({ tables, earlier = [], ...rest }: WholeRecord) {
  const replaced = earlier.map(({ opening, table, kept }) => [`${opening} ${table}`, kept] as const);
  const said = [...Object.entries(tables), ...replaced].map(([name, { columns, entered, ...others }]) => {
    const cells = Object.entries(columns).map(([column, input]) => {
      const { kind, unit, values } = toColumn(input);
      return [column, kind, unit, [...values], input.error && [...input.error]];
    });
    return [name, cells, [...(entered ?? [])].filter(([, texts]) => texts.size > 0), others];
  });
  return { ...rest, said, photographs: [...(rest.photographs ?? [])].sort(([a], [b]) => (a < b ? -1 : 1)) };
}

const again = async (zip: Uint8Array) => (await readRecordZip(zip))!;

describe('a record as one zip', () => {
  it('comes back as it was, unread texts, own columns, history and photographs too', async () => {
    const back = await again(await writeRecordZip(record));
    expect(plain(back)).toEqual(plain(record));
    expect([...(back.tables.feet!.entered ?? [])]).toEqual([...record.tables.feet!.entered!]);
  });

  it('is the same to the last byte when it is written, read and written', async () => {
    const zip = await writeRecordZip(record);
    expect(await writeRecordZip(record)).toEqual(zip);
    expect(await writeRecordZip(await again(zip))).toEqual(zip);
  });

  it('holds tidy tables, their description, the texts that could not be read, and the journal line by line', async () => {
    const files = unzipSync(await writeRecordZip(record));
    expect(Object.keys(files)).toEqual([
      ...[
        'record.json',
        'datapackage.json',
        'feet.csv',
        'horses.csv',
        'earlier-1-feet.csv',
        'unread.csv',
        'journal.jsonl',
      ],
      ...['photographs/a.jpg', 'photographs/b.jpg'],
    ]);
    const text = (name: string) => new TextDecoder().decode(files[name]);
    expect(text('feet.csv').split('\n')[2]).toMatch(/^__proto__,,LF,,FALSE,'=x,/);
    expect(text('unread.csv')).toContain('feet,2,toe_angle_deg,about 50\n');
    expect(text('journal.jsonl').split('\n')).toHaveLength(3);
  });

  it('comes back whatever stands in its tables', async () => {
    const texts = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc.constantFrom('NA', '007', "'=1", ' x ', '\r\n', '1,5', 'TRUE'),
    );
    const number = fc.oneof(fc.double({ noDefaultInfinity: true }), fc.constantFrom(0, -0, 1e21, Number.NaN));
    const names = fc.uniqueArray(fc.oneof(texts, fc.constantFrom('__proto__', '1', 'date')), { maxLength: 4 });
    await fc.assert(
      fc.asyncProperty(
        names.map((all) => all.filter((name) => name.trim() === name && name !== '')),
        fc.array(fc.tuple(texts, number, fc.boolean(), fc.nat(2_000), texts), { maxLength: 6 }),
        async (columnNames, rows) => {
          const columns: Columns = Object.create(null);
          columns.horse_id = TextColumn.from(rows.map(([text]) => text));
          columnNames.forEach((name, at) => {
            columns[name] = [
              TextColumn.from(rows.map(([text]) => text)),
              {
                unit: 'mm',
                values: Float64Array.from(rows, (row) => row[1]),
                error: Float64Array.from(rows, () => 0.5),
              },
              { kind: 'boolean' as const, values: Float64Array.from(rows, (row) => Number(row[2])) },
              { kind: 'date' as const, values: Float64Array.from(rows, (row) => row[3]) },
            ][at];
          });
          const entered = new Map([
            ['horse_id', new Map(rows.flatMap((row, i) => (row[4] === '' ? [] : [[i, row[4]]])))],
          ]);
          const feet = { columns, entered, problems: [], file: 'x.csv' };
          const zip = await writeRecordZip({ name: '', tables: { feet }, journal: [] });
          const back = await again(zip);
          const { ...said } = plain(back);
          expect(said.said).toEqual(plain({ name: '', tables: { feet }, journal: [] }).said);
          expect(await writeRecordZip(back)).toEqual(zip);
        },
      ),
      { numRuns: 150 },
    );
  });

  it('is read too where its files were packed again inside a folder', async () => {
    const files = Object.entries(unzipSync(await writeRecordZip(record)));
    const zip = zipSync(Object.fromEntries(files.map(([name, bytes]) => [`my record/${name}`, bytes])));
    expect(plain(await again(zip))).toEqual(plain(record));
  });

  it('is no record where a zip holds something else', async () => {
    expect(await readRecordZip(zipSync({ 'letter.txt': strToU8('Dear farrier') }))).toBeUndefined();
  });

  it.each([
    [
      'a newer program’s',
      'record.json',
      (text: string) => text.replace(/"version": \d+/, `"version": ${RECORD_VERSION + 1}`),
      'newer version',
    ],
    [
      'one with a broken line in its journal',
      'journal.jsonl',
      (text: string) => text.replace('{', '['),
      'line 1 of journal.jsonl is broken',
    ],
    [
      'one with a row cut in two',
      'feet.csv',
      (text: string) => text.replace(/\n[^\n]*\n$/, '\n'),
      'feet.csv is broken',
    ],
    [
      'one with a row less',
      'feet.csv',
      (text: string) => text.replace(/\n__proto__.*\n/, '\n'),
      'has 2 rows where record.json counts 3',
    ],
    [
      'one whose kept pages are none',
      'record.json',
      (text: string) => text.replace('"column": "__proto__"', '"column": 1'),
      'pages kept in record.json are broken',
    ],
    ['another program’s', 'record.json', () => '{}', 'not that of a record'],
  ])('%s is refused in words', async (_, name, change, words) => {
    const files = unzipSync(await writeRecordZip(record));
    files[name] = strToU8(change(new TextDecoder().decode(files[name])));
    await expect(readRecordZip(zipSync(files))).rejects.toThrow(words);
  });

  it('that lost a file, or bytes, is refused in words', async () => {
    const { 'unread.csv': _, ...files } = unzipSync(await writeRecordZip(record));
    await expect(readRecordZip(zipSync(files))).rejects.toThrow('has no file unread.csv');
    const zip = await writeRecordZip(record);
    await expect(readRecordZip(zip.subarray(0, zip.length / 2))).rejects.toThrow('broken');
  });

  it('writes the same files for the same record, for a folder as for a zip', () => {
    expect(recordFiles(record)).toEqual(
      recordFiles({ ...record, photographs: new Map([...record.photographs!].reverse()) }),
    );
  });
});
