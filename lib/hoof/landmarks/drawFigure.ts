import type { Line } from '../../geometry/line.ts';
import type { Matrix } from '../../geometry/matrix.ts';
import type { Point } from '../../geometry/points.ts';
import { transformPoint } from '../../geometry/transformPoints.ts';
import type { Figure } from './figure.ts';
import { away, between } from './groundLine.ts';
import type { PictureMark } from './pictureMeasures.ts';

/** A figure of the plane as it lies in the picture. */
export function drawFigure(figure: Figure, toPicture: Matrix, of: string, label: string): PictureMark {
  const seen = (point: Point) => transformPoint(toPicture, point);
  switch (figure.kind) {
    case 'length':
      return { kind: 'length', of, from: seen(figure.from), to: seen(figure.to), label };
    case 'angle':
      return { kind: 'angle', of, corner: seen(figure.corner), from: seen(figure.from), to: seen(figure.to), label };
    case 'outline':
      return { kind: 'outline', of, points: figure.points.map(seen), label };
  }
}

/** The ground, from before the first of the foot's points to behind the last. */
export function drawGround(ground: Line, points: readonly Point[], toPicture: Matrix): PictureMark {
  const along = points.map((point) => {
    const [x, y] = between(ground.point, point);
    return x * ground.direction[0] + y * ground.direction[1];
  });
  const [first, last] = [Math.min(...along), Math.max(...along)];
  const margin = 0.1 * (last - first);
  return {
    kind: 'line',
    of: 'ground',
    from: transformPoint(toPicture, away(ground.point, ground.direction, first - margin)),
    to: transformPoint(toPicture, away(ground.point, ground.direction, last + margin)),
  };
}
