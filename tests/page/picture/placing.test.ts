import { expect, test } from 'vitest';
import { back, begin, choose, forth, nextPoint, put, skip, takeOff } from '../../../lib/page/picture/placing.ts';
import { slotsOf } from '../../../lib/page/picture/slots.ts';
import type { PictureLandmark, Spot } from '../../../lib/page/picture/work.ts';

const landmark = (code: string, more: Partial<PictureLandmark> = {}): PictureLandmark => ({
  ...{ code, title: `The ${code}`, where: '', optional: false, many: false, least: 1, of: 'foot' },
  ...more,
});
const landmarks = [
  landmark('bar_start', { of: 'scale' }),
  landmark('ground', { many: true, least: 2, optional: true }),
  landmark('toe'),
  landmark('outline', { many: true, least: 10, optional: true }),
];
const slots = (spots: ReadonlyMap<string, Spot> = new Map()) => slotsOf(landmarks, spots);
const [start, ground, ground2, toe] = slots();
const row = (code: string, count: number) =>
  new Map(Array.from({ length: count }, (_, i): [string, Spot] => [i === 0 ? code : `${code} ${i + 1}`, [i, i]]));

test('a landmark is one slot; of one with many there are as many as are needed', () => {
  expect(slots().map(({ name }) => name)).toEqual([
    ...['bar_start', 'ground', 'ground 2', 'toe', 'outline'],
    ...Array.from({ length: 9 }, (_, i) => `outline ${i + 2}`),
  ]);
  expect(ground2.title).toBe('The ground, 2');
});

test('once the needed points are there one more is offered, and asked for only along a whole outline', () => {
  const grounds = slots(row('ground', 2)).filter(({ code }) => code === 'ground');
  expect(grounds.map(({ name, extra, asked }) => [name, extra, asked])).toEqual([
    ['ground', false, true],
    ['ground 2', false, true],
    ['ground 3', true, false],
  ]);
  const last = slots(row('outline', 12)).at(-1)!;
  expect([last.name, last.extra, last.asked]).toEqual(['outline 13', true, true]);
});

test('points come in order, and one that is left out is passed over, with all that is still wanted of it', () => {
  let placing = begin();
  expect(nextPoint(slots(), placing)?.name).toBe('bar_start');
  placing = put(placing, start, [1, 2]);
  expect(nextPoint(slots(placing.spots), placing)?.name).toBe('ground');
  placing = put(placing, ground, [3, 4]);
  placing = skip(placing, ground2);
  expect(nextPoint(slots(placing.spots), placing)?.name).toBe('toe');
  expect([...placing.skipped]).toEqual(['ground']);
  expect(placing.spots.get('ground')).toEqual([3, 4]);
});

test('a point taken in hand comes first; one that is placed already leaves the turn to the next', () => {
  const placing = put(begin(), start, [1, 2]);
  expect(nextPoint(slots(), choose(placing, 'toe'))?.name).toBe('toe');
  expect(nextPoint(slots(), choose(placing, 'bar_start'))?.name).toBe('ground');
});

test('when the rest is placed what was passed over is asked for again', () => {
  const two = slotsOf([landmark('a'), landmark('b')], new Map());
  expect(nextPoint(two, put(begin(), two[1], [0, 0]))?.name).toBe('a');
});

test('when all is placed or left out there is no next', () => {
  const one = slotsOf([landmark('a')], new Map());
  expect(nextPoint(one, put(begin(), one[0], [0, 0]))).toBeUndefined();
  expect(nextPoint(one, skip(begin(), one[0]))).toBeUndefined();
});

test('every change is taken back and done again, in words', () => {
  const placed = put(put(begin(), start, [1, 2]), toe, [5, 6]);
  const moved = put(placed, toe, [7, 8]);
  expect(moved.past.map(({ words }) => words)).toEqual(['placing The bar_start', 'placing The toe', 'moving The toe']);
  const once = back(moved);
  expect(once.spots.get('toe')).toEqual([5, 6]);
  expect(back(once).spots.has('toe')).toBe(false);
  expect(back(once).chosen).toBe('');
  expect(forth(forth(back(once))).spots).toEqual(moved.spots);
  expect(forth(once).past.at(-1)?.words).toBe('moving The toe');
  expect(back(begin())).toEqual(begin());
  expect(forth(begin())).toEqual(begin());
});

test('a new change leaves nothing to do again', () => {
  expect(put(back(put(begin(), toe, [1, 1])), start, [0, 0]).future).toEqual([]);
});

test('one drag is one change, two drags are two', () => {
  let placing = put(begin(), toe, [0, 0]);
  for (let step = 1; step <= 5; step++) placing = put(placing, toe, [step, 0], 'drag 1');
  placing = put(placing, toe, [9, 9], 'drag 2');
  expect(placing.past.length).toBe(3);
  expect(back(placing).spots.get('toe')).toEqual([5, 0]);
  expect(back(back(placing)).spots.get('toe')).toEqual([0, 0]);
});

test('after undoing, a stroke of the same name is a change of its own', () => {
  const dragged = put(put(begin(), toe, [0, 0]), toe, [1, 0], 'keys toe');
  const again = put(forth(back(dragged)), toe, [2, 0], 'keys toe');
  expect(back(again).spots.get('toe')).toEqual([1, 0]);
});

test('a point is taken off, or wanted after all, and is then the next', () => {
  const off = takeOff(put(begin(), toe, [0, 0]), toe);
  expect(off.spots.has('toe')).toBe(false);
  expect(nextPoint(slots(), off)?.name).toBe('toe');
  const wanted = takeOff(skip(begin(), ground), ground);
  expect(wanted.skipped.size).toBe(0);
  expect(wanted.past.at(-1)?.words).toBe('wanting The ground, 1');
});
