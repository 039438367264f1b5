import { say } from '../words/say.ts';
import { type DrawingOptions, isKnown, settled } from './drawingOptions.ts';
import type { FootShape } from './footShape.ts';
import { footWords } from './footWords.ts';
import { atHeight, levelMarks, outsideTo } from './levelMarks.ts';
import { lines, notMeasured, type Pen, type Point, pen, picture, straight } from './pen.ts';
import { type SvgNode, svg } from './svg.ts';
import { tissues } from './theme.ts';

/**
 * The foot from in front, the hairline tilted by the wall heights measured inside and outside, at true scale; where
 * that is too little to see, an enlarged tick stands beside it and says so. Looking at the horse from in front, a left
 * foot has its inside to the left.
 * @param foot     heights and width in mm, wall slopes in degrees (80 is drawn where a slope was not measured)
 * @param options  scale in mm a px, and the reader's units
 * @returns an `svg` whose size in px is its size in mm over the scale; it grows with the foot, the scale never changes
 */
export function footFront(foot: FootShape, options: DrawingOptions = {}): SvgNode {
  const settings = settled(options);
  const { mmPerPx, units, small } = settings;
  const front = frontOf(foot);
  const across = Math.max(150, 2 * front.half + 20) / mmPerPx + (small ? 0 : 80);
  const above = Math.max(112, front.high + 52);
  const draw = pen(mmPerPx, [across / 2, above / mmPerPx], outsideTo(foot, 'front'));
  const parts = ['medialWall', 'lateralWall', 'medialWallAngle', 'lateralWallAngle', 'width'] as const;
  return picture(
    [across, (above + 3) / mmPerPx + (small ? 0 : 18)],
    { kind: 'foot-front', ...footWords(foot, say`from the front`, parts, units) },
    ...frontBody(foot, front, draw),
    ...levelMarks(foot, front, draw, settings),
    ...(small ? [] : missing(foot, front, draw)),
  );
}

/** Landmarks of the front view in mm. */
export interface Front {
  readonly half: number;
  readonly inside: Point | undefined;
  readonly outside: Point | undefined;
  /** Where the hairline runs in the drawing, measured or not. */
  readonly insideTop: Point;
  readonly outsideTop: Point;
  /** The hairline's height at the toe. */
  readonly high: number;
}

export function frontOf(foot: FootShape): Front {
  const half = (isKnown(foot.width) ? foot.width : 125) / 2;
  const standIn = [foot.medialWall, foot.lateralWall].find(isKnown) ?? 52;
  const lean = (height: number, slope: number | undefined) =>
    height / Math.tan(((isKnown(slope) ? slope : 80) * Math.PI) / 180);
  const [medial, lateral] = [foot.medialWall, foot.lateralWall].map((height) => (isKnown(height) ? height : standIn));
  const insideX = lean(medial, foot.medialWallAngle) - half;
  const outsideX = half - lean(lateral, foot.lateralWallAngle);
  const mean = (medial + lateral) / 2;
  const toe =
    isKnown(foot.toeLength) && isKnown(foot.toeAngle)
      ? foot.toeLength * Math.sin((foot.toeAngle * Math.PI) / 180)
      : mean + 14;
  return {
    half,
    inside: atHeight(insideX, foot.medialWall),
    outside: atHeight(outsideX, foot.lateralWall),
    insideTop: [insideX, medial],
    outsideTop: [outsideX, lateral],
    high: Math.max(toe, mean),
  };
}

/** Horn and skin; dashed where a height is missing. */
export function frontBody(foot: FootShape, { half, insideTop, outsideTop, high }: Front, draw: Pen): SvgNode[] {
  // A cubic's middle is an eighth of its ends and three eighths of its controls: so it passes the toe's height.
  const control = (8 * high - insideTop[1] - outsideTop[1]) / 6;
  const hairline = draw.path`C${[insideTop[0] * 0.62, control]} ${[outsideTop[0] * 0.62, control]} ${outsideTop}`;
  const neckHeight = high + 46;
  const [neckIn, neckOut]: Point[] = [
    [insideTop[0] * 0.66, neckHeight],
    [outsideTop[0] * 0.66, neckHeight],
  ];
  const [lowIn, lowOut]: Point[] = [
    [insideTop[0] * 0.93, insideTop[1] + 14],
    [outsideTop[0] * 0.93, outsideTop[1] + 14],
  ];
  const [highIn, highOut]: Point[] = [
    [neckIn[0], neckHeight - 26],
    [neckOut[0], neckHeight - 26],
  ];
  const up = draw.path`M${insideTop} C${lowIn} ${highIn} ${neckIn}`;
  const down = draw.path`C${highOut} ${lowOut} ${outsideTop}`;
  const walls: [Point, Point, boolean][] = [
    [[-half, 0], insideTop, isKnown(foot.medialWall)],
    [[half, 0], outsideTop, isKnown(foot.lateralWall)],
  ];
  const complete = isKnown(foot.width) && walls.every((wall) => wall[2]);
  const horn = draw.path`M${[-half, 0]} L${insideTop}` + hairline + draw.path`L${[half, 0]} Z`;
  return [
    svg('path', { class: 'skin', d: up + draw.path`L${neckOut}` + down, fill: tissues.skin }),
    svg('path', { d: up + draw.path`M${neckOut}` + down, ...lines.fine }),
    ...(complete
      ? [svg('path', { class: 'horn', d: horn, fill: tissues.horn, ...lines.outline })]
      : [
          svg('path', { class: 'missing', d: draw.path`M${insideTop}` + hairline, ...lines.missing }),
          ...walls.map(([low, top, known]) =>
            straight(
              draw,
              low,
              top,
              known && isKnown(foot.width) ? lines.outline : { class: 'missing', ...lines.missing },
            ),
          ),
        ]),
  ];
}

function missing(foot: FootShape, { half, high }: Front, draw: Pen): SvgNode[] {
  const middle = (height: number): Point => draw.at([0, height]);
  const parts: SvgNode[] = [];
  const inside = isKnown(foot.medialWall);
  const outside = isKnown(foot.lateralWall);
  if (!inside && !outside) parts.push(notMeasured(say`wall heights`, middle(high * 0.45)));
  else if (!inside || !outside) {
    const [x, y] = draw.at([inside ? half : -half, high * 0.4]);
    const leftEdge = (inside ? half : -half) * draw.flip < 0;
    parts.push(notMeasured(inside ? say`outside` : say`inside`, [x, y], leftEdge ? 'start' : 'end'));
  }
  if (!isKnown(foot.width)) parts.push(notMeasured(say`width`, middle(high * 0.15)));
  return parts;
}
