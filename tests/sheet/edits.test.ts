import { describe, expect, test } from 'vitest';
import { type Edit, History, inverse, inWords } from '../../lib/sheet/edits.ts';
import { Sheet } from '../../lib/sheet/sheet.ts';

function feet(): Sheet {
  return Sheet.from({
    toe_angle_deg: { unit: 'deg', values: Float64Array.from({ length: 20 }, (_, row) => 40 + row) },
    date: { kind: 'date', values: new Float64Array(20).fill(20454) },
    shod: { kind: 'boolean', values: new Float64Array(20) },
    horse: { values: Array.from({ length: 20 }, () => 'Ada') },
  });
}

const last = (sheet: Sheet) => inWords(sheet.done.at(-1)!);
const contents = (sheet: Sheet) =>
  sheet.names.map((name) => [name, [...sheet.column(name).values], sheet.describe(name).formula]);

describe('an edit says what it was', () => {
  test.each<[string, (sheet: Sheet) => unknown]>([
    ['set toe_angle_deg of row 12 from 52 to 50', (sheet) => sheet.set('toe_angle_deg', 12, 50)],
    ['set toe_angle_deg of row 0 from 40 to missing', (sheet) => sheet.set('toe_angle_deg', 0, null)],
    ['set date of row 3 from 2026-01-01 to 2026-01-31', (sheet) => sheet.set('date', 3, 20484)],
    ['set shod of row 3 from no to yes', (sheet) => sheet.set('shod', 3, 1)],
    ['set horse of row 3 from Ada to Bo', (sheet) => sheet.set('horse', 3, 'Bo')],
    ['fill horse of rows 3 to 5 with Bo', (sheet) => sheet.fill('horse', [3, 4, 5], 'Bo')],
    ['fill horse of 3 rows (1, 5, 9) with missing', (sheet) => sheet.fill('horse', [1, 5, 9], null)],
    ['fill horse of 5 rows (1, 3, 5, 7, 9) with Bo', (sheet) => sheet.fill('horse', [1, 3, 5, 7, 9], 'Bo')],
    ['fill horse of 10 rows with Bo', (sheet) => sheet.fill('horse', [0, 2, 4, 6, 8, 10, 12, 14, 16, 18], 'Bo')],
    [
      'paste horse, toe_angle_deg of rows 4 to 5',
      (sheet) =>
        sheet.paste({
          row: 4,
          columns: ['horse', 'toe_angle_deg'],
          cells: [
            ['Bo', 1],
            ['Cy', 2],
          ],
        }),
    ],
    ['add row 20', (sheet) => sheet.addRows([{ horse: 'Bo' }])],
    ['add rows 0 to 1', (sheet) => sheet.addRows([{}, {}], 0)],
    ['remove rows 2 to 3', (sheet) => sheet.removeRows([3, 2])],
    ['add column steep as toe_angle_deg > 50', (sheet) => sheet.add({ name: 'steep', formula: 'toe_angle_deg > 50' })],
    [
      'add 2 columns a as 1, b as 2',
      (sheet) =>
        sheet.addAll([
          { name: 'a', formula: '1' },
          { name: 'b', formula: '2' },
        ]),
    ],
    ['remove column horse', (sheet) => sheet.remove('horse')],
    ['rename horse to name', (sheet) => sheet.rename('horse', 'name')],
    ['change x from 1 to 2', (sheet) => sheet.add({ name: 'x', formula: '1' }).replace({ name: 'x', formula: '2' })],
  ])('%s', (words, edit) => {
    const sheet = feet();
    const before = contents(sheet);
    edit(sheet);
    expect(last(sheet)).toBe(words);
    const after = contents(sheet);
    expect(after).not.toEqual(before);

    const edits = sheet.done.length;
    while (sheet.undo());
    expect(contents(sheet)).toEqual(before);
    while (sheet.redo());
    expect(contents(sheet)).toEqual(after);
    expect(sheet.done).toHaveLength(edits);
  });
});

test('an edit of nothing says so', () => {
  expect(inWords({ kind: 'cells', how: 'fill', cells: [] })).toBe('fill nothing');
  expect(inWords({ kind: 'rows', how: 'remove', rows: [], columns: {} })).toBe('remove 0 rows');
});

describe('undo and redo', () => {
  test('have no limit, and give the edit that they took back or did again', () => {
    const sheet = feet();
    for (let i = 0; i < 5000; i++) sheet.set('toe_angle_deg', i % 20, 1000 + i);
    expect(sheet.done).toHaveLength(5000);
    expect(inWords(sheet.undo()!)).toBe('set toe_angle_deg of row 19 from 5979 to 5999');
    while (sheet.undo());
    expect(sheet.column('toe_angle_deg').values[19]).toBe(59);
    expect(sheet.undone).toHaveLength(5000);
    expect(inWords(sheet.redo()!)).toBe('set toe_angle_deg of row 0 from 40 to 1000');
  });

  test('after a new edit what was taken back can’t be done again', () => {
    const sheet = feet().set('toe_angle_deg', 0, 1).set('toe_angle_deg', 0, 2);
    sheet.undo();
    sheet.set('toe_angle_deg', 0, 3);
    expect(sheet.redo()).toBeUndefined();
    expect(sheet.column('toe_angle_deg').values[0]).toBe(3);
  });

  test('with nothing to take back nothing happens', () => {
    expect([feet().undo(), feet().redo()]).toEqual([undefined, undefined]);
  });

  test('what changes nothing is no edit', () => {
    const sheet = feet().set('toe_angle_deg', 0, 40).fill('horse', [0, 1], 'Ada').addRows([]).removeRows([]);
    sheet.paste({ row: 0, columns: ['horse'], cells: [['Ada']] }).rename('horse', 'horse');
    expect(sheet.done).toEqual([]);
  });

  test('a pasted block is one edit, and none of it is taken where one cell does not fit', () => {
    const sheet = feet();
    const columns = ['toe_angle_deg', 'horse'];
    expect(() =>
      sheet.paste({
        row: 0,
        columns,
        cells: [
          [1, 'Bo'],
          [2, 3],
        ],
      }),
    ).toThrow('horse: text');
    expect(() =>
      sheet.paste({
        row: 19,
        columns,
        cells: [
          [1, 'Bo'],
          [2, 'Cy'],
        ],
      }),
    ).toThrow(RangeError);
    expect(() => sheet.paste({ row: 0, columns, cells: [[1, 'Bo'], [2]] })).toThrow('A pasted row has 1 cells where 2');
    expect(sheet.done).toEqual([]);
    sheet.paste({
      row: 0,
      columns,
      cells: [
        [1, 'Bo'],
        [2, 'Cy'],
      ],
    });
    expect(sheet.done).toHaveLength(1);
    sheet.undo();
    expect([...sheet.column('toe_angle_deg').values].slice(0, 2)).toEqual([40, 41]);
  });

  test('a row that is filled twice in one edit is undone to what it was', () => {
    const sheet = feet().fill('toe_angle_deg', [3, 3], 1);
    sheet.undo();
    expect(sheet.column('toe_angle_deg').values[3]).toBe(43);
  });

  test('history begins where one says', () => {
    const sheet = feet().add({ name: 'steep', formula: 'toe_angle_deg > 50' }).beginHistory();
    expect(sheet.undo()).toBeUndefined();
    expect(sheet.names).toContain('steep');
  });
});

test('edits are plain data: a copy of them does the same on another sheet', () => {
  const first = feet();
  first
    .set('toe_angle_deg', 3, 1)
    .fill('horse', [1, 2], 'Bo')
    .addRows([{ horse: 'Cy', toe_angle_deg: 5 }], 2)
    .removeRows([0, 7])
    .add({ name: 'x', formula: 'mean(toe_angle_deg, horse)' })
    .replace({ name: 'x', formula: 'max(toe_angle_deg, horse)' })
    .rename('x', 'top')
    .remove('shod');
  const second = feet();
  for (const edit of structuredClone(first.done)) second.replay(edit);
  expect(contents(second)).toEqual(contents(first));
  while (second.undo());
  expect(contents(second)).toEqual(contents(feet()));
});

test('the inverse of an inverse is the edit', () => {
  const sheet = feet().set('toe_angle_deg', 3, 1).addRows([{}]).add({ name: 'x', formula: '1' });
  sheet.replace({ name: 'x', formula: '2' }).rename('x', 'y').remove('y');
  for (const edit of sheet.done) expect(inverse(inverse(edit))).toEqual(edit);
});

test('History keeps what was done apart from what was taken back', () => {
  const history = new History();
  const [a, b]: Edit[] = ['a', 'b'].map((before) => ({ kind: 'name', before, after: 'c' }));
  history.record(a);
  history.record(b);
  expect(history.back()).toBe(b);
  expect([history.done, history.undone]).toEqual([[a], [b]]);
  expect(history.forth()).toBe(b);
  expect(history.forth()).toBeUndefined();
  history.back();
  history.record(a);
  expect([history.done, history.undone]).toEqual([[a, a], []]);
});
