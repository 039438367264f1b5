import { expect, test } from 'vitest';
import { farHorses } from '../../lib/hoof/farHorses.ts';
import { TextColumn } from '../../lib/sheet/column.ts';

const names = ['Ash', 'Birch', 'Cedar', 'Dill', 'Elder', 'Fig'];

test('horses far from the others are named with their median and that of all, a row without a horse left out', () => {
  const horse = TextColumn.from([...names, 'Fig', 'Fig', '']);
  const weights = Float64Array.of(500, 510, 520, 530, 540, 500, 900, 910, 5000);
  // Fig's median is 900; of the six medians it is 525.
  expect(farHorses(horse, weights)).toEqual([{ horse: 'Fig', value: 900, middle: 525 }]);
});

test('a horse that was never measured is not far', () => {
  const weights = Float64Array.of(500, 510, 520, 530, 540, Number.NaN);
  expect(farHorses(TextColumn.from(names), weights)).toEqual([]);
});
