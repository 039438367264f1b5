import { type Side, sideOf } from '../hoof/limbs.ts';
import { formatQuantity } from '../sheet/display.ts';
import { say } from '../words/say.ts';
import { isKnown, type Settled } from './drawingOptions.ts';
import type { FootShape } from './footShape.ts';
import { dot, lines, type Pen, type Point, straight, words } from './pen.ts';
import type { SvgNode } from './svg.ts';
import { inks, roles, strokes } from './theme.ts';

/** The view across the foot: x is outwards from the horse's midline, y up from the ground, in mm. */
export interface LevelView {
  /** Half the width that the ground line spans. */
  readonly half: number;
  /** Where the hairline was measured, inside and outside; undefined where it was not. */
  readonly inside: Point | undefined;
  readonly outside: Point | undefined;
}

/** A difference that would be drawn smaller than this many px gets an enlarged tick as well, and says by how much. */
const tiny = 8;
const enlarged = 5;
/** Shorter than this many px even an enlarged tick is no tick; the number stands alone. */
const invisible = 2.5;

/** Which way the outside of a foot lies in a drawing seen from that end. */
export function outsideTo(foot: FootShape, seenFrom: 'front' | 'rear'): 1 | -1 {
  const side: Side = seenFrom === 'rear' ? 'left' : 'right';
  return sideOf(foot.limb) === side ? -1 : 1;
}

/** Ground, hairline at true scale, what level would be, and the difference as a tick with its number. */
export function levelMarks(foot: FootShape, view: LevelView, draw: Pen, { units, small }: Settled): SvgNode[] {
  const { half, inside, outside } = view;
  const parts = [straight(draw, [-half - 12, 0], [half + 12, 0], { class: 'ground', ...lines.ground })];
  if (inside && outside) {
    const low = Math.min(inside[1], outside[1]);
    parts.push(straight(draw, [-half - 5, low], [half + 5, low], { class: 'level', ...lines.level }));
    parts.push(straight(draw, inside, outside, { class: 'hairline', ...lines.measured }));
    if (!small) parts.push(...tick(inside[1] - outside[1], low, half + 13, draw, units));
  }
  for (const point of [inside, outside]) if (point) parts.push(dot(draw, point));
  return small ? parts : [...parts, ...sides(foot, half, draw)];
}

function tick(difference: number, low: number, reach: number, draw: Pen, units: Settled['units']): SvgNode[] {
  const height = Math.abs(difference);
  const times = height / draw.mmPerPx < tiny ? enlarged : 1;
  const x = difference > 0 ? -reach : reach;
  const [px, top] = draw.at([x, low + height * times]);
  const number = words(formatQuantity(height, 'mm', units), [px, top - 6], 'middle', { fill: inks.ink });
  if ((height * times) / draw.mmPerPx < invisible) return [number];
  const bar = straight(draw, [x, low], [x, low + height * times], {
    class: times === 1 ? 'tick' : 'tick enlarged',
    stroke: roles.beyond,
    'stroke-width': strokes.strong,
  });
  const under = draw.at([x, low])[1];
  return times === 1
    ? [bar, number]
    : [bar, number, words(say`drawn`, [px, under + 14]), words(`×${times}`, [px, under + 27])];
}

function sides({ limb }: FootShape, half: number, draw: Pen): SvgNode[] {
  const y = draw.at([0, 0])[1] + 15;
  const [start, end] = draw.flip === 1 ? (['start', 'end'] as const) : (['end', 'start'] as const);
  return [
    words(say`inside`, [draw.at([-half - 8, 0])[0], y], start),
    words(limb, [draw.at([0, 0])[0], y], 'middle', { fill: inks.ink, 'font-weight': 600 }),
    words(say`outside`, [draw.at([half + 8, 0])[0], y], end),
  ];
}

/** A point at a measured height, or nothing where the height is missing. */
export function atHeight(x: number, height: number | undefined): Point | undefined {
  return isKnown(height) ? [x, height] : undefined;
}
