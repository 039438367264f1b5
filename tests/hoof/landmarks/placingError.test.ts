import { expect, it } from 'vitest';
import { placingError } from '../../../lib/hoof/landmarks/placingError.ts';
import { random } from '../../../lib/stats/random.ts';
import { flatPoints } from './pictures.ts';

const points = flatPoints('side', 'LF');

it('two placings of one point: the deviation of two numbers, each coordinate on its own', () => {
  const [toe] = points.filter(({ point }) => point === 'toe_ground');
  const again = { ...toe, x_px: toe.x_px + 4, y_px: toe.y_px - 4 };
  const found = placingError([[toe], [again]]);
  expect(found.value_px).toBeCloseTo(4 / Math.SQRT2, 9);
  expect(found).toMatchObject({ degrees: 2, enough: false });
});

it('from many rounds comes near the noise that was put in, and is then enough', () => {
  const { normal } = random(5);
  const rounds = Array.from({ length: 40 }, () =>
    points.map((row) => ({ ...row, x_px: row.x_px + 2.5 * normal(), y_px: row.y_px + 2.5 * normal() })),
  );
  const { value_px, degrees, enough } = placingError(rounds);
  expect(value_px).toBeGreaterThan(2.3);
  expect(value_px).toBeLessThan(2.7);
  // Six points of the side view are placed once each: two coordinates, 39 rounds beyond the first.
  expect(degrees).toBe(6 * 2 * 39);
  expect(enough).toBe(true);
});

it('the same point on another picture, and points along a line, say nothing', () => {
  const other = points.map((row) => ({ ...row, photo: 'another', x_px: row.x_px + 9 }));
  const along = points.filter(({ point }) => point === 'toe_wall');
  expect(placingError([points, other])).toMatchObject({ value_px: NaN, degrees: 0, enough: false });
  expect(placingError([along, along]).degrees).toBe(0);
});
