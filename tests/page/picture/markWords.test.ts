import { expect, test } from 'vitest';
import { RADIUS, wordsOf } from '../../../lib/page/picture/markWords.ts';
import type { PictureMark, Spot } from '../../../lib/page/picture/work.ts';

const same = (spot: Spot) => spot;
const foot: readonly Spot[] = [
  [100, 300],
  [300, 300],
  [150, 150],
];
const length = (from: Spot, to: Spot): PictureMark => ({ kind: 'length', of: 'toe', from, to });
const said = () => '82.0 ± 1.5 mm';

test('a length is said beside its line, on the side away from the foot', () => {
  const [{ at, anchor, text }] = wordsOf([length([100, 300], [100, 200])], said, same, foot);
  expect(text).toBe('82.0 ± 1.5 mm');
  expect(at).toEqual([expect.closeTo(86, 6), expect.closeTo(250, 6)]);
  expect(anchor).toBe('end');
  expect(wordsOf([length([320, 300], [320, 200])], said, same, foot)[0].anchor).toBe('start');
  expect(wordsOf([length([100, 320], [300, 320])], said, same, foot)[0]).toMatchObject({ anchor: 'middle' });
});

test('words that would lie on others go elsewhere', () => {
  const line = length([100, 300], [100, 200]);
  const places = wordsOf([line, line, line], said, same, foot).map(({ at }) => at.map(Math.round).join());
  expect(new Set(places).size).toBe(3);
});

test('an angle is said between its legs, beyond its arc', () => {
  const angle: PictureMark = { kind: 'angle', of: 'toe', corner: [0, 0], from: [100, 0], to: [0, -100] };
  const [{ at, anchor }] = wordsOf([angle], said, same, foot);
  expect(at[0]).toBeCloseTo((RADIUS + 8) * Math.SQRT1_2, 6);
  expect(at[1]).toBeCloseTo(-(RADIUS + 8) * Math.SQRT1_2, 6);
  expect(anchor).toBe('start');
});

test('what has no words is not said', () => {
  expect(wordsOf([length([0, 0], [9, 9])], () => undefined, same, foot)).toEqual([]);
});
