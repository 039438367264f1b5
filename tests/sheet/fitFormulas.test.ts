import { describe, expect, test } from 'vitest';
import type { Kind } from '../../lib/sheet/column.ts';
import type { ComputedDefinition } from '../../lib/sheet/edits.ts';
import { type Formula, fitFormulas } from '../../lib/sheet/fitFormulas.ts';
import { FormulaError } from '../../lib/sheet/formula/syntax.ts';

const columns: Record<string, { kind: Kind; unit: string }> = {
  toe: { kind: 'number', unit: 'deg' },
  heel: { kind: 'number', unit: 'deg' },
  width: { kind: 'number', unit: 'mm' },
  horse: { kind: 'text', unit: '1' },
};

const opposite = { name: 'opposite', words: 'the other', match: ['horse'], optional: ['moment'] };

function fitted(
  definitions: readonly ComputedDefinition[],
  known: ReadonlyMap<string, Formula> = new Map(),
  measured = columns,
) {
  return fitFormulas(definitions, { measured: new Map(Object.entries(measured)), relations: [opposite], known });
}

function error(work: () => unknown): FormulaError {
  try {
    work();
  } catch (caught) {
    if (caught instanceof FormulaError) return caught;
    throw caught;
  }
  throw new Error('nothing was thrown');
}

const gap: ComputedDefinition = { name: 'gap', formula: 'toe - heel' };
const twice: ComputedDefinition = { name: 'twice', formula: 'gap * 2' };

describe('fitFormulas', () => {
  test('gives each formula with its kind, its unit and what it is made from', () => {
    const again = fitted([twice, gap]);
    expect([...again.keys()]).toEqual(['gap', 'twice']);
    expect(again.get('twice')).toMatchObject({ kind: 'number', unit: 'deg', definition: twice });
    expect([...again.get('gap')!.needs.keys()]).toEqual(['toe', 'heel']);
  });

  test('takes over the formulas that nothing has changed for', () => {
    const known = fitted([gap, twice]);
    const wide = { name: 'wide', formula: 'width > 120' };
    const again = fitted([gap, twice, wide], known);
    expect(again.get('gap')).toBe(known.get('gap'));
    expect(again.get('twice')).toBe(known.get('twice'));
    const reversed = fitted([{ name: 'gap', formula: 'heel - toe' }, twice, wide], again);
    expect(reversed.get('wide')).toBe(again.get('wide'));
    expect(reversed.get('twice')).toBe(again.get('twice'));
  });

  test('checks again what stands on a column of another unit or kind', () => {
    const known = fitted([gap, twice]);
    const wider = fitted([{ name: 'gap', formula: 'width + width' }, twice], known);
    expect(wider.get('twice')).toMatchObject({ kind: 'number', unit: 'mm' });
    const share = fitted([{ name: 'gap', formula: 'toe / heel' }, twice]);
    // A ratio and a yes/no are both without a unit.
    const { message, start, end } = error(() => fitted([{ name: 'gap', formula: 'toe > heel' }, twice], share));
    expect(message).toMatch(/^twice would no longer work: gap is a yes\/no/);
    expect([start, end]).toEqual([0, 'toe > heel'.length]);
  });

  test('checks again what is further down, as long as units change on the way', () => {
    const chain = [gap, twice, { name: 'thrice', formula: 'twice + gap' }, { name: 'area', formula: 'gap * width' }];
    const known = fitted(chain);
    const again = fitted([{ name: 'gap', formula: 'width' }, ...chain.slice(1)], known);
    expect(again.get('thrice')?.unit).toBe('mm');
    expect(again.get('area')?.unit).toBe('mm2');
  });

  test('notices that a relation goes by a column that has come since', () => {
    const other = { name: 'other', formula: 'opposite(toe)' };
    const known = fitted([other]);
    expect([...known.get('other')!.needs.keys()]).toEqual(['toe', 'horse']);
    const again = fitted([other], known, { ...columns, moment: { kind: 'text', unit: '1' } });
    expect([...again.get('other')!.needs.keys()]).toEqual(['toe', 'horse', 'moment']);
  });

  test('says what is wrong with one new formula without its name, and of several with it', () => {
    const wrong = { name: 'bad', formula: 'toe + width' };
    const found =
      "toe + width: deg and mm can't be added (characters 0 to 11). Compare columns of one kind, or divide first";
    expect(error(() => fitted([wrong])).message).toBe(found);
    expect(error(() => fitted([gap, wrong])).message).toBe(`bad: ${found}`);
    expect(error(() => fitted([gap, wrong], fitted([gap]))).message).toBe(found);
    expect(error(() => fitted([gap, { name: 'bad', formula: 'toe +' }])).message).toMatch(
      /^bad: The formula can't be read/,
    );
  });

  test('says what no longer works where a column is gone that a relation goes by', () => {
    const { horse, ...others } = columns;
    const other = [{ name: 'other', formula: 'opposite(toe)' }];
    const { message, start, end } = error(() => fitted(other, fitted(other), others));
    expect(message).toMatch(/^other would no longer work: opposite looks at the column horse, which is not there/);
    expect([start, end]).toEqual([0, 0]);
  });

  test('prints the loop from a new column on, once round', () => {
    const known = fitted([gap, twice, { name: 'far', formula: 'twice + 1' }]);
    const definitions = [...known.values()].map(({ definition }) => definition);
    const { message, start, end } = error(() =>
      fitted([...definitions.slice(1), { name: 'gap', formula: 'toe - far' }], known),
    );
    expect(message).toBe(
      'gap would be made from itself: gap → far → twice → gap (characters 6 to 9). Use a column that is not made from gap',
    );
    expect([start, end]).toEqual([6, 9]);
  });

  test("leaves a programmer's mistake what it is", () => {
    const nothing = { name: 'nothing' } as ComputedDefinition;
    expect(() => fitted([nothing])).toThrow(TypeError);
    expect(() => fitted([gap, nothing])).toThrow(TypeError);
  });
});
