import { limbName, sideOf } from '../hoof/limbs.ts';
import { say } from '../words/say.ts';
import { type DrawingOptions, isKnown, settled } from './drawingOptions.ts';
import { outlineBelow, printBox } from './footBelow.ts';
import { frontOf } from './footFront.ts';
import type { FootShape } from './footShape.ts';
import { profileOf } from './footSide.ts';
import { outsideTo } from './levelMarks.ts';
import { lines, notMeasured, type Pen, pen, picture, words } from './pen.ts';
import { type SvgNode, svg } from './svg.ts';
import { inks, roles, strokes, tissues } from './theme.ts';

/** From where feet are laid over each other. */
export type OverlaidView = 'side' | 'front' | 'below';

/** One foot at one time, with the words of that time: `2026-03-09, after`. */
export interface FootAtTime {
  readonly shape: FootShape;
  readonly when: string;
}

/** How each time is drawn, the latest first: filled, dashed, dotted. */
export const timeLooks = [
  { word: say`filled`, stroke: tissues.line, 'stroke-width': strokes.thin },
  { word: say`dashed`, stroke: roles.measured, 'stroke-width': strokes.line, 'stroke-dasharray': '5 3' },
  {
    word: say`dotted`,
    stroke: roles.hind,
    'stroke-width': strokes.line,
    'stroke-dasharray': '1 3',
    'stroke-linecap': 'round',
  },
] as const;

/**
 * One foot at up to three times, laid over each other at one scale: the toe in one place seen from the side, the middle of
 * the ground line seen from the front, the middle of the heel line from below. The latest is filled, the one before it
 * dashed, the oldest dotted; a time at which the outline was not measured is left out and named.
 * @param times  the latest first
 * @param options  scale in mm a px (left out: the usual one), units for the description
 * @returns an `svg` whose description names every time; a foot that was never measured so is said to be missing
 */
export function footOverTime(times: readonly FootAtTime[], view: OverlaidView, options: DrawingOptions = {}): SvgNode {
  const { limb } = times[0].shape;
  return overlaid(times, view, `${limbName(limb)}, ${viewWords[view]}`, [], options);
}

/**
 * Up to three outlines over each other, all as feet of the first one's side.
 * @param name   what it is of
 * @param below  lines of words under the drawing
 */
export function overlaid(
  times: readonly FootAtTime[],
  view: OverlaidView,
  name: string,
  below: readonly string[],
  options: DrawingOptions,
): SvgNode {
  const { mmPerPx } = settled(options);
  const left = sideOf(times[0].shape.limb) === 'left';
  const [across, above, under] = room[view](times.map(({ shape }) => shape));
  const size = [across / mmPerPx, (above + under) / mmPerPx] as const;
  const ground = above / mmPerPx;
  const draw =
    view === 'side'
      ? pen(mmPerPx, [left ? 14 / mmPerPx : size[0] - 14 / mmPerPx, above / mmPerPx], left ? 1 : -1)
      : pen(mmPerPx, [size[0] / 2, above / mmPerPx], view === 'front' ? outsideTo(times[0].shape, 'front') : 1);
  const drawn = times.map(({ shape, when }, index) => ({ when, index, d: outline[view](shape, draw) }));
  const known = drawn.filter(({ d }) => d !== undefined);
  const lost = drawn.filter(({ d }) => d === undefined);
  const said = [
    ...known.map(({ when, index }) => `${timeLooks[index].word}: ${when}`),
    ...lost.map(({ when }) => say`not measured: ${when}`),
  ];
  return picture(
    [size[0], size[1] + below.length * lineHeight],
    { kind: 'foot-over-time', name, description: `${said.join('; ')}.` },
    ...(view === 'below'
      ? []
      : [svg('line', { class: 'ground', x1: 0, x2: size[0], y1: ground, y2: ground, ...lines.ground })]),
    ...known.map(({ d, index }) => {
      const { word, ...look } = timeLooks[index];
      return svg('path', {
        class: word,
        d: d!,
        'stroke-linejoin': 'round',
        ...look,
        ...(index === 0 && { fill: tissues.sole }),
      });
    }),
    // The filled one lies undermost, and its edge would be lost under the others.
    ...(known.length === 0 ? [notMeasured(say`outline`, [size[0] / 2, size[1] / 2], 'middle')] : []),
    ...insideMark(view, left, size),
    ...below.map((text, line) => words(text, [0, size[1] + (line + 1) * lineHeight - 4], 'start', { fill: inks.ink })),
  );
}

const lineHeight = 16;

/** From where, in words. */
export const viewWords: Readonly<Record<OverlaidView, string>> = {
  side: say`from the side`,
  front: say`from the front`,
  below: say`as its print`,
};

/** Width, height above the origin and below it, in mm. */
const room: Readonly<Record<OverlaidView, (shapes: readonly FootShape[]) => readonly [number, number, number]>> = {
  side: (shapes) => {
    const ends = shapes.map(profileOf).flatMap(({ heel, heelTop }) => [heel[0], heelTop[0]]);
    return [14 + Math.max(150, ...ends) + 12, 96, 6];
  },
  front: (shapes) => [Math.max(130, ...shapes.map((shape) => 2 * frontOf(shape).half)) + 24, 88, 18],
  below: (shapes) => {
    const boxes = shapes.map(printBox);
    return [Math.max(...boxes.map(({ across }) => across)), Math.max(...boxes.map(({ above }) => above)), 20];
  },
};

/** What of a foot is drawn; `undefined` where it can't be without telling what was not measured. */
const outline: Readonly<Record<OverlaidView, (shape: FootShape, draw: Pen) => string | undefined>> = {
  side: (shape, draw) => {
    const { toeAngle, toeLength, heelAngle, heelLength, length } = shape;
    if (![toeAngle, toeLength, heelAngle, heelLength, length].every(isKnown)) return undefined;
    const { toe, toeTop, heelTop, heel } = profileOf(shape);
    return draw.path`M${toe} L${toeTop} L${heelTop} L${heel} Z`;
  },
  front: (shape, draw) => {
    const { half, inside, outside } = frontOf(shape);
    if (inside === undefined || outside === undefined || !isKnown(shape.width)) return undefined;
    return draw.path`M${[-half, 0]} L${inside} L${outside} L${[half, 0]} Z`;
  },
  below: (shape, draw) =>
    isKnown(shape.width) && isKnown(shape.length) && isKnown(shape.heelWidth) ? outlineBelow(shape, draw) : undefined,
};

function insideMark(view: OverlaidView, left: boolean, [width, height]: readonly [number, number]): SvgNode[] {
  if (view === 'side') return [];
  // From in front the horse faces us: its left is on our right.
  const atRight = view === 'front' ? !left : left;
  return [
    svg(
      'text',
      { x: atRight ? width - 1 : 1, y: height - 2, 'text-anchor': atRight ? 'end' : 'start', fill: inks.soft },
      say`inside`,
    ),
  ];
}
