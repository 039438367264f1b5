import { say } from '../words/say.ts';
import { type SvgNode, svg } from './svg.ts';
import { hundredths } from './svgText.ts';
import { dashes, fonts, grounds, inks, roles, sizes, strokes, tissues } from './theme.ts';

/** In mm on a drawing that is to scale: across, and up. In px from the upper left once a pen has placed it. */
export type Point = readonly [x: number, y: number];

/** Draws in mm on a ground of px. */
export interface Pen {
  readonly mmPerPx: number;
  /** 1 where x runs to the right, -1 where the drawing is the mirror image of that. */
  readonly flip: 1 | -1;
  /** A point in mm as px from the drawing's upper left. */
  at(point: Point): Point;
  /** A tagged template with points in mm for path data: `` draw.path`M${toe} L${heel}` ``. */
  path(strings: TemplateStringsArray, ...points: readonly Point[]): string;
}

/**
 * A pen for drawing to scale.
 * @param mmPerPx  millimetres of foot to one px
 * @param origin   where the point (0, 0) lies, in px from the upper left
 * @param flip     1: x runs to the right; -1: to the left
 */
export function pen(mmPerPx: number, origin: Point, flip: 1 | -1 = 1): Pen {
  const at = ([x, y]: Point): Point => [origin[0] + (flip * x) / mmPerPx, origin[1] - y / mmPerPx];
  const written = (point: Point) => at(point).map(hundredths).join(' ');
  return { mmPerPx, flip, at, path: (strings, ...points) => String.raw({ raw: strings }, ...points.map(written)) };
}

/** The point at a distance (mm) and an angle (degrees above the x axis, counter-clockwise) from another. */
export function away([x, y]: Point, distance: number, degrees: number): Point {
  const radians = (degrees * Math.PI) / 180;
  return [x + distance * Math.cos(radians), y + distance * Math.sin(radians)];
}

/** The point at a share of the way between two others: 0 is the first, 1 the second. */
export function along(from: Point, to: Point, share: number): Point {
  return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
}

const round = { 'stroke-linejoin': 'round', 'stroke-linecap': 'round' } as const;

/** The few kinds of line that drawings use. */
export const lines = {
  outline: { ...round, stroke: tissues.line, 'stroke-width': strokes.thin },
  fine: { ...round, stroke: tissues.line, 'stroke-width': strokes.hair },
  ground: { ...round, stroke: inks.edge, 'stroke-width': strokes.thin },
  measured: { ...round, stroke: roles.measured, 'stroke-width': strokes.strong },
  missing: { ...round, stroke: tissues.line, 'stroke-width': strokes.thin, 'stroke-dasharray': dashes.missing },
  level: { stroke: inks.soft, 'stroke-width': strokes.hair, 'stroke-dasharray': dashes.level },
} as const;

/** A straight line between two points in mm, as a `line` element so that its ends can be read back. */
export function straight(draw: Pen, from: Point, to: Point, attributes: SvgNode['attributes']): SvgNode {
  const [[x1, y1], [x2, y2]] = [draw.at(from), draw.at(to)];
  return svg('line', { x1, y1, x2, y2, ...attributes });
}

/** The arc of an angle at a point, from the ground up to `degrees`; radius in px; `side` -1 opens it towards smaller x. */
export function arc(draw: Pen, [x, y]: Point, radius: number, degrees: number, side: 1 | -1 = 1): SvgNode {
  const steps = Array.from({ length: 13 }, (_, step): Point => {
    const [across, up] = away([0, 0], radius * draw.mmPerPx, (degrees * step) / 12);
    return [x + side * across, y + up];
  });
  const d = steps.map((point, step) => (step === 0 ? draw.path`M${point}` : draw.path`L${point}`)).join('');
  return svg('path', { class: 'arc', d, stroke: roles.measured, 'stroke-width': strokes.thin });
}

/** A landmark. */
export function dot(draw: Pen, at: Point): SvgNode {
  const [cx, cy] = draw.at(at);
  return svg('circle', { class: 'landmark', cx, cy, r: 2.5, fill: roles.measured });
}

/** A few words at a point in px, with a halo of what they stand on, so that lines under them don't disturb. */
export function words(
  text: string,
  [x, y]: Point,
  anchor: 'start' | 'middle' | 'end' = 'middle',
  attributes: SvgNode['attributes'] = {},
): SvgNode {
  const halo = { stroke: grounds.card, 'stroke-width': 3, 'stroke-linejoin': 'round', 'paint-order': 'stroke' };
  return svg('text', { x, y, 'text-anchor': anchor, fill: inks.soft, ...halo, ...attributes }, text);
}

/** Says in the drawing what is left out of it. */
export function notMeasured(what: string, at: Point, anchor: 'start' | 'middle' | 'end' = 'middle'): SvgNode {
  return words(say`${what} not measured`, at, anchor, { class: 'not-measured', 'font-style': 'italic' });
}

/**
 * The outermost node of a drawing, with its name and description for those who don't see it.
 * @param size  width and height in px; the drawing is shown at that size, so that its scale is true
 */
export function picture(
  size: Point,
  about: { readonly kind: string; readonly name: string; readonly description: string },
  ...children: readonly SvgNode[]
): SvgNode {
  const [width, height] = size.map(Math.ceil);
  return svg(
    'svg',
    {
      class: `drawing ${about.kind}`,
      width,
      height,
      viewBox: `0 0 ${width} ${height}`,
      role: 'img',
      'font-family': fonts.label,
      'font-size': sizes.mark,
      fill: 'none',
    },
    svg('title', {}, about.name),
    svg('desc', {}, about.description),
    ...children,
  );
}
