import { expect, test } from 'vitest';
import { columnOf } from '../../lib/files/columnOf.ts';
import { readCell } from '../../lib/files/readCell.ts';
import { daysFromIso } from '../../lib/sheet/days.ts';

const plan = (name: string, headingUnit?: string) => columnOf('feet', { name, kind: 'text', unit: '1' }, headingUnit);

test.each([
  ['toe_angle_deg', '52°', 52],
  ['toe_angle_deg', ' 52,5 ', 52.5],
  ['toe_length_mm', '8,5 cm', 85],
  ['toe_length_mm', '3 1/4"', 82.55],
  ['toe_length_mm', '', null],
  ['toe_length_mm', 'not measured', null],
  ['date', '2026-03-09', daysFromIso('2026-03-09')],
  ['date', '25/3/2026', daysFromIso('2026-03-25')],
  ['date', '-', null],
  ['limb', 'near fore', 'LF'],
  ['moment', 'Pre trim', 'before'],
  ['shod', 'barefoot', 0],
  ['shod', 'x', 1],
  ['observer', ' Ida ', 'Ida'],
] as const)('%s: “%s” is read', (name, text, cell) => {
  expect(readCell(plan(name), text)).toEqual({ cell });
});

test.each([
  ['toe_angle_deg', 'about 50', 'an angle in degrees, such as 52 or 52.5°'],
  ['toe_angle_deg', '5 cm', 'an angle in degrees, such as 52 or 52.5°'],
  ['toe_angle_deg', '520', '15 to 110 deg'],
  ['date', '03/04/2026', 'a date that can be read one way only'],
  ['date', 'Tuesday', 'a date such as 2026-03-09 or 9 Mar 2026'],
  ['limb', 'tail', 'one of LF, RF, LH, RH'],
  ['shod', 'perhaps', 'one of yes, no'],
] as const)('%s: “%s” is refused with what was expected', (name, text, expected) => {
  const read = readCell(plan(name), text);
  expect(read).toMatchObject({ expected });
  expect('remedy' in read && read.remedy).toMatch(/\w/);
});

test('a number without a unit has the unit of its heading, one with a unit its own', () => {
  expect(readCell(plan('toe_length_mm', '[in_i]'), '3.25')).toEqual({ cell: 82.55 });
  expect(readCell(plan('toe_length_mm', '[in_i]'), '85 mm')).toEqual({ cell: 85 });
});

test('what a comma parts is said by the block around it', () => {
  expect(readCell(plan('toe_length_mm'), '85,123')).toMatchObject({ code: 'two-readings' });
  expect(readCell(plan('toe_length_mm'), '85,123', { mark: ',' })).toEqual({ cell: 85.123 });
});

test('the order of day and month may come from other dates', () => {
  expect(readCell(plan('date'), '03/04/2026', { dates: 'mdy' })).toEqual({ cell: daysFromIso('2026-03-04') });
});

test('a column that no schema knows is read by its kind', () => {
  const own = (kind: 'number' | 'boolean') => columnOf('feet', { name: 'paint', kind, unit: '1' });
  expect(readCell(own('number'), '1,5')).toEqual({ cell: 1.5 });
  expect(readCell(own('boolean'), 'No')).toEqual({ cell: 0 });
  expect(readCell(own('boolean'), 'maybe')).toMatchObject({ expected: 'one of yes, no' });
});
