import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTable } from '../../lib/files/readTable.ts';
import { writeTable } from '../../lib/files/writeTable.ts';
import { type Columns, rowCount, TextColumn } from '../../lib/sheet/column.ts';
import type { Entered } from '../../lib/store/journal.ts';
import { keyedRows } from '../../lib/store/keyedRows.ts';
import { type MergedCell, mergeOf, nothingNew } from '../../lib/store/merge.ts';
import type { Choice } from '../../lib/store/mergeEdits.ts';
import { mergedTable, mergeInto } from '../../lib/store/mergeInto.ts';
import { TableRecord } from '../../lib/store/tableRecord.ts';
import type { KeptTable } from '../../lib/store/tables.ts';

function table(csv: string): KeptTable {
  const { columns, problems, entered } = readTable(csv, { file: 'feet.csv', schema: 'feet' });
  return { columns, problems, entered, file: 'feet.csv' };
}

const always = (choice: Choice) => ({ cell: () => choice });

/** All that a table says, row by row in the order of its keys; empty columns and the order of rows say nothing. */
function said(kept: KeptTable): string[] {
  const codes = new Map<string, number>();
  const rows = keyedRows('feet', kept, codes);
  const names = Object.keys(kept.columns).filter((name) => !['moment', 'repeat'].includes(name));
  return Array.from({ length: rows.rows }, (_, row) => {
    const cells = names.sort().flatMap((name) => {
      const cell = rows.at(name, row);
      return cell === null ? [] : [[name, cell]];
    });
    const repeat = rows.groups[row] === undefined ? null : rows.repeats[row];
    return JSON.stringify([rows.at('moment', row) ?? 'between', repeat, cells]);
  }).sort();
}

const desk = table(`horse_id,date,limb,moment,toe_angle_deg,toe_length_mm,paint
Bella,2026-03-09,LF,before,52,84.5,red
Bella,2026-03-09,RF,before,about 50,,
Otto,2026-03-09,LF,before,48,80,
`);
const phone = table(`limb,horse_id,date,moment,toe_length_mm,toe_angle_deg
LF,Bella,2026-03-09,before,84.5,53
RF,Bella,2026-03-09,before,85,about 51
LF,Otto,2026-03-09,before,80,48
RF,Otto,2026-03-09,before,81,49
`);

describe('mergeOf', () => {
  it('brings new rows in, is silent about equal ones, fills blanks, and sets side by side what differs', () => {
    const merge = mergeOf('feet', desk, phone);
    expect(merge.newRows).toEqual([{ row: 3 }]);
    expect(merge.equal).toBe(1);
    expect(merge.filled).toEqual([{ column: 'toe_length_mm', row: 1, ours: null, theirs: 85 }]);
    expect(merge.conflicts).toEqual([
      { column: 'toe_angle_deg', row: 0, ours: 52, theirs: 53 },
      { column: 'toe_angle_deg', row: 1, ours: { text: 'about 50' }, theirs: { text: 'about 51' } },
    ]);
  });

  it('lets no blank overwrite a value, whichever side it stands on', () => {
    const blank = table('horse_id,date,limb,moment,toe_angle_deg\nBella,2026-03-09,LF,before,\n');
    expect(nothingNew(mergeOf('feet', desk, blank))).toBe(true);
    expect(mergeOf('feet', blank, desk).conflicts).toEqual([]);
  });

  it('finds nothing in the same table written out and read back, whatever its rows lack', () => {
    const odd = table(`horse_id,date,limb,toe_angle_deg,note
,2026-03-09,LF,52,=1+1
Bella,2026-03-09,LF,50.1,
Bella,2026-03-09,LF,50.30000000000001,
Bella,31/31/2026,LF,49,
,,,,total
`);
    const again = table(writeTable(odd.columns, { entered: odd.entered }));
    expect(nothingNew(mergeOf('feet', odd, again))).toBe(true);
    const rounded = table(writeTable(odd.columns, { entered: odd.entered }).replace('50.30000000000001', '50.3'));
    expect(nothingNew(mergeOf('feet', odd, rounded))).toBe(true);
  });

  it('numbers repeats as the herd does, so that a reading typed elsewhere is not taken for another', () => {
    const two = table('horse_id,date,limb,repeat,toe_angle_deg\nBella,2026-03-09,LF,,52\nBella,2026-03-09,LF,,53\n');
    const five = table('horse_id,date,limb,repeat,toe_angle_deg\nBella,2026-03-09,LF,5,55\nBella,2026-03-09,LF,2,53\n');
    const merged = mergedTable('feet', two, five, always('ours'));
    expect([...merged.columns.repeat.values]).toEqual([1, 2, 5]);
    expect([...merged.columns.toe_angle_deg.values]).toEqual([52, 53, 55]);
    expect(nothingNew(mergeOf('feet', merged, five))).toBe(true);
    expect(said(mergedTable('feet', five, two, always('ours')))).toEqual(said(merged));
  });

  it('brings units and kinds of columns of one’s own together, and keeps as text what doesn’t convert', () => {
    const ours = table('horse_id,date,limb,girth_cm,paint\nBella,2026-03-09,LF,,7\nOtto,2026-03-09,LF,180,8\n');
    const theirs: KeptTable = {
      ...table('horse_id,date,limb,paint\nBella,2026-03-09,LF,red\nOtto,2026-03-09,LF,\n'),
    };
    (theirs.columns as Columns).girth_cm = { unit: 'mm', values: Float64Array.of(1750, 1800) };
    const merge = mergeOf('feet', ours, theirs);
    expect(merge.filled).toEqual([{ column: 'girth_cm', row: 0, ours: null, theirs: 175 }]);
    expect(merge.conflicts).toEqual([{ column: 'paint', row: 0, ours: 7, theirs: { text: 'red' } }]);
  });

  it('leaves built-in computed columns of a tidy file to be computed', () => {
    const tidy = table('horse_id,date,limb,moment,toe_angle_deg,frog_ratio\nBella,2026-03-09,LF,before,52,0.9\n');
    expect(nothingNew(mergeOf('feet', desk, tidy))).toBe(true);
  });

  it('keeps names that mean something to a program as names', () => {
    const hostile = ['__proto__', 'constructor', '=1+1', '<script>'].map((name) => `"${name}",2026-03-09,LF,50`);
    const ours = table(`horse_id,date,limb,toe_angle_deg\n${hostile.join('\n')}\n`);
    expect(mergeOf('feet', desk, ours).newRows).toHaveLength(4);
    expect(nothingNew(mergeOf('feet', ours, ours))).toBe(true);
  });

  it('merges own formulas: new ones come in, others are chosen', () => {
    const twice = { name: 'twice', formula: 'toe_angle_deg * 2' };
    const ours = { ...desk, own: [twice] };
    const theirs = {
      ...desk,
      own: [
        { ...twice, formula: 'toe_angle_deg + toe_angle_deg' },
        { name: 'half', formula: 'toe_angle_deg / 2' },
      ],
    };
    const choose = (choice: Choice) => ({ cell: () => choice, formula: () => choice });
    expect(mergedTable('feet', ours, theirs, choose('ours')).own).toEqual([twice, theirs.own[1]]);
    expect(mergedTable('feet', ours, theirs, choose('theirs')).own).toEqual(theirs.own);
  });
});

describe('mergeInto', () => {
  it('is one change of the record, with the choice in it, which can be taken back and done again', () => {
    const record = new TableRecord('feet', desk);
    const made: unknown[] = [];
    record.subscribe((_, one) => made.push(one));
    mergeInto(record, 'feet', phone, always('theirs'), 'merging phone.csv');
    expect(made).toHaveLength(1);
    expect(made[0]).toMatchObject({
      words: 'merging phone.csv',
      edits: [
        { column: 'toe_length_mm', before: [null], after: [85] },
        { column: 'toe_angle_deg', before: [52, { text: 'about 50' }], after: [53, { text: 'about 51' }] },
        { kind: 'rows', how: 'add' },
      ],
    });
    const merged = said(record.table());
    expect(merged).toEqual(said(mergedTable('feet', desk, phone, always('theirs'))));
    record.undo();
    expect(said(record.table())).toEqual(said(desk));
    record.redo();
    expect(said(record.table())).toEqual(merged);
    mergeInto(record, 'feet', phone, always('theirs'), 'again');
    expect(record.undoable).toBe('merging phone.csv');
  });
});

const names = ['Bella', 'Otto', '__proto__'];
const angle = fc.option(fc.oneof(fc.integer({ min: 40, max: 60 }), fc.constant({ text: 'fifty' })), { nil: null });

/** Feet of few horses and days, so that two tables often hold the same foot; some lack a key, a repeat or a value. */
const feet = fc
  .array(
    fc.record({
      horse: fc.option(fc.constantFrom(...names), { nil: '', freq: 8 }),
      date: fc.constantFrom(20_000, 20_001),
      limb: fc.constantFrom('LF', 'RF'),
      moment: fc.constantFrom('before', 'between', ''),
      repeat: fc.option(fc.constantFrom(1, 2, 3), { nil: Number.NaN }),
      toe: angle,
      heel: angle,
      paint: fc.constantFrom('', 'red', 'blue'),
    }),
    { maxLength: 12 },
  )
  .map((rows): KeptTable => {
    const cells = (of: (row: (typeof rows)[number]) => Entered) =>
      Float64Array.from(rows, (row) => (typeof of(row) === 'number' ? (of(row) as number) : Number.NaN));
    const texts = (of: (row: (typeof rows)[number]) => Entered) =>
      new Map(
        rows.flatMap((row, i) => (of(row) === null || typeof of(row) === 'number' ? [] : [[i, 'fifty'] as const])),
      );
    const column = (of: (row: (typeof rows)[number]) => string) => TextColumn.from(rows.map(of));
    return {
      columns: {
        horse_id: column(({ horse }) => horse),
        date: { kind: 'date', unit: 'd', values: Float64Array.from(rows, ({ date }) => date) },
        limb: column(({ limb }) => limb),
        moment: column(({ moment }) => moment),
        repeat: { unit: '1', values: Float64Array.from(rows, ({ repeat }) => repeat) },
        toe_angle_deg: { unit: 'deg', values: cells(({ toe }) => toe) },
        heel_angle_deg: { unit: 'deg', values: cells(({ heel }) => heel) },
        paint: column(({ paint }) => paint),
      },
      entered: new Map([
        ['toe_angle_deg', texts(({ toe }) => toe)],
        ['heel_angle_deg', texts(({ heel }) => heel)],
      ]),
      problems: [],
      file: 'feet.csv',
    };
  });

/** A choice by what stands there, so that it is the same whichever side is called ours. */
const larger = ({ ours, theirs }: MergedCell): Choice =>
  JSON.stringify(ours) >= JSON.stringify(theirs) ? 'ours' : 'theirs';

describe('merging, whatever the tables', () => {
  it('gives the same whichever of the two is merged into the other', () => {
    fc.assert(
      fc.property(feet, feet, (a, b) => {
        const there = mergedTable('feet', a, b, { cell: larger });
        const back = mergedTable('feet', b, a, { cell: larger });
        expect(said(there)).toEqual(said(back));
        const one = mergedTable('feet', a, b, always('ours'));
        const other = mergedTable('feet', b, a, always('theirs'));
        expect(said(one)).toEqual(said(other));
      }),
      { numRuns: 150 },
    );
  });

  it('changes nothing the second time, and nothing with itself', () => {
    fc.assert(
      fc.property(feet, feet, fc.constantFrom('ours', 'theirs'), (a, b, choice: Choice) => {
        expect(nothingNew(mergeOf('feet', a, a))).toBe(true);
        const once = mergedTable('feet', a, b, always(choice));
        const again = mergeOf('feet', once, b);
        expect([again.newRows, again.filled, again.numbered]).toEqual([[], [], []]);
        if (choice === 'theirs') expect(again.conflicts).toEqual([]);
        expect(said(mergedTable('feet', once, b, always(choice)))).toEqual(said(once));
        expect(nothingNew(mergeOf('feet', mergedTable('feet', a, b, { cell: larger }), a))).toBe(
          mergeOf('feet', a, b).conflicts.every((conflict) => larger(conflict) === 'ours'),
        );
      }),
      { numRuns: 150 },
    );
  });

  it('loses no row and no value of either', () => {
    fc.assert(
      fc.property(feet, feet, (a, b) => {
        const { conflicts, newRows } = mergeOf('feet', a, b);
        const merged = mergedTable('feet', a, b, always('ours'));
        expect(rowCount(merged.columns)).toBe(rowCount(a.columns) + newRows.length);
        const left = mergeOf('feet', merged, b);
        expect(left.conflicts.length).toBe(conflicts.length);
        expect(nothingNew({ ...left, conflicts: [] })).toBe(true);
        expect(nothingNew(mergeOf('feet', merged, a))).toBe(true);
      }),
      { numRuns: 150 },
    );
  });

  it('gives the same in whatever order three tables are merged that edit different cells and rows of one', () => {
    const edits = fc.array(fc.tuple(fc.nat(), fc.constantFrom('toe_angle_deg', 'heel_angle_deg'), fc.integer()), {
      maxLength: 6,
    });
    fc.assert(
      fc.property(feet, edits, edits, edits, (base, ...all) => {
        const rows = rowCount(base.columns);
        /** Each device fills other blanks of the base, and adds feet of a day of its own. */
        const devices = all.map((changes, device) => {
          const toe = { ...base.columns };
          for (const [place, column, value] of changes) {
            if (rows === 0) continue;
            const row = place % rows;
            const blank = Number.isNaN(base.columns[column].values[row]) && !base.entered?.get(column)?.has(row);
            if (!blank || row % 3 !== device) continue;
            const values = Float64Array.from(toe[column].values as Float64Array);
            values[row] = value;
            toe[column] = { unit: 'deg', values };
          }
          const own = table(`horse_id,date,limb,toe_angle_deg\nBella,2026-01-0${device + 1},LF,5${device}\n`);
          return mergedTable('feet', { ...base, columns: toe }, own, always('ours'));
        });
        const [a, b, c] = devices;
        const merge = (x: KeptTable, y: KeptTable) => mergedTable('feet', x, y, always('ours'));
        expect(said(merge(merge(a, b), c))).toEqual(said(merge(a, merge(b, c))));
        expect(said(merge(merge(c, a), b))).toEqual(said(merge(merge(a, b), c)));
      }),
      { numRuns: 100 },
    );
  });
});
