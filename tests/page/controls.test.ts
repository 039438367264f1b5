import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addressOf, chosen, fromHash, toHash } from '../../lib/page/controls.ts';

const value = fc.oneof(
  fc.string(),
  fc.constantFrom('5', 'true', 'null', '["a"]', '"x"', '', '1e3'),
  fc.boolean(),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((number) => number + 0),
  fc.array(fc.string()),
);

test('fromHash(toHash(controls)) gives the controls back, with their kinds and under any name', () => {
  fc.assert(
    fc.property(fc.dictionary(fc.oneof(fc.string(), fc.constant('__proto__')), value), (controls) => {
      const back = fromHash(`#${toHash(controls)}`);
      expect(Object.entries(back)).toEqual(Object.entries(controls));
    }),
  );
});

test('plain words stay plain in the address', () => {
  expect(addressOf('level', { limb: 'LF', weeks: 6 })).toBe('level.html#limb=LF&weeks=6');
  expect(addressOf('herd')).toBe('herd.html');
});

test('chosen(controls, name, first) falls back to the first value where another kind of value was typed by hand', () => {
  const controls = fromHash('#weeks=six&limbs=LF&horse=Bramble&shod=true');
  expect(chosen(controls, 'weeks', 6)).toBe(6);
  expect(chosen(controls, 'limbs', ['RF'])).toEqual(['RF']);
  expect(chosen(controls, 'horse', '')).toBe('Bramble');
  expect(chosen(controls, 'shod', false)).toBe(true);
  expect(chosen(controls, 'constructor', 'none')).toBe('none');
});
