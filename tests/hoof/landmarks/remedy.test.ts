import { expect, it } from 'vitest';
import type { ErrorParts } from '../../../lib/hoof/landmarks/pictureMeasures.ts';
import { remedyFor } from '../../../lib/hoof/landmarks/remedy.ts';

const small: ErrorParts = { placing: 0.1, scale: 0.1, squareness: 0.1, depth: 0.1 };
const square = { tilt_deg: 1, turn_deg: 2, off_deg: 3, words: '', usable: true };

it('the remedy is about the largest part of the error, the first of equal ones', () => {
  const remedies = (['placing', 'scale', 'squareness', 'depth'] as const).map((part) =>
    remedyFor({ ...small, [part]: 2 }, undefined, 'side'),
  );
  expect(remedies).toEqual([
    'Let the foot fill the picture, brush or clip the hair off the hairline, and place the points again under the magnifier',
    'Use a larger board or a longer bar, flat in the plane of the foot, and place its points under the magnifier',
    'Put a board with four corners in the plane of the foot instead, or hold the camera square at the height of the foot',
    'Place points on the ground in the plane of the board, have the foot square under the horse, and take the picture from further off',
  ]);
  expect(remedyFor(small, undefined, 'side')).toBe(remedies[0]);
});

it('from below there is no hair, and no ground', () => {
  expect(remedyFor({ ...small, placing: 2 }, undefined, 'below')).toBe(
    'Let the foot fill the picture, clean the sole, and place the points again under the magnifier',
  );
  expect(remedyFor({ ...small, depth: 2 }, square, 'below')).toBe(
    'Lay the board on the sole, and take the picture from further off',
  );
});

it('what stands off the plane is best helped by a camera that is square, where it was more than 3 degrees off', () => {
  const depth = { ...small, depth: 2 };
  expect(remedyFor(depth, square, 'front')).toMatch(/^Place points on the ground/);
  expect(remedyFor(depth, { ...square, off_deg: 3.1 }, 'front')).toMatch(/^Step to the right/);
  expect(remedyFor({ ...small, scale: 2 }, { ...square, off_deg: 9 }, 'front')).toMatch(/^Use a larger board/);
});
