import { describe, expect, test } from 'vitest';
import { footRelations } from '../../lib/hoof/relations.ts';
import { parse } from '../../lib/sheet/formula/parse.ts';
import { columnsUsed, relationColumns } from '../../lib/sheet/uses.ts';

const names = ['horse_id', 'date', 'limb', 'repeat', 'toe', 'heel'];
const used = (formula: string) => [...columnsUsed(parse(formula), footRelations, names)];

describe('columnsUsed', () => {
  test('are those that a formula names, each with its first place', () => {
    expect(used('toe - (heel + toe)')).toEqual([
      ['toe', expect.objectContaining({ start: 0, end: 3 })],
      ['heel', expect.objectContaining({ start: 7, end: 11 })],
    ]);
    expect(used("-toe > 5 && !(limb == 'LF') ? column('heel') : 2").map(([name]) => name)).toEqual([
      'toe',
      'limb',
      'heel',
    ]);
  });

  test('count the keys of summaries', () => {
    expect(used('quantile(toe, 0.5, horse_id, limb)').map(([name]) => name)).toEqual(['toe', 'horse_id', 'limb']);
  });

  test('count what relations go by, the optional columns that the table has included, at the call', () => {
    expect(used('1 + opposite(toe)')).toEqual([
      ['toe', expect.objectContaining({ start: 13 })],
      ...['horse_id', 'date', 'limb', 'repeat'].map((name) => [name, expect.objectContaining({ start: 4, end: 17 })]),
    ]);
  });
});

test('only the relation that is called counts', () => {
  const neighbour = { name: 'neighbour', words: 'the neighbour’s', match: ['heel'] };
  const found = columnsUsed(parse('neighbour(toe)'), [...footRelations, neighbour], names);
  expect([...found.keys()]).toEqual(['toe', 'heel']);
});

test('relationColumns are those that a table has', () => {
  const previous = footRelations.find(({ name }) => name === 'previous')!;
  expect(relationColumns(previous, names)).toEqual(['horse_id', 'date', 'limb', 'repeat']);
  expect(relationColumns(previous, ['toe', 'limb'])).toEqual(['limb']);
});
