import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { limbs } from '../../lib/hoof/limbs.ts';
import { footRelations } from '../../lib/hoof/relations.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';

/** Rows as `horse date limb moment repeat`. */
function feet(lines: readonly string[], lacking: readonly string[] = []) {
  const cells = lines.map((line) => line.split(' '));
  const text = (i: number) => ({ values: cells.map((cell) => (cell[i] === '-' ? '' : cell[i])) });
  const number = (i: number) => ({ values: Float64Array.from(cells, (cell) => Number(cell[i] ?? 1)) });
  const all = { horse_id: text(0), date: number(1), limb: text(2), moment: text(3), repeat: number(4) };
  const kept = Object.entries(all).filter(([name]) => !lacking.includes(name));
  return plainTable(Object.fromEntries(kept), footRelations);
}

function partners(name: string, lines: readonly string[], lacking?: readonly string[]): number[] {
  return [...feet(lines, lacking).partners(footRelations.find((relation) => relation.name === name)!)];
}

const fourFeet = ['Ada 1 LF after 1', 'Ada 1 RF after 1', 'Ada 1 LH after 1', 'Ada 1 RH after 1'];

describe('opposite', () => {
  test('leads to the same horse’s foot on the other side', () => {
    expect(partners('opposite', fourFeet)).toEqual([1, 0, 3, 2]);
  });

  test('stays with the horse, the day, the moment and the repeat', () => {
    for (const other of [
      'Bo 1 RF after 1',
      'Ada 2 RF after 1',
      'Ada 1 RF before 1',
      'Ada 1 RF after 2',
      'Ada 1 RH after 1',
    ])
      expect(partners('opposite', ['Ada 1 LF after 1', other]), other).toEqual([-1, -1]);
  });

  test('does without a moment and a repeat where the table has none', () => {
    expect(partners('opposite', ['Ada 1 LF', 'Ada 1 RF'], ['moment', 'repeat'])).toEqual([1, 0]);
  });

  test('leads nowhere from a foot without a name, or where two rows could be meant', () => {
    expect(partners('opposite', ['Ada 1 - after 1', 'Ada 1 RF after 1'])).toEqual([-1, -1]);
    expect(partners('opposite', ['Ada 1 LF after 1', 'Ada 1 RF after 1', 'Ada 1 RF after 1'])).toEqual([-1, 0, 0]);
  });

  test('of the opposite is the foot itself', () => {
    const foot = fc.tuple(fc.constantFrom('Ada', 'Bo'), fc.nat(3), fc.constantFrom(...limbs));
    fc.assert(
      fc.property(fc.uniqueArray(foot, { selector: String }), (rows) => {
        const found = partners(
          'opposite',
          rows.map((row) => `${row.join(' ')} after 1`),
        );
        for (const [row, partner] of found.entries()) if (partner >= 0) expect(found[partner]).toBe(row);
      }),
    );
  });
});

describe('front_of and hind_of', () => {
  test('lead along the same side, and nowhere from a foot that is there already', () => {
    expect(partners('front_of', fourFeet)).toEqual([-1, -1, 0, 1]);
    expect(partners('hind_of', fourFeet)).toEqual([2, 3, -1, -1]);
  });
});

describe('previous', () => {
  test('leads to the same foot at the visit before, whatever order the rows are in', () => {
    const rows = [
      'Ada 90 LF after 1',
      'Ada 1 LF after 1',
      'Ada 42 LF after 1',
      'Ada 42 RF after 1',
      'Bo 50 LF after 1',
    ];
    expect(partners('previous', rows)).toEqual([2, -1, 1, -1, -1]);
  });

  test('compares like with like: the same moment and repeat, else nothing', () => {
    const rows = [
      'Ada 1 LF before 1',
      'Ada 1 LF after 1',
      'Ada 42 LF before 1',
      'Ada 42 LF after 1',
      'Ada 42 LF after 2',
    ];
    expect(partners('previous', rows)).toEqual([-1, -1, 0, 1, -1]);
    expect(partners('previous', ['Ada 1 LF after 1', 'Ada 42 LF before 1', 'Ada 84 LF after 1'])).toEqual([-1, -1, -1]);
  });

  test('leads nowhere from a day that is missing', () => {
    expect(partners('previous', ['Ada 1 LF after 1', 'Ada NaN LF after 1'])).toEqual([-1, -1]);
  });
});
