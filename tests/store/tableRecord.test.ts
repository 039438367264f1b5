import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readTable } from '../../lib/files/readTable.ts';
import { toColumn } from '../../lib/sheet/column.ts';
import { TableRecord } from '../../lib/store/tableRecord.ts';
import type { KeptTable } from '../../lib/store/tables.ts';

const csv = `horse_id,date,limb,toe_angle_deg,toe_length_mm,paint
Bella,2026-03-09,LF,52,84.5,red
Bella,2026-03-09,RF,about 50,85,blue
Otto,2026-03-09,LF,48,,red
`;

function record(text = csv): TableRecord {
  const { columns, problems, entered } = readTable(text, { file: 'feet.csv' });
  return new TableRecord('feet', { columns, problems, entered, file: 'feet.csv' });
}

const column = ({ columns }: KeptTable, name: string) => [...toColumn(columns[name]).values];
const put = (to: TableRecord, columns: string[], rows: number[], texts: string[][]) =>
  to.put({ rows, columns, texts, how: 'paste' });

/** All that a record holds, to compare. */
const state = (of: TableRecord) => {
  const { columns, entered, own } = of.table();
  const cells = Object.fromEntries(
    Object.entries(columns).map(([name]) => [name, column({ columns } as KeptTable, name)]),
  );
  return { cells, entered: [...(entered ?? [])].map(([name, texts]) => [name, [...texts]]), own };
};

test('units, fractions, decimal commas, words and dates are read as in a file', () => {
  const feet = record();
  const columns = ['toe_length_mm', 'toe_angle_deg', 'limb', 'date', 'shod'];
  expect(
    put(
      feet,
      columns,
      [0, 2],
      [
        ['8,5 cm', '51,5°', 'off hind', '9 Mar 2026', 'bare'],
        ['3 1/4 in', '50', 'LH', '2026-03-10', 'yes'],
      ],
    ),
  ).toEqual({
    changed: 9,
    unread: 0,
  });
  const table = feet.table();
  expect(column(table, 'toe_length_mm')).toEqual([85, 85, 82.55]);
  expect(column(table, 'toe_angle_deg')[0]).toBe(51.5);
  expect(column(table, 'limb')).toEqual(['RH', 'RF', 'LH']);
  expect(column(table, 'date')[2]).toBe((column(table, 'date')[1] as number) + 1);
  expect(column(table, 'shod')).toEqual([0, Number.NaN, 1]);
});

test('a number without a unit is in the unit that the reader sees', () => {
  const feet = record();
  feet.put({ rows: [0], columns: ['toe_length_mm'], texts: [['3 1/4']], how: 'set', unitOf: () => '[in_i]' });
  expect(column(feet.table(), 'toe_length_mm')[0]).toBe(82.55);
});

test('a cell that can’t be read keeps its text, is missing, and says what was expected', () => {
  const feet = record();
  expect(put(feet, ['toe_angle_deg'], [0], [['520']])).toEqual({ changed: 1, unread: 1 });
  expect(feet.unread('toe_angle_deg', 0)).toMatchObject({ text: '520', expected: '15 to 110 deg' });
  expect(column(feet.table(), 'toe_angle_deg')[0]).toBeNaN();
  expect(feet.table().entered?.get('toe_angle_deg')).toEqual(
    new Map([
      [0, '520'],
      [1, 'about 50'],
    ]),
  );
  expect(feet.unread('toe_angle_deg', 2)).toBeUndefined();
});

test('what the file had unread is unread here too, and typing over it mends it', () => {
  const feet = record();
  expect(feet.unread('toe_angle_deg', 1)?.text).toBe('about 50');
  put(feet, ['toe_angle_deg'], [1], [['50']]);
  expect(feet.unread('toe_angle_deg', 1)).toBeUndefined();
  expect(column(feet.table(), 'toe_angle_deg')[1]).toBe(50);
});

test('problems follow what is typed', () => {
  const feet = record();
  expect(feet.problems().map(({ value }) => value)).toEqual(['about 50']);
  put(feet, ['toe_angle_deg'], [1], [['50']]);
  put(feet, ['date', 'limb'], [0], [['03/04/2026', 'tail']]);
  expect(feet.problems().map(({ row, column, value }) => [row, column, value])).toEqual([
    [2, 'date', '03/04/2026'],
    [2, 'limb', 'tail'],
  ]);
});

test('a row that lacks its horse or its date, or stands twice, is told of whatever else is typed, and a row just begun is not', () => {
  const feet = record(`horse_id,date,limb,repeat,toe_angle_deg
,2026-03-09,LF,1,52
Bella,2026-03-09,LF,1,50
Bella,2026-03-09,LF,1,51
`);
  const found = () => feet.problems().map(({ row, column, code }) => [row, column, code]);
  const opened = found();
  expect(opened).toEqual([
    [2, 'horse_id', 'no-key'],
    [4, '', 'same-row-twice'],
  ]);
  put(feet, ['toe_angle_deg'], [1], [['53']]);
  expect(found()).toEqual(opened);
  feet.clear(['date'], [1]);
  expect(found()).toEqual([
    [2, 'horse_id', 'no-key'],
    [3, 'date', 'no-key'],
  ]);
  feet.addRows([{ observer: 'Ada' }]);
  put(
    feet,
    ['horse_id', 'date'],
    [0, 1],
    [
      ['Kit', ''],
      ['Bella', '2026-03-10'],
    ],
  );
  expect(found()).toEqual([[2, 'date', 'no-key']]);
});

test('dates of a pasted block tell the order of day and month for each other', () => {
  const feet = record();
  put(feet, ['date'], [0, 1], [['03/04/2026'], ['25/04/2026']]);
  const [first, second] = column(feet.table(), 'date') as number[];
  expect(second - first).toBe(22);
});

test('columns that the table could have can be typed in, and a column of the file’s own stays', () => {
  const feet = record();
  expect(feet.names).toContain('frog_width_mm');
  expect(feet.names).toContain('paint');
  put(feet, ['paint', 'observer'], [0], [['<b>green</b>', '__proto__']]);
  expect(column(feet.table(), 'paint')[0]).toBe('<b>green</b>');
  expect(column(feet.table(), 'observer')).toEqual(['__proto__', '', '']);
});

test('only closed lists of words are offered as words', () => {
  const feet = record();
  expect(feet.words('limb')).toEqual(['LF', 'RF', 'LH', 'RH']);
  expect(feet.words('shod')).toEqual(['yes', 'no']);
  expect(feet.words('view_quality')).toBeUndefined();
  expect(feet.words('observer')).toBeUndefined();
  expect(feet.words('toe_angle_deg')).toBeUndefined();
});

test('lines beyond the last row get rows of their own, in the same change', () => {
  const feet = record();
  feet.put(
    {
      rows: [2],
      columns: ['horse_id', 'toe_angle_deg'],
      texts: [
        ['Otto', '49'],
        ['Ada', 'steep'],
      ],
      how: 'paste',
    },
    1,
  );
  expect(feet.rows).toBe(4);
  expect(column(feet.table(), 'horse_id')[3]).toBe('Ada');
  expect(feet.unread('toe_angle_deg', 3)?.text).toBe('steep');
  feet.undo();
  expect(feet.rows).toBe(3);
  expect(feet.undoable).toBeUndefined();
});

test('filling puts the first row into the others, unread texts too; clearing empties both', () => {
  const feet = record();
  expect(feet.fill(['toe_angle_deg'], [1, 0, 2])).toBe(2);
  expect(feet.unread('toe_angle_deg', 2)?.text).toBe('about 50');
  expect(column(feet.table(), 'toe_angle_deg')).toEqual([Number.NaN, Number.NaN, Number.NaN]);
  expect(feet.clear(['toe_angle_deg'], [0, 1, 2])).toBe(3);
  expect(feet.unread('toe_angle_deg', 2)).toBeUndefined();
});

test('every change says what it was, and travels both ways', () => {
  const feet = record();
  const start = state(feet);
  put(feet, ['toe_angle_deg'], [0], [['51']]);
  feet.addRows([{ horse_id: 'Otto', limb: 'RF' }], 1);
  feet.addOwn({ name: 'share', formula: 'toe_length_mm / foot_width_mm' });
  feet.removeRows([0, 2]);
  expect(feet.undoable).toBe('removing 2 rows');
  const end = state(feet);
  expect([feet.undo(), feet.undo(), feet.undo(), feet.undo(), feet.undo()]).toEqual([
    'removing 2 rows',
    'adding the column share',
    'adding a row',
    'pasting into Toe angle',
    undefined,
  ]);
  expect(state(feet)).toEqual(start);
  expect(feet.redoable).toBe('pasting into Toe angle');
  while (feet.redo()) {
    // To the end.
  }
  expect(state(feet)).toEqual(end);
});

test('a new change lets what was taken back go', () => {
  const feet = record();
  put(feet, ['toe_angle_deg'], [0], [['51']]);
  feet.undo();
  put(feet, ['toe_angle_deg'], [0], [['53']]);
  expect(feet.redo()).toBeUndefined();
});

test('what changes nothing is no change', () => {
  const feet = record();
  expect(put(feet, ['toe_angle_deg'], [0], [['52°']])).toEqual({ changed: 0, unread: 0 });
  feet.removeOwn('nothing');
  feet.addRows([]);
  feet.removeRows([]);
  expect(feet.touched).toBe(false);
});

test('a table handed out is a copy, and another record begins where it ended', () => {
  const feet = record();
  const table = feet.table();
  put(feet, ['toe_angle_deg', 'toe_length_mm'], [0], [['40', 'long']]);
  feet.addOwn({ name: 'share', formula: 'toe_length_mm / foot_width_mm' });
  expect(column(table, 'toe_angle_deg')[0]).toBe(52);
  expect(state(new TableRecord('feet', feet.table()))).toEqual(state(feet));
});

test('whatever is done, undoing leads back to the start and doing again to the end', () => {
  const row = fc.nat(5);
  const text = fc.constantFrom('', '50', '51,5°', '8,5 cm', 'tail', '520', 'LH', '2026-03-10', '__proto__');
  const name = fc.constantFrom('toe_angle_deg', 'toe_length_mm', 'limb', 'date', 'paint', 'shod');
  const action = fc.oneof(
    fc.record({ do: fc.constant('put' as const), name, row, text }),
    fc.record({ do: fc.constant('fill' as const), name, row, text }),
    fc.record({ do: fc.constant('clear' as const), name, row, text }),
    fc.record({ do: fc.constant('add' as const), name, row, text }),
    fc.record({ do: fc.constant('remove' as const), name, row, text }),
    fc.record({ do: fc.constant('undo' as const), name, row, text }),
  );
  fc.assert(
    fc.property(fc.array(action, { maxLength: 12 }), (actions) => {
      const feet = record();
      const start = state(feet);
      for (const { do: what, name, row, text } of actions) {
        const at = Math.min(row, feet.rows - 1);
        if (what === 'add') feet.addRows([{ horse_id: 'Ada' }], Math.min(row, feet.rows));
        else if (what === 'undo') feet.undo();
        else if (at < 0) continue;
        else if (what === 'put') put(feet, [name], [at], [[text]]);
        else if (what === 'fill') feet.fill([name], [at, 0]);
        else if (what === 'clear') feet.clear([name], [at]);
        else feet.removeRows([at]);
      }
      const end = state(feet);
      let steps = 0;
      while (feet.undo()) steps++;
      expect(state(feet)).toEqual(start);
      for (let step = 0; step < steps; step++) feet.redo();
      expect(state(feet)).toEqual(end);
    }),
    { numRuns: 150 },
  );
});
