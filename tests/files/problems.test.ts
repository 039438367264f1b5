import { describe, expect, it } from 'vitest';
import { problem, problemColumns, problemSentence } from '../../lib/files/problems.ts';
import { readTable } from '../../lib/files/readTable.ts';
import { writeTable } from '../../lib/files/writeTable.ts';

const found = [
  problem('not-a-number', { file: 'feet.csv', row: 7, column: 'toe_angle_deg', value: '=5O' }, 'an angle in degrees'),
  problem('encoding', { file: 'feet.csv', row: 0 }),
];

describe('problems', () => {
  it('are said in one sentence: where, what was found, what was expected, the way out', () => {
    expect(found.map(problemSentence)).toEqual([
      'feet.csv, row 7, toe_angle_deg: “=5O”. Expected an angle in degrees. Correct the cell; it was left out.',
      'feet.csv: Expected text in UTF-8. It was read as windows-1252. If letters or signs look wrong, save the file again as UTF-8.',
    ]);
  });

  it('shorten a long cell in the sentence and keep it whole in the table', () => {
    const long = problem('not-a-date', { file: 'f', row: 2, column: 'date', value: 'x'.repeat(300) });
    expect(problemSentence(long).length).toBeLessThan(250);
    expect(problemColumns([long]).value.values[0]).toHaveLength(300);
  });

  it('are a table like any other, which is written and read back', () => {
    const { columns } = readTable(writeTable(problemColumns(found)));
    expect([...columns.value.values]).toEqual(['=5O', '']);
    expect([...columns.row.values]).toEqual([7, 0]);
    expect(Object.keys(columns)).toEqual(['file', 'row', 'column', 'value', 'code', 'expected', 'remedy']);
  });
});
