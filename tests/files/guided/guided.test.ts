import * as sheets from '@e965/xlsx';
import { describe, expect, it } from 'vitest';
import { gridOfText } from '../../../lib/files/guided/cellGrid.ts';
import { fileHeadings, limbInHeading } from '../../../lib/files/guided/fileHeadings.ts';
import type { ColumnUse, ImportPlan } from '../../../lib/files/guided/importPlan.ts';
import { needsGuide } from '../../../lib/files/guided/needsGuide.ts';
import { type PlannedRead, readPlanned } from '../../../lib/files/guided/readPlanned.ts';
import { isPacked, readSpreadsheet } from '../../../lib/files/guided/spreadsheet.ts';
import { headingsKey, promising, suggestPlan } from '../../../lib/files/guided/suggestPlan.ts';
import { readTable } from '../../../lib/files/readTable.ts';
import { toColumn } from '../../../lib/sheet/column.ts';
import { daysFromIso, isoFromDays } from '../../../lib/sheet/days.ts';

const grid = (...lines: string[]) => gridOfText(`${lines.join('\n')}\n`, 'yard.csv');

/** Each use in short: `LF toe_angle_deg cm`, `own`. */
const short = ({ uses }: ImportPlan) =>
  uses.map((use: ColumnUse) =>
    use.kind === 'column' ? [use.limb, use.column, use.unit].filter((part) => part).join(' ') : use.kind,
  );

const cells = ({ columns }: PlannedRead, name: string) => [...toColumn(columns[name]).values];
const days = (...dates: string[]) => dates.map(daysFromIso);

const wide = grid(
  'Yard list spring',
  'Animal,Seen on,LF toe angle,RF toe angle,Near hind toe length,toe length (RH),Remark',
  'Bella,2026-03-09,52,51.5,8.1,8.2,"calm, old"',
  '"__proto__",2026-03-10,,49,,,',
  'Otto,2026-03-10,47,about 50,8.4,,',
);

describe('suggestPlan', () => {
  it('takes a row a horse for four feet, and tells the unit by the size of the numbers', () => {
    const plan = suggestPlan(wide);
    expect(plan.table).toBe('feet');
    expect(plan.headingRow).toBe(1);
    expect(short(plan)).toEqual([
      ...['horse_id', 'date', 'LF toe_angle_deg', 'RF toe_angle_deg', 'LH toe_length_mm cm', 'RH toe_length_mm cm'],
      'own',
    ]);
  });

  it('takes no letters of a limb for words of a column’s name', () => {
    const plan = suggestPlan(grid('Horse,Date,OF angle,OF toe angle,NF inside heel mm', 'Bella,2026-03-09,51,52,48'));
    expect(short(plan)).toEqual(['horse_id', 'date', 'own', 'RF toe_angle_deg', 'LF medial_heel_mm']);
  });

  it.each([
    ['NF', 'OF', 'NH', 'OH'],
    ['LF', 'RF', 'LH', 'RH'],
    ['N/F', 'O/F', 'N/H', 'O/H'],
    ['near-fore', 'off-fore', 'near-hind', 'off-hind'],
    ['FL', 'FR', 'HL', 'HR'],
    ['FL', 'FR', 'BL', 'BR'],
    ['FL', 'FR', 'RL', 'RR'],
    ['VL', 'VR', 'HL', 'HR'],
    ['Vorne links', 'Vorne rechts', 'Hinten links', 'Hinten rechts'],
    ['left front', 'right front', 'left back', 'right back'],
  ])(
    'takes %s, %s, %s, %s for the limbs before, behind and within a heading, above several, and in rows',
    (...said) => {
      const across = ['LF', 'RF', 'LH', 'RH'].map((limb) => `${limb} toe_angle_deg`);
      const wholes = [
        (limb: string) => `${limb} toe angle`,
        (limb: string) => `Toe angle ${limb}`,
        (limb: string) => `toe angle (${limb}) deg`,
        (limb: string) => `${limb} angle`,
      ];
      for (const whole of wholes) {
        const file = grid(`Horse;Date;${said.map(whole).join(';')}`, 'Bella;2026-03-09;52;51;53;54');
        expect(short(suggestPlan(file))).toEqual(['horse_id', 'date', ...across]);
      }
      const above = grid(`;;${said.join(';')}`, 'Horse;Date;Toe;Toe;Toe;Toe', 'Bella;2026-03-09;52;51;53;54');
      expect(short(suggestPlan(above)).slice(2)).toEqual(across);
      const rows = grid('Horse;Date;Which;Angle', ...said.map((limb, i) => `Bella;2026-03-09;${limb};${50 + i}`));
      expect(cells(readPlanned(rows, suggestPlan(rows)), 'limb')).toEqual(['LF', 'RF', 'LH', 'RH']);
    },
  );

  it('takes one word that several columns have for the first that its cells fit, and leaves it where none do', () => {
    const plan = suggestPlan(
      grid(
        'Horse,Date,NF toe,OF toe,NH toe,Frog',
        'Bella,2026-03-09,52,"3 1/4""",8.3,thrush',
        'Otto,,about 51,"3""",8.4,',
        'Max,,50,,,',
      ),
    );
    expect(short(plan).slice(2)).toEqual(['LF toe_angle_deg', 'RF toe_length_mm', 'LH toe_length_mm cm', 'own']);
  });

  it('finds dates and limbs by their cells, the horse by being a name, and angles by most of their words', () => {
    const plan = suggestPlan(
      grid('Wer,Wann,Welcher,Dorsal hoof angle deg,Pulse', 'Bella,9.3.2026,AG,52,40', 'Otto,10.3.2026,near fore,51,38'),
    );
    expect(short(plan)).toEqual(['horse_id', 'date', 'own', 'toe_angle_deg', 'own']);
    const limbs = suggestPlan(
      grid('Wer;Wann;Welcher;Toe angle', 'Bella;9.3.2026;n/f;52', 'Otto;13.3.2026;off fore;51'),
    );
    expect(short(limbs)).toEqual(['horse_id', 'date', 'limb', 'toe_angle_deg']);
  });

  it('takes inches where only inches fit, and a unit in the heading before any guess', () => {
    const inches = suggestPlan(
      grid('horse,date,limb,Toe length', 'Bella,2026-03-09,LF,3.25', 'Bella,2026-03-09,RF,3.3'),
    );
    expect(short(inches)[3]).toBe('toe_length_mm [in_i]');
    const told = suggestPlan(grid('horse,date,limb,Toe length cm', 'Bella,2026-03-09,LF,3.25'));
    expect(short(told)[3]).toBe('toe_length_mm cm');
  });

  it('gives a column of the table to one column of the file only, and leaves what has the wrong unit', () => {
    const plan = suggestPlan(
      grid('horse,date,limb,Toe angle,Hoof angle,Toe length kg', 'Bella,2026-03-09,LF,52,53,80'),
    );
    expect(short(plan)).toEqual(['horse_id', 'date', 'limb', 'toe_angle_deg', 'own', 'own']);
  });

  it('tells horses and visits from feet', () => {
    expect(suggestPlan(grid('Horse,Weight lb,Girth', 'Bella,1100,180')).table).toBe('horses');
    expect(suggestPlan(grid('Horse,Day,Farrier,Work', 'Bella,2026-03-09,Smith,trim')).table).toBe('visits');
  });
});

describe('fileHeadings and limbInHeading', () => {
  it('put the limb that stands above several columns before each', () => {
    const twoRows = grid(',,LF,,Right fore,', 'Horse,Date,Toe angle,Toe length,Toe angle,Toe length');
    expect(fileHeadings(twoRows, 1).slice(2)).toEqual([
      ...['LF Toe angle', 'LF Toe length', 'Right fore Toe angle', 'Right fore Toe length'],
    ]);
  });

  it.each([
    ['LF toe angle', 'LF', 'toe angle'],
    ['toe_angle_deg_RH', 'RH', 'toe_angle_deg'],
    ['left fore: toe length (cm)', 'LF', 'toe length (cm)'],
    ['Toe length [off hind]', 'RH', 'Toe length'],
    ['near fore foot frog width', 'LF', 'frog width'],
    ['NF angle', 'LF', 'angle'],
    ['N/F toe angle', 'LF', 'toe angle'],
    ['near-fore toe length, mm', 'LF', 'toe length, mm'],
    ['Toe angle NF (deg)', 'LF', 'Toe angle (deg)'],
    ['Toe (O.H.) angle', 'RH', 'Toe angle'],
    ['Toe_angle_FL_deg', 'LF', 'Toe_angle deg'],
    ['toeAngleRR', 'RH', 'toe Angle'],
    ['inside heel BR in', 'RH', 'inside heel in'],
    ['HL frog width', 'LH', 'frog width'],
    ['HR Strahlbreite', 'RH', 'Strahlbreite'],
    ['Zehenwinkel VL (°)', 'LF', 'Zehenwinkel (°)'],
    ['Zehenlänge hinten rechts cm', 'RH', 'Zehenlänge cm'],
    ['linker Vorderhuf: Zehenwinkel', 'LF', 'Zehenwinkel'],
    ['OF angle of toe', 'RF', 'angle of toe'],
    ['toe angle OF, mm', 'RF', 'toe angle mm'],
    ['Length of toe OF', 'RF', 'Length of toe'],
  ])('%s', (heading, limb, rest) => {
    expect(limbInHeading(heading)).toEqual({ limb, rest });
  });

  it.each([
    ...['toe angle', 'inside heel', 'LF', '', 'off hind', 'vorn links'],
    ...['angle of toe', 'LENGTH OF TOE', 'heel or toe angle', 'HL (LF)', 'weight lb', 'frog R', '__proto__'],
  ])('%s names no limb besides something else', (heading) => {
    expect(limbInHeading(heading)).toBeUndefined();
  });
});

describe('readPlanned', () => {
  it('makes a row a foot of a row a horse, leaves feet without a reading out, and reports cells by the file’s rows', () => {
    const read = readPlanned(wide, suggestPlan(wide));
    expect(cells(read, 'horse_id')).toEqual(['Bella', 'Bella', 'Bella', 'Bella', '__proto__', 'Otto', 'Otto', 'Otto']);
    expect(cells(read, 'limb')).toEqual(['LF', 'RF', 'LH', 'RH', 'RF', 'LF', 'RF', 'LH']);
    expect(cells(read, 'toe_angle_deg').filter((value) => !Number.isNaN(value))).toEqual([52, 51.5, 49, 47]);
    expect(cells(read, 'toe_length_mm')[2]).toBe(81);
    expect(cells(read, 'Remark')[0]).toBe('calm, old');
    expect(read.problems).toMatchObject([
      { code: 'title-row', row: 1, value: 'Yard list spring' },
      { code: 'not-a-number', row: 5, column: 'toe_angle_deg', value: 'about 50' },
    ]);
    expect(read.entered.get('toe_angle_deg')?.get(6)).toBe('about 50');
  });

  it('reads by what the user corrected: table, unit, order of dates, words for limbs, a date for all rows', () => {
    const file = grid('Pferd;Huf;Zehe;Tag', 'Bella;AG;85;03/04/2026', 'Bella;AD;8,4;04/04/2026', 'Otto;??x;80;x');
    const plan: ImportPlan = {
      ...{ table: 'feet', headingRow: 0, dates: 'dmy', given: [['moment', 'before']] },
      limbs: [
        ['AG', 'LF'],
        ['AD', 'RF'],
      ],
      uses: [
        { kind: 'column', column: 'horse_id' },
        { kind: 'column', column: 'limb' },
        { kind: 'column', column: 'toe_length_mm', unit: 'cm' },
        { kind: 'column', column: 'date' },
      ],
    };
    const read = readPlanned(file, plan);
    expect(cells(read, 'limb')).toEqual(['LF', 'RF', '']);
    expect(read.strangeLimbs).toEqual(['??x']);
    expect(cells(read, 'date').slice(0, 2)).toEqual(days('2026-04-03', '2026-04-04'));
    expect(cells(read, 'moment')).toEqual(['before', 'before', 'before']);
    expect(cells(read, 'toe_length_mm')).toEqual([Number.NaN, 84, Number.NaN]);
    expect(read.problems.map(({ row, value }) => `${row} ${value}`).sort()).toEqual([
      '2 85 cm',
      '4 80 cm',
      '4 ??x',
      '4 x',
    ]);
  });

  it('leaves it open where dates can be read two ways, and reads day numbers from where the user says', () => {
    const open = grid('horse,date,limb,toe angle', 'Bella,03/04/2026,LF,52');
    expect(readPlanned(open, suggestPlan(open)).dates).toBe('undecided');
    const serial = grid('horse,date,limb,toe angle', 'Bella,46090,LF,52', 'Bella,46091.5,LF,52');
    const plan = suggestPlan(serial);
    expect(plan.serial).toBe(1900);
    expect(cells(readPlanned(serial, plan), 'date').map(Number).map(isoFromDays)).toEqual(['2026-03-09', '2026-03-10']);
    const from1904 = readPlanned(serial, { ...plan, serial: 1904 });
    expect(isoFromDays(Number(cells(from1904, 'date')[0]))).toBe('2030-03-10');
    expect(readPlanned(serial, { ...plan, serial: undefined }).problems.map(({ code }) => code)).toContain(
      'serial-date',
    );
  });

  it('reads fractions in the unit that the heading has, as it does whole numbers', () => {
    const inches = grid(
      'Horse,Date,NF toe length in,OF toe length in,NF inside heel (in)',
      'Bella,2026-03-09,3 1/4,3.5,1½',
      'Otto,2026-03-09,"3 3/4""",85 mm,1-1/8',
    );
    const read = readPlanned(inches, suggestPlan(inches));
    expect(read.problems).toEqual([]);
    expect(cells(read, 'toe_length_mm').map((value) => Number(value).toFixed(2))).toEqual([
      ...['82.55', '88.90', '95.25', '85.00'],
    ]);
    expect(Number(cells(read, 'medial_heel_mm')[2]).toFixed(3)).toBe('28.575');
  });

  it('asks about headings that stand twice, as below a row of limbs, where the table could be taken for another', () => {
    const text = ',,NF,,OF,\nHorse,Date done,Toe,Length,Toe,Length\nBramble,2026-03-09,52,3 1/4,51,3.3\n';
    expect(needsGuide(readTable(text))).toBe(true);
    expect(needsGuide(readTable('Horse,Date,Limb,Toe angle\nBramble,2026-03-09,LF,52\n'))).toBe(false);
    expect(short(suggestPlan(gridOfText(text, 'x.csv'))).slice(2)).toEqual([
      ...['LF toe_angle_deg', 'LF foot_length_mm [in_i]', 'RF toe_angle_deg', 'RF foot_length_mm [in_i]'],
    ]);
  });

  it('names the file’s rows where two rows are of one foot', () => {
    const twice = grid(
      '',
      'horse,date,limb,repeat,toe angle',
      '',
      'Bella,2026-03-09,LF,1,52',
      'Bella,2026-03-09,LF,1,53',
    );
    const [problem] = readPlanned(twice, suggestPlan(twice)).problems;
    expect(problem).toMatchObject({ code: 'same-row-twice', row: 5 });
    expect(problem.expected).toContain('row 4 has the same');
  });

  it('keeps text that looks like a program’s as text, and quotes, tabs and line breaks within cells', () => {
    const names = ['=1+1', '<script>alert(1)</script>', 'a\tb', 'line\nbreak', '"quoted"', 'constructor', '‮txet', '🐴'];
    const csv = [
      'Horse,Date,Limb,Toe angle,Note',
      ...names.map((name) => `"${name.replaceAll('"', '""')}",2026-03-09,LF,52,"${name.replaceAll('"', '""')}"`),
    ];
    const file = gridOfText(csv.join('\n'), 'x.csv');
    const read = readPlanned(file, suggestPlan(file));
    expect(cells(read, 'horse_id')).toEqual(names);
    expect(cells(read, 'Note')).toEqual(names);
  });

  it('tells files with the same headings by one key', () => {
    const again = grid(
      'Yard list autumn',
      'ANIMAL,Seen  on,lf toe angle,RF toe angle,Near hind toe length,toe length (RH),remark',
    );
    expect(headingsKey(again, { ...suggestPlan(wide), headingRow: 1 })).toBe(headingsKey(wide, suggestPlan(wide)));
  });
});

/** A workbook as another program writes it. */
function workbook(bookType: 'xlsx' | 'ods', date1904 = false): Uint8Array {
  const day = (iso: string) => new Date(`${iso}T00:00:00Z`);
  const sheet = sheets.utils.aoa_to_sheet(
    [
      ['Horse', 'Date', 'Limb', 'Toe angle', 'Shod', 'Note'],
      ['Bella', day('2026-03-09'), 'near fore', 52.300000000000004, true, '=1+1'],
      ['__proto__', day('1999-12-31'), 'RF', '51°', false, 'a\tb "c"\nd'],
      [],
      ['<b>Otter</b>', null, 'LH', 49, null, '007'],
    ],
    { cellDates: true, UTC: true },
  );
  const book = sheets.utils.book_new();
  sheets.utils.book_append_sheet(book, sheets.utils.aoa_to_sheet([]), 'Empty');
  sheets.utils.book_append_sheet(book, sheet, 'March');
  book.Workbook = { WBProps: { date1904 } };
  return new Uint8Array(sheets.write(book, { type: 'array', bookType }));
}

describe('readSpreadsheet', () => {
  it.each([
    ['xlsx', false, 1900],
    ['xlsx', true, 1904],
    ['ods', false, 1900],
  ] as const)('reads %s whose days count from %s as they were typed', async (type, date1904, serial) => {
    const bytes = workbook(type, date1904);
    expect(isPacked(bytes)).toBe(true);
    const [file, ...others] = await readSpreadsheet(bytes, 'yard');
    expect(others).toEqual([]);
    expect([file.sheet, file.serial]).toEqual(['March', serial]);
    const read = readPlanned(file, suggestPlan(file));
    expect(cells(read, 'horse_id')).toEqual(['Bella', '__proto__', '<b>Otter</b>']);
    expect(cells(read, 'date')).toEqual([...days('2026-03-09', '1999-12-31'), Number.NaN]);
    expect(cells(read, 'toe_angle_deg')).toEqual([52.300000000000004, 51, 49]);
    expect(cells(read, 'shod')).toEqual([1, 0, Number.NaN]);
    expect(cells(read, 'Note')).toEqual(['=1+1', 'a\tb "c"\nd', '007']);
    expect(read.problems.map(({ row, code }) => [row, code])).toEqual([[5, 'no-key']]);
  });

  it('refuses thousands of columns in words, as a text file of them is not matched by hand', async () => {
    const row = ['Horse', 'Date', ...Array.from({ length: 1200 }, (_, i) => `Toe angle ${i}`)];
    const book = sheets.utils.book_new();
    sheets.utils.book_append_sheet(book, sheets.utils.aoa_to_sheet([row, row]), 'Wide');
    const bytes = new Uint8Array(sheets.write(book, { type: 'array', bookType: 'xlsx' }));
    await expect(readSpreadsheet(bytes, 'yard.xlsx')).rejects.toThrow(
      'The sheet Wide of yard.xlsx has more than 1000 columns',
    );
    expect(promising(grid(row.join(), row.join()))).toBe(false);
    expect(promising(grid('Animal,Seen,LF toe angle', 'Bella,2026-03-09,52'))).toBe(true);
    expect(promising(grid('Dear farrier,', 'thank you.'))).toBe(false);
  });

  it.each([
    ['nothing', new Uint8Array(0)],
    ['text', new TextEncoder().encode('horse,date')],
    ['half a workbook', workbook('xlsx').subarray(0, 700)],
    ['half a table of the other kind', workbook('ods').subarray(0, 400)],
  ])('refuses %s in words', async (_, bytes) => {
    await expect(readSpreadsheet(bytes, 'yard.xlsx')).rejects.toThrow('yard.xlsx could not be read as a spreadsheet');
  });
});
