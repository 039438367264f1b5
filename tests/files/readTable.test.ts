import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { problemSentence } from '../../lib/files/problems.ts';
import { type ReadOptions, readTable } from '../../lib/files/readTable.ts';
import { titleSentences, withoutTitles } from '../../lib/files/titleRows.ts';
import { type Column, type Columns, TextColumn } from '../../lib/sheet/column.ts';
import { isoFromDays } from '../../lib/sheet/days.ts';

const fixture = (name: string, options: ReadOptions = {}) =>
  readTable(readFileSync(new URL(`../fixtures/files/${name}`, import.meta.url)), { file: name, ...options });

/** Columns as plain lists: dates as ISO dates, `null` for missing. */
function lists(columns: Columns): Record<string, unknown[]> {
  return Object.fromEntries(
    Object.entries(columns).map(([name, input]) => {
      const column = input as Column;
      if (column instanceof TextColumn) return [name, column.values.map((text) => (text === '' ? null : text))];
      const shown = (value: number) => (column.kind === 'date' ? isoFromDays(value) : value);
      return [name, Array.from(column.values, (value) => (Number.isNaN(value) ? null : shown(value)))];
    }),
  );
}

const codes = ({ problems }: ReturnType<typeof readTable>) => problems.map(({ code }) => code);
const places = ({ problems }: ReturnType<typeof readTable>) =>
  problems.map(({ code, row, column, value }) => [code, row, column, value]);

describe('readTable, files as people save them', () => {
  it('reads semicolons, decimal commas, a byte order mark, and dates with points', () => {
    const read = fixture('semicolons.csv');
    expect(read).toMatchObject({ schema: 'feet', delimiter: ';', encoding: 'utf-8', dates: 'dmy' });
    expect(lists(read.columns)).toEqual({
      horse_id: ['Bella', 'Bella', 'Bella', 'Max'],
      date: ['2026-03-13', '2026-03-13', '2026-03-13', '2026-04-02'],
      limb: [null, 'LF', 'RF', 'LH'],
      moment: ['before', 'before', 'before', 'after'],
      toe_angle_deg: [52.5, 52.5, 51, null],
      toe_length_mm: [85, 85, null, 88],
      'Heel ht (cm)': [4.1, 4.1, 3.9, null],
      Remarks: ['fest; ruhig', 'fest; ruhig', null, 'ging\r\nlahm'],
    });
    expect(read.columns['Heel ht (cm)'].unit).toBe('cm');
    expect(places(read)).toEqual([
      ['not-a-word', 2, 'limb', 'AG'],
      ['beyond-anatomy', 4, 'toe_length_mm', '1.050,5'],
    ]);
    expect(read.headings[5]).toEqual({ column: 'toe_length_mm', heading: 'Toe length (cm)', unit: 'cm' });
  });

  it.each(['utf16le.txt', 'utf16be.txt', 'utf16-without-mark.txt'])('reads %s', (name) => {
    const read = fixture(name);
    expect(read).toMatchObject({ schema: 'feet', delimiter: '\t', dates: 'iso', problems: [] });
    expect(lists(read.columns)).toEqual({
      horse_id: ['Éclair', 'Éclair'],
      date: ['2026-03-09', '2026-03-09'],
      limb: ['LF', 'RF'],
      moment: ['before', 'before'],
      toe_angle_deg: [50, 51.5],
      toe_length_mm: [82.55, 88.9],
      observer: ['Anaïs', 'Anaïs'],
    });
  });

  it('reads windows-1252 and says so', () => {
    const read = fixture('windows-1252.csv');
    expect(lists(read.columns)).toMatchObject({
      horse_id: ['Céline'],
      limb: ['RH'],
      toe_angle_deg: [54],
      observer: ['René'],
    });
    expect(places(read)).toEqual([['encoding', 0, '', '']]);
  });

  it('reads inches with fractions, and other units cell by cell', () => {
    const read = fixture('inches.csv');
    expect(read.dates).toBe('mdy');
    expect(lists(read.columns)).toEqual({
      horse_id: ['Duke', 'Duke', 'Duke'],
      date: ['2026-03-25', '2026-03-25', '2026-04-02'],
      limb: ['LF', 'RF', 'LH'],
      toe_length_mm: [82.55, 82.55, 79.375],
      heel_length_mm: [38.1, 38.1, 38],
      toe_angle_deg: [52, 51, null],
      Girth: ['75 in', null, null],
    });
    expect(read.problems).toEqual([]);
  });

  it('reads mixed line ends, empty lines and ragged rows, and names what did not fit by the row a spreadsheet shows', () => {
    const read = fixture('ragged.csv');
    expect(lists(read.columns)).toEqual({
      horse_id: ['Bella', 'Bella', 'Max', 'Max'],
      date: ['2026-03-09', '2026-03-09', '2026-03-09', '2026-03-09'],
      limb: ['LF', 'RF', 'LF', 'RF'],
      toe_angle_deg: [52, 51, 50, 50],
      toe_length_mm: [85, null, 84, null],
    });
    expect(places(read)).toEqual([
      ['short-rows', 3, '', ''],
      ['too-many-cells', 6, '', 'loose shoe'],
      ['too-many-cells', 6, '', 'again'],
      ['broken-quotes', 7, 'toe_length_mm', '"84'],
      ['not-a-number', 7, 'toe_length_mm', '"84'],
    ]);
  });
});

describe('readTable, dates', () => {
  it('leaves dates missing whose order the column leaves open, and asks once', () => {
    const read = fixture('open-dates.csv');
    expect(read.dates).toBe('undecided');
    expect(lists(read.columns).date).toEqual([null, null, '2026-07-07', null]);
    expect(read.problems.map(problemSentence)).toEqual([
      'open-dates.csv, row 2, date: “03/04/2026”. Expected dates whose order of day and month is clear; 2 dates here could be either. Say the order with --dates dmy or --dates mdy (the page asks), or write year-month-day.',
      'open-dates.csv, row 5, date: Expected a date. Fill it in, or take the row out if it is a total or a heading; until then it is matched with no other row.',
    ]);
    expect([...read.entered.get('date')!]).toEqual([
      [0, '03/04/2026'],
      [1, '05/06/2026'],
    ]);
  });

  it('takes the order it is told', () => {
    const dayFirst = fixture('open-dates.csv', { dates: 'dmy' });
    expect(dayFirst).toMatchObject({ dates: 'dmy', problems: [{ code: 'no-key', row: 5 }] });
    expect(lists(dayFirst.columns).date).toEqual(['2026-04-03', '2026-06-05', '2026-07-07', null]);
    const monthFirst = fixture('open-dates.csv', { dates: 'mdy' });
    expect(lists(monthFirst.columns).date).toEqual(['2026-03-04', '2026-05-06', '2026-07-07', null]);
  });

  it('reads what is certain in a column that contradicts itself, and reports each date that is not', () => {
    const read = fixture('both-orders.csv');
    expect(read.dates).toBe('undecided');
    expect(lists(read.columns).date).toEqual(['2026-03-25', '2026-03-25', null]);
    expect(places(read)).toEqual([['date-order', 4, 'date', '04/05/2026']]);
  });

  it('reports what the stated order can’t be', () => {
    const read = fixture('both-orders.csv', { dates: 'dmy' });
    expect(lists(read.columns).date).toEqual(['2026-03-25', null, '2026-05-04']);
    expect(read.problems[0]).toMatchObject({ code: 'date-order', row: 3, expected: 'day before month' });
  });

  it('never takes a spreadsheet’s day number for a date', () => {
    const read = fixture('day-numbers.csv');
    expect(lists(read.columns).date).toEqual([null, '2026-03-09']);
    expect(places(read)).toEqual([['serial-date', 2, 'date', '46090']]);
  });

  it('reads two digits of a year as 20yy, save where they may be either century', () => {
    const read = readTable('horse,date,limb,toe angle\nA,25/3/26,LF,50\nB,25/3/98,LF,50\nC,2/3/0206,LF,50\n');
    expect(lists(read.columns).date).toEqual(['2026-03-25', null, null]);
    expect(places(read)).toEqual([
      ['two-digit-year', 3, 'date', '25/3/98'],
      ['unlikely-year', 4, 'date', '2/3/0206'],
    ]);
  });
});

describe('readTable, cells', () => {
  it('keeps the text of every cell it could not use, beside the problem', () => {
    const read = readTable(
      'horse,date,limb,moment,shod,toe angle,toe length\nA,2026-03-09,third,later,perhaps,520,5 kg\n',
      {
        file: 'feet.csv',
      },
    );
    for (const column of ['limb', 'moment', 'shod', 'toe_angle_deg', 'toe_length_mm'])
      expect(lists(read.columns)[column]).toEqual([null]);
    expect(read.problems.map(problemSentence)).toEqual([
      'feet.csv, row 2, limb: “third”. Expected one of LF, RF, LH, RH. Write one of these words; the cell was left out.',
      'feet.csv, row 2, moment: “later”. Expected one of before, after, between. Write one of these words; the cell was left out.',
      'feet.csv, row 2, shod: “perhaps”. Expected one of yes, no. Write one of these words; the cell was left out.',
      'feet.csv, row 2, toe_angle_deg: “520”. Expected 15 to 110 deg. Check the cell and its unit; it was kept as entered and left out of computation.',
      'feet.csv, row 2, toe_length_mm: “5 kg”. Expected a length in mm, or with its unit, such as 85, 8.5 cm or 3 1/4 in. Correct the cell or its unit; it was left out.',
    ]);
    expect(Object.fromEntries([...read.entered].map(([column, rows]) => [column, rows.get(0)]))).toEqual({
      ...{ limb: 'third', moment: 'later', shod: 'perhaps', toe_angle_deg: '520', toe_length_mm: '5 kg' },
    });
  });

  it('takes words for yes and no, moments, limbs and builds, and keeps other words where a column is open', () => {
    const read = readTable(
      'horse,date,limb,moment,shod,view\nA,2026-03-09,off hind,Post-trim,barefoot,Clear\nA,2026-03-09,n/f,pre,Y,through a fence\n',
    );
    expect(lists(read.columns)).toMatchObject({
      limb: ['RH', 'LF'],
      moment: ['after', 'before'],
      shod: [0, 1],
      view_quality: ['good', 'through a fence'],
    });
    expect(read.columns.shod.kind).toBe('boolean');
    expect(read.problems).toEqual([]);
  });

  it('is missing, without a problem, where a cell says so', () => {
    const read = readTable('horse,date,limb,moment,shod,toe angle\nA,n/a,?,-,unknown,not measured\nB,,,,,\n');
    for (const column of ['date', 'limb', 'moment', 'shod', 'toe_angle_deg'])
      expect(lists(read.columns)[column]).toEqual([null, null]);
    expect(read.problems.filter(({ code }) => code !== 'no-key')).toEqual([]);
  });

  it('names a row that lacks its horse, date or limb, such as a total below the table', () => {
    const read = readTable(
      'horse,date,limb,toe angle\nA,2026-03-09,LF,50\n,2026-03-09,RF,51\n\nMean,,,50.5\nA,then,LH,52\n',
    );
    expect(places(read)).toEqual([
      ['no-key', 3, 'horse_id', ''],
      ['no-key', 5, 'date', ''],
      ['no-key', 5, 'limb', ''],
      ['not-a-date', 6, 'date', 'then'],
    ]);
    expect(lists(read.columns).toe_angle_deg).toEqual([50, 51, 50.5, 52]);
  });

  it('applies a heading’s unit to the cells that name none, exactly', () => {
    const read = readTable(
      'horse,date,limb,toe length (cm)\nA,2026-03-09,LF,1.1\nA,2026-03-09,RF,8.7\nA,2026-03-09,LH,3 in\nA,2026-03-09,RH,87\n',
    );
    expect(lists(read.columns).toe_length_mm).toEqual([null, 87, 76.2, null]);
    expect(places(read)).toEqual([
      ['beyond-anatomy', 2, 'toe_length_mm', '1.1'],
      ['beyond-anatomy', 5, 'toe_length_mm', '87'],
    ]);
  });

  it('reports rows that have the same keys, and keeps both', () => {
    const read = readTable(
      'horse,date,limb,moment,repeat,toe angle\nA,2026-03-09,LF,after,1,50\nA,2026-03-09,LF,after,2,51\n\nA,2026-03-09,LF,after,1,52\nA,2026-03-09,LF,after,,53\nA,2026-03-09,LF,after,,54\n',
    );
    expect(lists(read.columns).toe_angle_deg).toEqual([50, 51, 52, 53, 54]);
    expect(read.problems).toHaveLength(1);
    expect(read.problems[0]).toMatchObject({
      ...{ code: 'same-row-twice', row: 5, value: 'A, 2026-03-09, LF, after, 1' },
      expected: 'one row for each horse_id, date, limb, moment, repeat; row 2 has the same',
    });
  });
});

describe('readTable, headings', () => {
  it('takes columns in any order and keeps extra ones under their own heading', () => {
    const read = readTable('  Weather ,toe angle,foot,date,horse,007\nrain,50,LF,2026-03-09,A,7\n');
    expect(Object.keys(read.columns)).toEqual(['Weather', 'toe_angle_deg', 'limb', 'date', 'horse_id', '007']);
  });

  it('keeps the second of two equal headings as name_2 and says so', () => {
    const read = readTable('horse,date,limb,toe angle,toe angle,a,a,a_2\nA,2026-03-09,LF,50,51,1,2,3\n');
    expect(lists(read.columns)).toMatchObject({
      toe_angle_deg: [50],
      toe_angle_deg_2: [51],
      a: [1],
      a_3: [2],
      a_2: [3],
    });
    expect(places(read)).toEqual([
      ['duplicate-heading', 1, 'toe_angle_deg_2', 'toe angle'],
      ['duplicate-heading', 1, 'a_3', 'a'],
    ]);
  });

  it('takes a column’s own name before other words for it', () => {
    const read = readTable('name,horse_id,date,limb,Hoof angle,toe_angle_deg\nBella,7,2026-03-09,LF,49,50\n');
    expect(lists(read.columns)).toMatchObject({
      name: ['Bella'],
      horse_id: ['7'],
      'Hoof angle': [49],
      toe_angle_deg: [50],
    });
    expect(codes(read)).toEqual(['same-meaning']);
  });

  it('keeps a column whose heading has a unit it can’t have, and says so', () => {
    const read = readTable('horse,date,limb,toe angle (mm)\nA,2026-03-09,LF,50\n');
    expect(lists(read.columns)['toe angle (mm)']).toEqual([50]);
    expect(codes(read)).toEqual(['heading-unit']);
  });

  it('names a column without a heading where it holds anything, and says so', () => {
    const read = readTable('a,,\n1,2,\n');
    expect(lists(read.columns)).toEqual({ a: [1], column_2: [2] });
    expect(places(read)).toEqual([['no-heading', 1, 'column_2', '']]);
  });

  it('says which required columns are missing', () => {
    const read = readTable('toe angle,heel angle\n50,48\n', { schema: 'feet' });
    expect(places(read)).toEqual([
      ['missing-column', 1, 'horse_id', ''],
      ['missing-column', 1, 'date', ''],
      ['missing-column', 1, 'limb', ''],
    ]);
  });

  it('takes any heading for a name, however hostile', () => {
    const read = readTable(`__proto__,constructor,<script>alert(1)</script>,'=1+1\n1,x,2,3\n`);
    expect(Object.keys(read.columns)).toEqual(['__proto__', 'constructor', '<script>alert(1)</script>', '=1+1']);
    expect([...Object.values(read.columns)[0].values]).toEqual([1]);
  });
});

describe('readTable, tables it does not know', () => {
  it('reads numbers, yes and no, ISO dates, and everything else as text', () => {
    const read = readTable('n,yes,day,id,t\n1.50,TRUE,2026-03-09,007,x\n-2e3,,,008,\nNA,FALSE,2026-03-10,9,12\n');
    expect(read.schema).toBeUndefined();
    expect(lists(read.columns)).toEqual({
      n: [1.5, -2000, null],
      yes: [1, null, 0],
      day: ['2026-03-09', null, '2026-03-10'],
      id: ['007', '008', '9'],
      t: ['x', null, '12'],
    });
  });

  it('finds late in the file that a column is text after all, and loses nothing', () => {
    const rows = Array.from({ length: 500 }, (_, row) => `${row},${row / 4}`);
    rows[400] = '"400","see note, 5"';
    rows[450] = 'A450,007';
    const read = readTable(`a,b\n${rows.join('\n')}`);
    expect(read.columns.a.values[450]).toBe('A450');
    expect(read.columns.b.values[399]).toBe('99.75');
    expect(read.columns.b.values[400]).toBe('see note, 5');
    expect(read.columns.b.values[450]).toBe('007');
    expect(read.problems).toEqual([]);
  });

  it('reads numbers in a file that quotes every cell', () => {
    expect(lists(readTable('"a","b"\n"1","x"\n"2","y"\n').columns)).toEqual({ a: [1, 2], b: ['x', 'y'] });
  });

  it('reads decimal commas where semicolons part the cells', () => {
    expect(lists(readTable('a;b\n1,5;x\n2,25;y\n').columns)).toEqual({ a: [1.5, 2.25], b: ['x', 'y'] });
  });

  it('believes a sep= line', () => {
    const read = readTable('sep=;\na,b;c\n1;2\n');
    expect(lists(read.columns)).toEqual({ 'a,b': [1], c: [2] });
  });

  it('reads a table of headings alone, and says what is wrong with an empty file', () => {
    expect(lists(readTable('a,b\n').columns)).toEqual({ a: [], b: [] });
    for (const source of ['', '\n\n', new Uint8Array(0), '\ufeff']) {
      const read = readTable(source, { file: 'empty.csv' });
      expect(Object.keys(read.columns)).toEqual([]);
      expect(read.problems).toMatchObject([{ code: 'empty-file', file: 'empty.csv', row: 0 }]);
    }
  });

  it('reads numbers to the last bit, however long', () => {
    const numbers = ['0.1', '123456789', '1234567890', '0.30000000000000004', '-0', '5e-324', '1.7976931348623157e308'];
    const read = readTable(`a\n${numbers.join('\n')}`);
    expect([...read.columns.a.values]).toEqual(numbers.map(Number));
  });

  it('does not change the bytes it is given', () => {
    const bytes = readFileSync(new URL('../fixtures/files/ragged.csv', import.meta.url));
    const copy = Uint8Array.from(bytes);
    readTable(bytes);
    expect(Uint8Array.from(bytes)).toEqual(copy);
  });
});

describe('readTable, title lines', () => {
  it('finds the headings below a title, passes over the title and says so', () => {
    const title = 'Hoof measurements, spring 2026';
    for (const source of [
      `${title};;;\n;;;\nhorse;date;foot;toe angle\nBella;2026-03-09;LF;52,5\n`,
      `"${title}"\n\nhorse,date,foot,toe angle\nBella,2026-03-09,LF,52.5\n`,
    ]) {
      const read = readTable(source, { file: 'feet.csv' });
      expect(lists(read.columns)).toEqual({
        horse_id: ['Bella'],
        date: ['2026-03-09'],
        limb: ['LF'],
        toe_angle_deg: [52.5],
      });
      expect(places(read)).toEqual([['title-row', 1, '', title]]);
    }
  });

  it('reads limbs, moments, months, yes and no in German too', () => {
    const { columns, problems } = readTable(
      'horse;date;limb;moment;shod;toe angle\nFjalar;9. März 2026;vorn links;vor;barhuf;51,5\nFjalar;20. Okt. 2026;HR;nachher;beschlagen;52\n',
    );
    expect(problems).toEqual([]);
    expect(lists(columns)).toMatchObject({
      date: ['2026-03-09', '2026-10-20'],
      limb: ['LF', 'RH'],
      moment: ['before', 'after'],
      shod: [0, 1],
      toe_angle_deg: [51.5, 52],
    });
  });

  it('says in one sentence what stood above the headings, apart from what could not be used', () => {
    const { problems } = readTable(
      '"Yard list 2025",,,\n,by Anna,,\n\nhorse,date,foot,toe angle\nBella,2026-03-09,LF,520\n',
      { file: 'yard.csv' },
    );
    expect(titleSentences(problems)).toEqual([
      '2 rows above the headings of yard.csv were left out: “Yard list 2025”, “by Anna”.',
    ]);
    expect(withoutTitles(problems).map(({ code, row }) => [code, row])).toEqual([['beyond-anatomy', 5]]);
    expect(titleSentences(withoutTitles(problems))).toEqual([]);
  });

  it('counts rows on from below the title', () => {
    const read = readTable('Spring\n\nhorse,date,foot,toe angle\nBella,2026-03-09,LF,520\n');
    expect(places(read)).toEqual([
      ['title-row', 1, '', 'Spring'],
      ['beyond-anatomy', 4, 'toe_angle_deg', '520'],
    ]);
  });

  it('takes the first row of a table that it does not know for its headings', () => {
    expect(Object.keys(readTable('Spring,\na,b\n1,2\n').columns)).toEqual(['Spring', 'column_2']);
  });
});
