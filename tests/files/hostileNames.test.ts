import { describe, expect, it } from 'vitest';
import { dataPackage } from '../../lib/files/dataPackage.ts';
import { gridOfText } from '../../lib/files/guided/cellGrid.ts';
import { readPlanned } from '../../lib/files/guided/readPlanned.ts';
import { suggestPlan } from '../../lib/files/guided/suggestPlan.ts';
import { readTable } from '../../lib/files/readTable.ts';
import { schemaOf } from '../../lib/files/schemaOf.ts';
import { tidyFiles } from '../../lib/files/tidyFiles.ts';
import { writeTable } from '../../lib/files/writeTable.ts';
import { herd } from '../../lib/hoof/herd.ts';
import { type Columns, TextColumn, toColumn } from '../../lib/sheet/column.ts';
import { mergeOf, nothingNew } from '../../lib/store/merge.ts';
import { readRecordZip, writeRecordZip } from '../../lib/store/recordZip.ts';
import { hostileFeet, hostileNames } from '../hostileNames.ts';

const distinct = (column: { values: ArrayLike<unknown> }) => [...new Set(Array.from(column.values))];
const read = readTable(hostileFeet(), { file: 'feet.csv' });

describe('names that a program might take for something else', () => {
  it('are read as they are written, by the reader and by a plan', () => {
    expect(distinct(read.columns.horse_id)).toEqual(hostileNames);
    expect(distinct(read.columns.observer)).toEqual(hostileNames);
    expect(read.problems).toEqual([]);
    const grid = gridOfText(hostileFeet(), 'feet.csv');
    expect(distinct(readPlanned(grid, suggestPlan(grid)).columns.horse_id)).toEqual(hostileNames);
  });

  it('stand in every tidy file as text that no spreadsheet runs, and read back', () => {
    const made = herd({ feet: read.columns });
    for (const { name, contents } of tidyFiles(made)) {
      if (!name.endsWith('.csv')) {
        expect(() => JSON.parse(contents)).not.toThrow();
        continue;
      }
      const back = readTable(contents, { file: name });
      if (back.columns.horse_id)
        for (const horse of distinct(back.columns.horse_id)) expect(hostileNames).toContain(horse);
      for (const column of Object.values(back.columns)) {
        if (!(column instanceof TextColumn)) continue;
        // What a spreadsheet program shows of a cell begins behind its quotes.
        for (const level of column.levels) {
          const written = writeTable({ x: { values: [level] } })
            .split('\n')[1]
            .replace(/^"/, '');
          expect(/^[=+\-@\t\r]/.test(written)).toBe(false);
        }
      }
    }
    const { horses } = made;
    expect(distinct(horses.column('horse_id')).sort()).toEqual([...hostileNames].sort());
  });

  it('are headings too: columns of these names are kept, described, written and read back', () => {
    const columns: Columns = Object.create(null);
    for (const [at, name] of hostileNames.entries()) columns[name] = { values: [`${at}`, name] };
    const back = readTable(writeTable(columns), { schema: schemaOf(columns) });
    const names = Object.keys(columns);
    expect(Object.keys(back.columns)).toEqual(names);
    for (const name of names) expect(toColumn(back.columns[name]).values[1]).toBe(name);
    const described = dataPackage([{ name: 'x', path: 'x.csv', columns }]);
    expect(described.resources[0].schema.fields.map(({ name }) => name)).toEqual(names);
  });

  it('come back from a record’s zip, and merge with themselves without a word', async () => {
    const { columns, problems, entered } = read;
    const feet = { columns, problems, entered, file: hostileNames[0] };
    const zip = await writeRecordZip({ name: hostileNames[1], tables: { feet }, journal: [] });
    const back = (await readRecordZip(zip))!;
    expect(back.name).toBe(hostileNames[1]);
    expect(distinct(back.tables.feet!.columns.horse_id)).toEqual(hostileNames);
    expect(await writeRecordZip(back)).toEqual(zip);
    expect(nothingNew(mergeOf('feet', feet, back.tables.feet!))).toBe(true);
  });
});
