import { expect, test } from 'vitest';
import { entryOf } from '../../../lib/page/picture/entering.ts';
import type { KeptReading, PictureAnswer, PictureMeasure } from '../../../lib/page/picture/work.ts';
import { daysFromIso } from '../../../lib/sheet/days.ts';
import { plainTable } from '../../../lib/sheet/plainTable.ts';

const DAY = daysFromIso('2026-03-09');
const measure = (name: string, value: number, more: Partial<PictureMeasure> = {}): PictureMeasure => ({
  ...{ name, title: name, unit: 'mm', value, error: 1, from: [] },
  ...more,
});
const answer: PictureAnswer = {
  measures: [
    measure('toe_length_mm', 83.4567),
    measure('heel_length_mm', Number.NaN, { refused: { reason: 'askew', remedy: 'Step to the side' } }),
    measure('toe_angle_deg', 51.999),
  ],
  marks: [],
  assumptions: [],
  squareness: { state: 'usable', words: '' },
};
const reading: KeptReading = {
  photo: 'a',
  subject: { horse: 'Bella ', limb: 'LF', date: '2026-03-09', moment: 'between', view: 'side' },
  size: { kind: 'none' },
  width: 1,
  height: 1,
  points: new Map(),
  skipped: [],
  invented: false,
};
const table = (
  rows: readonly [limb: string, moment: string, repeat: number, method: string, toe: number, level: number][],
) =>
  plainTable({
    horse_id: { values: rows.map(() => 'Bella') },
    date: { kind: 'date', values: Float64Array.from(rows, () => DAY) },
    limb: { values: rows.map(([limb]) => limb) },
    moment: { values: rows.map(([, moment]) => moment) },
    repeat: { values: Float64Array.from(rows, ([, , repeat]) => repeat) },
    method: { values: rows.map(([, , , method]) => method) },
    toe_length_mm: { values: Float64Array.from(rows, ([, , , , toe]) => toe) },
    medial_wall_mm: { values: Float64Array.from(rows, ([, , , , , level]) => level) },
  });

test('what was refused is not entered, what was measured is, rounded to a hundredth', () => {
  const entry = entryOf(table([]), reading, answer)!;
  expect(entry.row).toBe(-1);
  expect(entry.cells).toEqual({
    ...{ horse_id: 'Bella', date: DAY, limb: 'LF', moment: 'between', repeat: 1 },
    ...{ method: 'photograph', view_quality: 'fair', toe_length_mm: 83.46, toe_angle_deg: 52 },
  });
});

test('beside readings by hand it is the next repeat, and touches none of them', () => {
  const sheet = table([
    ['LF', 'between', 1, 'gauge', 80, Number.NaN],
    ['LF', 'between', 2, 'gauge', Number.NaN, Number.NaN],
    ['RF', 'between', 7, 'gauge', 80, Number.NaN],
    ['LF', 'before', 8, 'gauge', 80, Number.NaN],
  ]);
  expect(entryOf(sheet, reading, answer)).toMatchObject({ row: -1, repeat: 3 });
});

test('it joins what another picture of the same foot and moment told, where nothing of its own stands there', () => {
  const sheet = table([['LF', 'between', 1, 'photograph', Number.NaN, 50]]);
  expect(entryOf(sheet, reading, answer)).toMatchObject({ row: 0, repeat: 1 });
  const full = table([['LF', 'between', 1, 'photograph', 81, 50]]);
  expect(entryOf(full, reading, answer)).toMatchObject({ row: -1, repeat: 2 });
});

test('entered again, it goes where it went', () => {
  const sheet = table([
    ['LF', 'between', 1, 'photograph', 81, 50],
    ['LF', 'between', 2, 'photograph', 82, 50],
  ]);
  const again = { ...reading, entered: { repeat: 2, values: { toe_length_mm: 82 } } };
  expect(entryOf(sheet, again, answer)).toMatchObject({ row: 1, repeat: 2 });
});

test('a drawn foot is entered as what it is, and never beside what was photographed', () => {
  const sheet = table([['LF', 'between', 1, 'photograph', Number.NaN, 50]]);
  const entry = entryOf(sheet, { ...reading, invented: true }, answer)!;
  expect(entry).toMatchObject({ row: -1, repeat: 2, cells: { method: 'drawn picture' } });
});

test('without a horse, a day or a measure there is nothing to enter', () => {
  const of = (subject: Partial<KeptReading['subject']>) => ({
    ...reading,
    subject: { ...reading.subject, ...subject },
  });
  expect(entryOf(table([]), of({ horse: ' ' }), answer)).toBeUndefined();
  expect(entryOf(table([]), of({ date: '' }), answer)).toBeUndefined();
  expect(entryOf(table([]), reading, { ...answer, measures: answer.measures.slice(1, 2) })).toBeUndefined();
});

test('how square the camera stood is how well the foot was seen; without a board nothing is said', () => {
  const quality = (state: 'square' | 'oblique' | undefined) =>
    entryOf(table([]), reading, { ...answer, squareness: state && { state, words: '' } })!.cells.view_quality;
  expect([quality('square'), quality('oblique'), quality(undefined)]).toEqual(['good', 'poor', undefined]);
});
