import { describe, expect, test, vi } from 'vitest';
import { cellAt } from '../../lib/sheet/cell.ts';
import { FormulaError } from '../../lib/sheet/formula/syntax.ts';
import type { Relation } from '../../lib/sheet/relation.ts';
import { Sheet } from '../../lib/sheet/sheet.ts';

const other: Relation = {
  name: 'other',
  words: 'the other’s',
  match: ['horse'],
  swap: { limb: { LF: 'RF', RF: 'LF' } },
};

function feet() {
  return Sheet.from(
    {
      horse: { values: ['Ada', 'Ada', 'Bo', 'Bo'] },
      limb: { values: ['LF', 'RF', 'LF', 'RF'] },
      toe: { unit: 'deg', title: 'Toe angle', values: Float64Array.of(50, 52, 48, Number.NaN) },
      heel: { unit: 'deg', values: Float64Array.of(47, 50, 41, 44), error: Float64Array.of(1, 1, 1, 1) },
      width: { unit: 'mm', values: Float64Array.of(120, 122, 131, 130), error: Float64Array.of(2, 2, 2, 2) },
      date: { kind: 'date', values: Float64Array.of(20000, 20000, 20042, 20042) },
      shod: { kind: 'boolean', values: Float64Array.of(1, 1, 0, Number.NaN) },
    } as const,
    ['horse', 'limb'],
    { relations: [other] },
  );
}

const numbers = (sheet: Sheet, name: string) => [...(sheet.column(name).values as Float64Array)];
const thrown = (work: () => unknown): FormulaError => {
  try {
    work();
  } catch (error) {
    return error as FormulaError;
  }
  throw new Error('nothing was thrown');
};

describe('Sheet.from', () => {
  test('hands back the columns that came in, with unit, kind and error', () => {
    const sheet = feet();
    expect(sheet.rows).toBe(4);
    expect(sheet.names).toEqual(['horse', 'limb', 'toe', 'heel', 'width', 'date', 'shod']);
    expect(sheet.column('toe').unit).toBe('deg');
    expect([...sheet.column('heel').error!]).toEqual([1, 1, 1, 1]);
    expect(sheet.column('horse').values).toEqual(['Ada', 'Ada', 'Bo', 'Bo']);
    expect([sheet.column('date').kind, sheet.column('date').unit]).toEqual(['date', 'd']);
  });

  test('never writes to the arrays that came in', () => {
    const values = Float64Array.of(1, 2);
    const words = ['a', 'b'];
    const sheet = Sheet.from({ x: { values }, w: { values: words } });
    sheet.set('x', 0, 9).set('w', 1, 'c');
    expect([...values, ...words]).toEqual([1, 2, 'a', 'b']);
    expect([...sheet.column('x').values, ...sheet.column('w').values]).toEqual([9, 2, 'a', 'c']);
  });

  test('refuses columns of different lengths, other arrays, errors of another length and keys that are no columns', () => {
    const x = { values: Float64Array.of(1, 2) };
    expect(() => Sheet.from({ x, y: { values: Float64Array.of(1) } })).toThrow(
      'The column y has 1 rows where the others have 2',
    );
    expect(() => Sheet.from({ x: { values: [1, 2] as unknown as string[] } })).toThrow('expected as a Float64Array');
    expect(() => Sheet.from({ x: { values: ['a', 2] as unknown as string[] } })).toThrow('or a list of texts');
    expect(() => Sheet.from({ x: { ...x, error: Float64Array.of(1) } })).toThrow(TypeError);
    expect(() => Sheet.from({ toe: x }, ['toes' as 'toe'])).toThrow('There is no column toes. Did you mean toe?');
  });

  test('takes columns that another sheet handed out, text with its codes and numbers with their errors', () => {
    const first: Sheet = feet().add({ name: 'area', formula: 'width * width' });
    const second: Sheet = Sheet.from({ horse: first.column('horse'), area: first.column('area') });
    expect(second.column('horse').values).toEqual(['Ada', 'Ada', 'Bo', 'Bo']);
    expect([...(second.column('area') as { error?: Float64Array }).error!]).toEqual([480, 488, 524, 520]);
    second.set('horse', 0, 'Cy').set('area', 0, 1);
    expect([first.column('horse').values[0], first.column('area').values[0]]).toEqual(['Ada', 14400]);
    expect(cellAt(first.column('horse'), 0)).toBe('Ada');
  });

  test('starts with computed columns, in any order, that no undoing takes away', () => {
    const x = { values: Float64Array.of(1, 2) };
    const computed = [
      { name: 'z', formula: 'y + 1' },
      { name: 'y', formula: 'x * 2' },
    ];
    const sheet: Sheet = Sheet.from({ x }, [], { computed });
    expect(numbers(sheet, 'z')).toEqual([3, 5]);
    expect(sheet.undo()).toBeUndefined();
    expect(() => Sheet.from({ x }, [], { computed: [{ name: 'x', formula: '1' }] })).toThrow('There are two columns x');
  });

  test('works without rows and without columns', () => {
    expect(Sheet.from({}).rows).toBe(0);
    const empty = Sheet.from({ x: { values: new Float64Array(0) } }).add({ name: 'm', formula: 'x - mean(x)' });
    expect(numbers(empty, 'm')).toEqual([]);
    expect(numbers(empty.addRows([{ x: 1 }, { x: 3 }]), 'm')).toEqual([-1, 1]);
  });

  test('columns may have any name at all', () => {
    const names = ['__proto__', 'constructor', 'toString', '<script>', 'hasOwnProperty', ' toe angle ', '=1+1'];
    const columns = Object.fromEntries(names.map((name, i) => [name, { values: Float64Array.of(i) }]));
    const sheet: Sheet = Sheet.from(columns);
    for (const [i, name] of names.entries())
      sheet.add({ name: `double ${name}`, formula: `2 * column(${JSON.stringify(name)})` }).set(name, 0, 10 + i);
    for (const [i, name] of names.entries()) expect(numbers(sheet, `double ${name}`)).toEqual([20 + 2 * i]);
    sheet.addRows([Object.fromEntries([['__proto__', 5]])]);
    expect(numbers(sheet, 'double __proto__')).toEqual([20, 10]);
    expect(({} as Record<string, unknown>).values).toBeUndefined();
  });
});

describe('add', () => {
  test('computes a column, in the unit asked for', () => {
    const sheet = feet()
      .add({ name: 'under', formula: 'toe - heel' })
      .add({ name: 'm', formula: 'width * 1000', unit: 'm' });
    expect(numbers(sheet, 'under')).toEqual([3, 2, 7, Number.NaN]);
    expect(sheet.column('under').unit).toBe('deg');
    expect(numbers(sheet, 'm')).toEqual([120, 122, 131, 130]);
    expect(sheet.column('m').unit).toBe('m');
  });

  test('computes from other computed columns, groups, and other rows', () => {
    const sheet = feet()
      .add({ name: 'under', formula: 'toe - heel' })
      .add({ name: 'mean', formula: 'mean(under, horse)' })
      .add({ name: 'away', formula: 'under - mean' })
      .add({ name: 'lr', formula: 'heel - other(heel)' })
      .add({ name: 'which', formula: "other(limb) == 'LF' ? 'right of a pair' : 'left of a pair'" });
    expect(numbers(sheet, 'mean')).toEqual([2.5, 2.5, 7, 7]);
    expect(numbers(sheet, 'away')).toEqual([0.5, -0.5, 0, Number.NaN]);
    expect(numbers(sheet, 'lr')).toEqual([-3, 3, -3, 3]);
    expect(sheet.column('which').values).toEqual([
      'left of a pair',
      'right of a pair',
      'left of a pair',
      'right of a pair',
    ]);
  });

  test('one text from two sources is one key', () => {
    const sheet: Sheet = feet()
      .add({ name: 'who', formula: "limb == 'LF' ? horse : 'Bo'" })
      .add({ name: 'n', formula: 'count(heel, who)' });
    expect(sheet.column('who').values).toEqual(['Ada', 'Bo', 'Bo', 'Bo']);
    expect(numbers(sheet, 'n')).toEqual([1, 3, 3, 3]);
  });

  test('a formula that is a bare column, a constant or a summary is a column of its own', () => {
    const sheet = feet()
      .add({ name: 'same', formula: 'toe' })
      .add({ name: 'two', formula: '2' })
      .add({ name: 'herd', formula: 'max(toe)' })
      .add({ name: 'word', formula: "'foot'" })
      .add({ name: 'who', formula: 'horse' });
    sheet.set('toe', 0, 60);
    expect(numbers(sheet, 'same')).toEqual([60, 52, 48, Number.NaN]);
    expect(numbers(sheet, 'two')).toEqual([2, 2, 2, 2]);
    expect(numbers(sheet, 'herd')).toEqual([60, 60, 60, 60]);
    expect(sheet.column('word').values).toEqual(['foot', 'foot', 'foot', 'foot']);
    expect(sheet.set('horse', 0, 'Cy').column('who').values).toEqual(['Cy', 'Ada', 'Bo', 'Bo']);
  });

  test('names an unknown column, with its place and the nearest known one', () => {
    const error = thrown(() => feet().add({ name: 'x', formula: 'heel - toes' }));
    expect(error).toBeInstanceOf(FormulaError);
    expect([error.start, error.end]).toEqual([7, 11]);
    expect(error.message).toContain('Did you mean toe?');
  });

  test('a formula that can’t be used leaves the sheet as it was', () => {
    const sheet = feet();
    for (const formula of ['toe -', 'toe + width', 'nothing', '', 'toe.constructor', 'alert(1)'])
      expect(thrown(() => sheet.add({ name: 'x', formula }))).toBeInstanceOf(FormulaError);
    expect(sheet.names).toHaveLength(7);
    expect(sheet.done).toEqual([]);
  });

  test('there is one column of a name', () => {
    const sheet = feet().add({ name: 'a', formula: 'toe' });
    expect(thrown(() => sheet.add({ name: 'a', formula: 'heel' })).message).toContain('There is a column a already');
    expect(thrown(() => sheet.add({ name: 'toe', formula: 'heel' })).message).toContain(
      'There is a column toe already. Choose another name',
    );
    // What is made from the column is not to blame.
    expect(thrown(() => sheet.add({ name: 'toe', formula: '1' })).message).toBe(
      'There is a column toe already. Choose another name',
    );
    expect(() => sheet.add({ name: ' ', formula: 'heel' })).toThrow('A column needs a name');
  });
});

describe('loops', () => {
  test('a column made from itself is refused, and the place underlined', () => {
    const error = thrown(() => feet().add({ name: 'x', formula: 'toe + x' }));
    expect(error).toBeInstanceOf(FormulaError);
    expect(error.message).toContain('x → x');
    expect([error.start, error.end]).toEqual([6, 7]);
  });

  test('replacing a formula can’t lead round in a loop, which is printed', () => {
    const sheet = feet()
      .add({ name: 'a', formula: 'toe - heel' })
      .add({ name: 'b', formula: 'mean(a, horse)' })
      .add({ name: 'c', formula: 'other(b)' });
    for (const change of [
      () => sheet.replace({ name: 'a', formula: 'toe - c' }),
      () => sheet.add({ name: 'a', formula: 'toe - c' }),
    ]) {
      const error = thrown(change);
      expect(error).toBeInstanceOf(FormulaError);
      expect(error.message).toContain('a → c → b → a');
      expect([error.start, error.end]).toEqual([6, 7]);
    }
    expect(numbers(sheet, 'a')).toEqual([3, 2, 7, Number.NaN]);
  });

  test('columns added together may lead round in a loop too, keys and relations counted', () => {
    const together = [
      { name: 'a', formula: 'b + 1' },
      { name: 'b', formula: 'a + 1' },
    ];
    expect(thrown(() => feet().addAll(together)).message).toContain('a → b → a');
    expect(thrown(() => feet().add({ name: 'k', formula: 'count(toe, k)' })).message).toContain('k → k');
  });
});

describe('addAll', () => {
  test('finds the order that the formulas need', () => {
    const sheet: Sheet = feet().addAll([
      { name: 'twice', formula: '2 * once' },
      { name: 'once', formula: 'toe - heel' },
    ]);
    expect(numbers(sheet, 'twice')).toEqual([6, 4, 14, Number.NaN]);
    expect(sheet.names.slice(-2)).toEqual(['twice', 'once']);
    expect(sheet.undo()?.kind).toBe('columns');
    expect(sheet.names).toHaveLength(7);
  });

  test('says which formula is wrong', () => {
    const wrong = [
      { name: 'good', formula: 'toe' },
      { name: 'bad', formula: 'toe + width' },
    ];
    expect(thrown(() => feet().addAll(wrong)).message).toMatch(/^bad: /);
  });
});

describe('replace, remove, rename', () => {
  const used = () => feet().add({ name: 'a', formula: 'toe - heel' }).add({ name: 'b', formula: 'a * 2' });

  test('a new formula is followed by what is made from it', () => {
    const sheet = used().replace({ name: 'a', formula: 'heel - toe' });
    expect(numbers(sheet, 'b')).toEqual([-6, -4, -14, Number.NaN]);
    sheet.undo();
    expect(numbers(sheet, 'b')).toEqual([6, 4, 14, Number.NaN]);
  });

  test('a new formula that breaks another column is refused, and that column named', () => {
    const error = thrown(() => used().replace({ name: 'a', formula: 'horse' }));
    expect(error.message).toContain('b would no longer work');
    expect([error.start, error.end]).toEqual([0, 5]);
  });

  test('a column that others are made from is neither removed nor renamed; they are named', () => {
    const sheet = used();
    expect(() => sheet.remove('toe')).toThrow("toe can't be removed: a is made from it. Change or remove that first");
    expect(() => sheet.rename('a', 'c')).toThrow("a can't be renamed: b is made from it");
    sheet.add({ name: 'pair', formula: 'other(heel)' }).add({ name: 'n', formula: 'count(heel, shod)' });
    expect(() => sheet.remove('heel')).toThrow('a, pair and n are made from it. Change or remove those first');
    expect(() => sheet.remove('shod')).toThrow('n is made from it');
    expect(() => sheet.rename('limb', 'foot')).toThrow('pair is made from it');
    expect(() => sheet.remove('horse')).toThrow(TypeError);
  });

  test('a key is neither removed nor renamed', () => {
    expect(() => feet().remove('horse')).toThrow('it is one of the keys');
    expect(() => feet().rename('limb', 'leg')).toThrow('it is one of the keys');
  });

  test('what nothing is made from goes, comes back in its place and takes another name', () => {
    const sheet: Sheet = used();
    sheet.remove('width').remove('b').rename('a', 'under').rename('date', 'day');
    expect(sheet.names).toEqual(['horse', 'limb', 'toe', 'heel', 'day', 'shod', 'under']);
    expect(numbers(sheet, 'under')).toEqual([3, 2, 7, Number.NaN]);
    expect(() => sheet.rename('under', 'toe')).toThrow('There is a column toe already');
    expect(() => sheet.rename('under', 5 as unknown as string)).toThrow('A column needs a name');
    while (sheet.undo()?.kind !== 'columns' || !sheet.names.includes('width' as never));
    expect(sheet.names).toEqual(['horse', 'limb', 'toe', 'heel', 'width', 'date', 'shod', 'a', 'b']);
    expect(numbers(sheet, 'width')).toEqual([120, 122, 131, 130]);
    expect([...(sheet.column('width') as { error?: Float64Array }).error!]).toEqual([2, 2, 2, 2]);
  });

  test('a measured column that comes back has its title again', () => {
    const sheet: Sheet = feet().remove('toe');
    sheet.undo();
    expect(sheet.describe('toe')).toMatchObject({ title: 'Toe angle', unit: 'deg' });
  });

  test('a measured column has no formula to replace', () => {
    expect(() => feet().replace({ name: 'toe', formula: 'heel' })).toThrow('toe is measured and has no formula');
  });
});

describe('set', () => {
  test('changes the cell and all that depends on it, and gives the sheet back', () => {
    const sheet = feet().add({ name: 'lr', formula: 'toe - other(toe)' });
    expect(numbers(sheet.set('toe', 3, 50), 'lr')).toEqual([-2, 2, -2, 2]);
    expect(numbers(sheet.set('toe', 0, null), 'lr')).toEqual([Number.NaN, Number.NaN, -2, 2]);
  });

  test('a change of key, side or date moves rows to other groups and partners', () => {
    const sheet = feet()
      .add({ name: 'm', formula: 'mean(heel, horse)' })
      .add({ name: 'lr', formula: 'heel - other(heel)' });
    sheet.set('horse', 3, 'Ada').set('limb', 1, 'LF').set('limb', 0, '');
    expect(numbers(sheet, 'm')).toEqual([47, 47, 41, 47]);
    expect(numbers(sheet, 'lr')).toEqual([Number.NaN, 6, Number.NaN, -6]);
  });

  test('is refused in a computed column, with what to change instead', () => {
    const sheet = feet().add({ name: 'under', formula: 'toe - heel' });
    expect(() => sheet.set('under', 0, 1)).toThrow('under is computed as toe - heel. Change toe, heel instead');
    expect(() => sheet.fill('under', [0], 1)).toThrow(TypeError);
    expect(() => sheet.paste({ row: 0, columns: ['under'], cells: [[1]] })).toThrow(TypeError);
  });

  test.each([
    ['toe', '52', 'toe: a finite number or null for missing was expected, found the text "52"'],
    ['toe', Number.POSITIVE_INFINITY, 'found Infinity'],
    ['toe', true, 'found true'],
    ['toe', undefined, 'found undefined'],
    ['toe', '', 'found the text ""'],
    ['horse', 5, 'horse: text or null for missing was expected, found 5'],
    ['horse', Number.NaN, 'found NaN'],
    ['date', 20000.5, 'date: a date as whole days since 1970-01-01'],
    ['date', '2026-01-01', 'found the text "2026-01-01"'],
    ['shod', 2, 'shod: 1 for yes, 0 for no'],
  ] as const)('%s can’t be %s: nothing is parsed', (name, value, message) => {
    const sheet = feet();
    expect(() => sheet.set(name, 0, value as number)).toThrow(TypeError);
    expect(() => sheet.set(name, 0, value as number)).toThrow(message);
    expect(sheet.done).toEqual([]);
  });

  test('NaN, the empty text and null are missing', () => {
    const sheet = feet().set('toe', 0, Number.NaN).set('toe', 1, null).set('horse', 0, '').set('limb', 0, null);
    expect(numbers(sheet, 'toe').slice(0, 2)).toEqual([Number.NaN, Number.NaN]);
    expect([sheet.column('horse').at(0), sheet.column('limb').at(0)]).toEqual(['', '']);
  });

  test.each([-1, 4, 0.5, Number.NaN])('there is no row %s', (row) => {
    expect(() => feet().set('toe', row, 1)).toThrow(RangeError);
    expect(() => feet().set('toe', row, 1)).toThrow(`There is no row ${row}: rows go from 0 to 3. Add rows first`);
  });
});

describe('error', () => {
  test('is there where all that a column rests on has one, and follows edits', () => {
    const sheet: Sheet = feet();
    sheet.add({ name: 'area', formula: 'width * width' }).add({ name: 'ratio', formula: 'heel / toe' });
    const error = () => (sheet.column('area') as { error?: Float64Array }).error!;
    // Of x² it is 2 x times that of x.
    expect([...error()]).toEqual([480, 488, 524, 520]);
    sheet.set('width', 0, 100);
    expect(error()[0]).toBe(400);
    expect((sheet.column('ratio') as { error?: Float64Array }).error).toBeUndefined();
  });

  test('counts once what a column has in common with another that it is made from', () => {
    const sheet: Sheet = feet()
      .add({ name: 'half', formula: 'width / 2' })
      .add({ name: 'rest', formula: 'width - half' });
    // Half of the width's 2 mm; as independent parts it would be √(2² + 1²).
    expect([...(sheet.column('rest') as { error?: Float64Array }).error!]).toEqual([1, 1, 1, 1]);
  });

  test('a yes/no and a text have none', () => {
    const sheet: Sheet = feet()
      .add({ name: 'wide', formula: 'width > 121' })
      .add({ name: 'w', formula: "width > 121 ? 'a' : 'b'" });
    expect((sheet.column('wide') as { error?: Float64Array }).error).toBeUndefined();
    expect((sheet.column('w') as { error?: Float64Array }).error).toBeUndefined();
  });
});

describe('describe', () => {
  test('says what a column is and whence', () => {
    const sheet: Sheet = feet().add({ name: 'under', title: 'Underrun', formula: 'toe - heel' });
    expect(sheet.describe('toe')).toEqual({
      name: 'toe',
      title: 'Toe angle',
      kind: 'number',
      unit: 'deg',
      origin: 'measured',
    });
    expect(sheet.describe('under')).toEqual({
      name: 'under',
      title: 'Underrun',
      kind: 'number',
      unit: 'deg',
      origin: 'computed',
      formula: 'toe - heel',
    });
    expect(sheet.describe('horse').title).toBe('horse');
    expect(() => sheet.describe('nothing')).toThrow(
      'There is no column nothing. There are horse, limb, toe, heel, width, date, shod, under',
    );
    expect(() => (Sheet.from({}) as Sheet).describe('toe')).toThrow('There is no column toe. There are none yet');
  });
});

describe('rows', () => {
  test('are added where asked for, what is left out missing, and computed columns follow', () => {
    const sheet: Sheet = feet()
      .add({ name: 'm', formula: 'mean(heel, horse)' })
      .add({ name: 'lr', formula: 'heel - other(heel)' });
    sheet.addRows(
      [
        { horse: 'Cy', limb: 'LF', heel: 40 },
        { horse: 'Cy', limb: 'RF', heel: 44 },
      ],
      1,
    );
    expect(sheet.column('horse').values).toEqual(['Ada', 'Cy', 'Cy', 'Ada', 'Bo', 'Bo']);
    expect(numbers(sheet, 'toe').slice(0, 3)).toEqual([50, Number.NaN, Number.NaN]);
    expect(numbers(sheet, 'm')).toEqual([48.5, 42, 42, 48.5, 42.5, 42.5]);
    expect(numbers(sheet, 'lr')).toEqual([-3, -4, 4, 3, -3, 3]);
    expect((sheet.column('heel') as { error?: Float64Array }).error![1]).toBeNaN();
  });

  test('are removed in any order and come back with all they had', () => {
    const sheet: Sheet = feet().add({ name: 'n', formula: 'count(heel, horse)' });
    sheet.removeRows([2, 0, 2]);
    expect(numbers(sheet, 'n')).toEqual([1, 1]);
    expect(numbers(sheet, 'heel')).toEqual([50, 44]);
    sheet.undo();
    expect(numbers(sheet, 'heel')).toEqual([47, 50, 41, 44]);
    expect([...(sheet.column('heel') as { error?: Float64Array }).error!]).toEqual([1, 1, 1, 1]);
    expect(numbers(sheet, 'n')).toEqual([2, 2, 2, 2]);
  });

  test('that are not there can’t be removed, and places that are not there not be added at', () => {
    expect(() => feet().removeRows([4])).toThrow(RangeError);
    for (const at of [5, -1, 0.5])
      expect(() => feet().addRows([{}], at)).toThrow(`Rows can be added at 0 to 4, not at ${at}`);
    expect(() => feet().addRows([{ toe: 'x' }])).toThrow(TypeError);
    expect(() => (feet() as Sheet).addRows([{ toes: 1 }])).toThrow('There is no column toes. Did you mean toe?');
  });

  test('duplicateKeys names the rows whose keys were there before', () => {
    const sheet = feet();
    expect([...sheet.duplicateKeys()]).toEqual([]);
    sheet.set('limb', 1, 'LF').set('horse', 2, 'Ada');
    expect([...sheet.duplicateKeys()]).toEqual([1, 2]);
    expect([...Sheet.from({ x: { values: Float64Array.of(1, 1) } }).duplicateKeys()]).toEqual([]);
  });
});

test('groups and partners follow edits', () => {
  const sheet = feet();
  expect([...sheet.groups(['horse']).codes]).toEqual([0, 0, 1, 1]);
  expect([...sheet.partners(other)]).toEqual([1, 0, 3, 2]);
  sheet.set('horse', 1, 'Bo');
  expect([...sheet.groups(['horse']).codes]).toEqual([0, 1, 1, 1]);
  expect([...sheet.partners(other)]).toEqual([-1, 2, -1, 2]);
});

test('addMeasured brings a column to type in, with the others’ number of rows', () => {
  const sheet = feet().addMeasured('frog', { unit: 'mm', values: Float64Array.of(1, 2, 3, 4), title: 'Frog' });
  expect(numbers(sheet.set('frog', 0, 9).add({ name: 'f', formula: 'frog / width' }), 'frog')).toEqual([9, 2, 3, 4]);
  expect(() => feet().addMeasured('frog', { values: Float64Array.of(1) })).toThrow(TypeError);
  expect(() => feet().addMeasured('toe', { values: new Float64Array(4) })).toThrow('There is a column toe already');
});

test('subscribe tells of edits, undone ones as what takes them back, until it is ended', () => {
  const sheet = feet();
  const heard = vi.fn();
  const end = sheet.subscribe(heard);
  sheet.set('toe', 0, 51);
  sheet.undo();
  end();
  sheet.redo();
  const told = heard.mock.calls.map(([edit]) => [edit.kind, edit.cells[0].before, edit.cells[0].after]);
  expect(told).toEqual([
    ['cells', [50], [51]],
    ['cells', [51], [50]],
  ]);
});

describe('readings', () => {
  const sheet = (): Sheet =>
    feet()
      .add({ name: 'under', title: 'Underrun', formula: 'toe - heel' })
      .add({ name: 'off', formula: 'under - mean(under, horse)' });

  test('sentence says a formula in words, with the titles of its columns; of a measured column its title', () => {
    expect(sheet().sentence('under')).toBe('Toe angle minus heel');
    expect(sheet().sentence('off')).toBe('Underrun minus the mean of Underrun for each horse');
    expect(sheet().sentence('toe')).toBe('Toe angle');
  });

  test('lineage leads from a cell to the measured cells, and follows edits', () => {
    const from = sheet().set('toe', 0, 60).lineage('under', 0);
    expect([from.value, from.formula]).toEqual([13, 'toe - heel']);
    expect(from.from.map(({ column, row, value, error }) => [column, row, value, error])).toEqual([
      ['toe', 0, 60, undefined],
      ['heel', 0, 47, 1],
    ]);
    expect(
      sheet()
        .lineage('off', 1)
        .from.map(({ column, via }) => [column, via]),
    ).toEqual([
      ['under', undefined],
      ['under', 'mean over horse: 2 cells'],
    ]);
  });
});
