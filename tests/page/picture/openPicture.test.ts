import { expect, test } from 'vitest';
import { ownName } from '../../../lib/page/picture/openPicture.ts';
import { levelFor } from '../../../lib/page/picture/pyramid.ts';

test('a picture is called by its file, without its ending', () => {
  expect(ownName('IMG_0412.JPG', [])).toBe('IMG_0412');
  expect(ownName('left fore 9.3.jpeg', [])).toBe('left fore 9.3');
  expect(ownName('.jpg', [])).toBe('picture');
});

test('a second picture of one name gets a number', () => {
  expect(ownName('image.jpg', ['image'])).toBe('image 2');
  expect(ownName('image.jpg', ['image', 'image 2'])).toBe('image 3');
  expect(ownName('__proto__.png', [])).toBe('__proto__');
});

test('a sight is drawn from the smallest level that has a px for each of the screen', () => {
  expect([2, 1, 0.6, 0.5, 0.3, 0.25, 0.01].map((scale) => levelFor(scale, 4))).toEqual([0, 0, 0, 1, 1, 2, 3]);
  expect(levelFor(0.01, 1)).toBe(0);
});
