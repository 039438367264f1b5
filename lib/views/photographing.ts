import { say } from '../words/say.ts';
import { print } from './footBelow.ts';
import { rearBody, rearOf } from './footRear.ts';
import type { FootShape } from './footShape.ts';
import { profileOf, sideBody } from './footSide.ts';
import { lines, type Pen, type Point, pen, picture, straight, words } from './pen.ts';
import { type SvgNode, svg } from './svg.ts';
import { grounds, inks, roles, strokes } from './theme.ts';

/** A foot of round numbers, drawn and never measured. */
const foot: FootShape = {
  limb: 'LF',
  ...{ width: 128, length: 130, heelWidth: 86, frogWidth: 54, frogLength: 88, medialHeel: 36, lateralHeel: 36 },
  ...{ toeAngle: 52, heelAngle: 50, pasternAngle: 52, toeLength: 82, heelLength: 42 },
};
const profile = profileOf(foot);
const board = 60;

/** A schematic of how a foot is photographed: what the camera sees, and where it is. */
export interface Photographing {
  readonly sees: SvgNode;
  readonly stands: SvgNode;
}

/** From behind: the board upright beside the heels, the camera level with them. */
export function photographRear(): Photographing {
  const seen = pen(1, [78, 112]);
  const side = pen(1, [22, 132]);
  const lens: Point = [290, 34];
  const back = profile.heel[0] + 4;
  return {
    sees: picture(
      [226, 130],
      {
        kind: 'photograph-rear',
        name: say`What the camera sees from behind`,
        description: say`Both heels of a left fore, and beside them, upright on the ground, a board with four marked corners.`,
      },
      ...rearBody(foot, rearOf(foot), seen),
      ...boardFacing(seen, [76, 0]),
      straight(seen, [-74, 0], [144, 0], lines.ground),
    ),
    stands: picture(
      [340, 170],
      {
        kind: 'photograph-rear',
        name: say`Where the camera stands, from behind`,
        description: say`The same foot from the side: the board stands at the heels, the camera behind them, two metres away, its line of sight level and at their height.`,
      },
      straight(side, [-14, 0], [314, 0], lines.ground),
      ...sideBody(foot, profile, side),
      straight(side, [back, 0], [back, board], { stroke: roles.measured, 'stroke-width': 2 * strokes.strong }),
      ...sight(side, lens, [back, lens[1]]),
      ...camera(side, lens, 'left'),
      words(say`two metres, zoomed in`, side.at([back + 98, lens[1] - 20])),
      words(say`board at the heels`, side.at([back + 6, board + 8]), 'start', { fill: inks.ink }),
      words(say`level, at the height of the heels`, side.at([314, -22]), 'end', { fill: inks.ink }),
    ),
  };
}

/** From below: the board in the plane of the sole, the camera square above it. */
export function photographBelow(): Photographing {
  const seen = pen(1, [78, 140]);
  const over = overturned([22, 116]);
  // Just behind the frog's tip.
  const aim = 0.42 * profile.heel[0];
  const lens: Point = [aim, -92];
  const behind = profile.heel[0] + 8;
  return {
    sees: picture(
      [226, 172],
      {
        kind: 'photograph-below',
        name: say`What the camera sees from below`,
        description: say`The whole sole of a left fore, toe up, and beside it a board with four marked corners.`,
      },
      ...print(foot, seen),
      ...boardFacing(seen, [76, 34]),
    ),
    stands: picture(
      [340, 246],
      {
        kind: 'photograph-below',
        name: say`Where the camera is held, from below`,
        description: say`The same foot from the side, held up with the sole on top: the board lies in the plane of the sole, the camera square above the place just behind the frog’s tip.`,
      },
      ...sideBody(foot, profile, over),
      straight(over, [behind, 0], [behind + board, 0], { stroke: roles.measured, 'stroke-width': 2 * strokes.strong }),
      ...sight(over, lens, [aim, 0]),
      ...camera(over, lens, 'down'),
      words(say`square above the sole`, over.at([aim + 20, -58]), 'start', { fill: inks.ink }),
      words(say`board level with the sole`, over.at([behind, -12]), 'start', { fill: inks.ink }),
      words(say`held by the fetlock`, over.at([behind + 26, 84]), 'start', { fill: inks.ink }),
    ),
  };
}

/** A pen whose drawings stand on their heads. */
function overturned(origin: Point): Pen {
  const upright = pen(1, origin);
  const turned = ([x, y]: Point): Point => [x, -y];
  return {
    ...upright,
    at: (point) => upright.at(turned(point)),
    path: (strings, ...points) => upright.path(strings, ...points.map(turned)),
  };
}

/** A board with four marked corners as the camera sees it, from its lower left. */
function boardFacing(draw: Pen, [x, y]: Point): SvgNode[] {
  const corners: Point[] = [
    [x, y],
    [x + board, y],
    [x + board, y + board],
    [x, y + board],
  ];
  const inner = corners.map(([cx, cy]): Point => [cx + (cx === x ? 7 : -7), cy + (cy === y ? 7 : -7)]);
  return [
    svg('path', {
      class: 'board',
      d: draw.path`M${corners[0]} L${corners[1]} L${corners[2]} L${corners[3]} Z`,
      fill: grounds.card,
      ...lines.measured,
    }),
    ...inner.map((at) => {
      const [cx, cy] = draw.at(at);
      return svg('circle', { class: 'corner', cx, cy, r: 3, fill: roles.measured });
    }),
  ];
}

/** The line of sight; two strokes across it say that the way is longer than it is drawn. */
function sight(draw: Pen, from: Point, to: Point): SvgNode[] {
  const level = from[1] === to[1];
  const [x, y]: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const stroke = { stroke: inks.soft, 'stroke-width': strokes.line };
  return [
    straight(draw, from, to, { class: 'sight', ...lines.level }),
    ...[-3, 3].map((off) =>
      level
        ? straight(draw, [x + off - 2, y - 5], [x + off + 2, y + 5], stroke)
        : straight(draw, [x - 5, y + off - 2], [x + 5, y + off + 2], stroke),
    ),
  ];
}

/** A camera whose lens is at a point and looks to the left or down. */
function camera(draw: Pen, at: Point, looks: 'left' | 'down'): SvgNode[] {
  const [x, y] = draw.at(at);
  const body =
    looks === 'left' ? { x: x + 5, y: y - 11, width: 16, height: 22 } : { x: x - 11, y: y - 21, width: 22, height: 16 };
  const lens = looks === 'left' ? { x, y: y - 5, width: 6, height: 10 } : { x: x - 5, y: y - 6, width: 10, height: 6 };
  return [svg('rect', { class: 'camera', ...body, rx: 2, fill: inks.soft }), svg('rect', { ...lens, fill: inks.ink })];
}
