import { degree } from '../../geometry/degrees.ts';
import type { Point } from '../../geometry/points.ts';
import { transformPoint } from '../../geometry/transformPoints.ts';
import type { PicturePlane } from './picturePlane.ts';
import { sightOf } from './sight.ts';
import { middleOf, type Situation, unknownSquareness_deg } from './situation.ts';
import { landmarkView, planeDepth_mm, sharedDepths } from './views.ts';

/** Pairs of point lists: what may lie off the plane moved nearer and further, alone or with what it moves with. */
export function depthWays(
  situation: Situation,
  planes: readonly (readonly PicturePlane[])[],
): { readonly of: readonly number[]; readonly pair: readonly (readonly Point[])[] }[] {
  const { view, codes, plane, inPlane: points, depth } = situation;
  if (!depth || plane.known === 'nothing') return [];
  const { landmarks } = landmarkView(view);
  const places = codes.map((_, i) => i);
  const sources = [
    ...places.map((i) => ({ of: [i], by: landmarks.find(({ code }) => code === codes[i])?.depth_mm ?? 0 })),
    ...sharedDepths
      .filter((shared) => shared.view === view)
      .map((shared) => ({ of: places.filter((i) => shared.codes.includes(codes[i])), by: shared.depth_mm })),
    { of: places, by: planeDepth_mm },
  ];
  const middle = middleOf(points);
  const leans = leansOf(situation, middle, planes);
  return sources.flatMap(({ of, by }) =>
    leans.map(([across, up, grown]) => {
      const nearer = (sign: number) =>
        points.map(([x, y], i): Point => {
          if (!of.includes(i)) return [x, y];
          const far = sign * by;
          return [x + far * (across + (x - middle[0]) * grown), y + far * (up + (y - middle[1]) * grown)];
        });
      return { of, pair: [nearer(1), nearer(-1)] };
    }),
  );
}

/**
 * How much the line of sight leans, across and up, and by what share a thing one mm nearer is seen larger: as the picture
 * tells it, its own error counted in; or as it may be, one way at a time, where the picture doesn't tell.
 */
function leansOf(
  { plane, sight, distance_mm, camera }: Situation,
  middle: Point,
  planes: readonly (readonly PicturePlane[])[],
): (readonly [number, number, number])[] {
  if (sight === undefined) {
    const unknown = Math.tan(unknownSquareness_deg * degree);
    return [
      [unknown, 0, 0],
      [0, unknown, 0],
      [0, 0, 1 / distance_mm],
    ];
  }
  const at = transformPoint(plane.toPicture, middle);
  // The picture tells the square of a slope with an error that is alike everywhere; near square the slope itself jumps.
  const squares = sight.slope.map((slope) => slope ** 2);
  const errors = [0, 0];
  for (const pair of planes)
    for (const other of pair) {
      const { slope } = sightOf(other.toPicture, transformPoint(other.toPlane, at), { camera, distance_mm });
      for (const c of [0, 1]) errors[c] += (slope[c] ** 2 - squares[c]) ** 2 / 2;
    }
  const [across, up] = sight.slope.map(
    (slope, c) => (slope < 0 ? -1 : 1) * Math.sqrt(Math.hypot(squares[c], Math.sqrt(errors[c]))),
  );
  return [[across, up, 1 / sight.distance_mm]];
}
