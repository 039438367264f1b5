import { degree } from '../../geometry/degrees.ts';
import { inverse } from '../../geometry/matrix.ts';
import { about, type Point } from '../../geometry/points.ts';
import { transformPoints } from '../../geometry/transformPoints.ts';
import { middleOf, type Situation, unknownSquareness_deg } from './situation.ts';

/** Where the points were if the camera was turned and raised so or so, with weights that add up to 1. */
export function obliqueWays({
  plane,
  corners,
  inPlane,
  distance_mm,
}: Situation): { points: Point[]; weight: number }[] {
  if (plane.known === 'shape') return [];
  // Nodes and weights of Gauss and Hermite: exact for polynomials of a normal variable up to the fifth power.
  const nodes = [-Math.sqrt(3), 0, Math.sqrt(3)].map((node) => node * unknownSquareness_deg * degree);
  const weights = [1 / 6, 2 / 3, 1 / 6];
  const middle = middleOf(inPlane);
  const bar = about(middle, transformPoints(plane.toPlane, corners));
  const foot = about(middle, inPlane);
  // Without a size there is no distance either, and what is further off isn't smaller.
  const near = plane.known === 'size' ? 1 / distance_mm : 0;
  return nodes.flatMap((turned, i) =>
    nodes.map((raised, j) => {
      const [sinT, sinR, cosT, cosR] = [Math.sin(turned), Math.sin(raised), Math.cos(turned), Math.cos(raised)];
      const square = inverse([
        [cosT, 0, 0],
        [sinT * sinR, cosR, 0],
        [near * sinT * cosR, -near * sinR, 1],
      ]);
      const size = bar.length === 2 ? length(bar) / length(transformPoints(square, bar)) : 1;
      const points = transformPoints(square, foot).map(([x, y]): Point => [size * x, size * y]);
      return { points, weight: weights[i] * weights[j] };
    }),
  );
}

function length([from, to]: readonly Point[]): number {
  return Math.hypot(to[0] - from[0], to[1] - from[1]);
}
