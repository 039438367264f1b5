import { type GroundFrame, lineByTotalLeastSquares, type PictureReading, type Spot } from '../../lib/index.ts';

/** Where two pictures of one view are laid on each other: in the middle of these landmarks. */
const anchors: Readonly<Record<string, readonly string[]>> = {
  side: ['toe_ground'],
  front: ['medial_ground', 'lateral_ground'],
  rear: ['medial_heel_ground', 'lateral_heel_ground'],
  below: ['medial_heel', 'lateral_heel'],
};

/** From below no ground is seen; the line from heel to heel takes its place. */
const level: Readonly<Record<string, readonly string[]>> = { below: ['medial_heel', 'lateral_heel'] };

/**
 * How the ground lies in a picture and how large a millimetre is there, as far as its points tell.
 * @returns `undefined` where anchor or ground are not placed; `pxPerMm` is NaN without a scale
 */
export function pictureFrame({ subject, size, points }: PictureReading): GroundFrame | undefined {
  const of = (codes: readonly string[]) =>
    [...points].filter(([slot]) => codes.includes(slot.split(' ')[0])).map(([, spot]) => spot);
  const wanted = anchors[subject.view] ?? [];
  const anchor = of(wanted);
  const ground = lineByTotalLeastSquares(of(level[subject.view] ?? ['ground']).map(([x, y]): Spot => [x, -y]));
  if (anchor.length < wanted.length || anchor.length === 0 || !('angle' in ground)) return undefined;
  const { angle } = ground;
  return { anchor: middle(anchor), turned: angle > 90 ? 180 - angle : -angle, pxPerMm: pxPerMm({ size, points }) };
}

function pxPerMm({ size, points }: Pick<PictureReading, 'size' | 'points'>): number {
  const apart = (a: string, b: string) => {
    const [from, to] = [points.get(a), points.get(b)];
    return from && to ? Math.hypot(from[0] - to[0], from[1] - to[1]) : Number.NaN;
  };
  switch (size.kind) {
    case 'bar':
      return apart('bar_start', 'bar_end') / size.length;
    case 'board': {
      const across = apart('board_lower_left', 'board_lower_right') + apart('board_upper_left', 'board_upper_right');
      const up = apart('board_lower_left', 'board_upper_left') + apart('board_lower_right', 'board_upper_right');
      return (across / size.width + up / size.height) / 4;
    }
    case 'none':
      return Number.NaN;
  }
}

function middle(spots: readonly Spot[]): Spot {
  const sum = (at: 0 | 1) => spots.reduce((total, spot) => total + spot[at], 0) / spots.length;
  return [sum(0), sum(1)];
}
