import { say } from '../words/say.ts';
import { print, printBox } from './footBelow.ts';
import type { FootShape } from './footShape.ts';
import { profileOf, sideBody } from './footSide.ts';
import { along, type Pen, type Point, pen, picture, straight, words } from './pen.ts';
import { type SvgNode, svg } from './svg.ts';
import { inks, roles, strokes } from './theme.ts';

/** A foot of round numbers, drawn and never measured. */
const foot: FootShape = {
  limb: 'LF',
  ...{ width: 128, length: 130, heelWidth: 86, frogWidth: 54, frogLength: 88 },
  ...{ toeAngle: 52, heelAngle: 50, pasternAngle: 52, toeLength: 82, heelLength: 36 },
};

/** What is named in the drawing of the underside: where it points to (mm from the middle of the heel line), and on which side its name stands. */
const parts: readonly { readonly name: string; readonly at: Point; readonly side: 'left' | 'right' }[] = [
  { name: say`toe`, at: [-6, 127], side: 'left' },
  { name: say`wall`, at: [-57, 84], side: 'left' },
  { name: say`white line`, at: [-50, 62], side: 'left' },
  { name: say`sole`, at: [-34, 78], side: 'left' },
  { name: say`bar`, at: [-30, 30], side: 'left' },
  { name: say`heel bulb`, at: [-22, -14], side: 'left' },
  { name: say`point of the frog`, at: [2, 82], side: 'right' },
  { name: say`quarter`, at: [60, 66], side: 'right' },
  { name: say`frog`, at: [14, 30], side: 'right' },
  { name: say`groove beside the frog`, at: [26, 20], side: 'right' },
  { name: say`middle groove`, at: [1, 24], side: 'right' },
  { name: say`heel buttress`, at: [38, 4], side: 'right' },
];

const margin = 132;

/** The underside of a left fore, toe up, its parts named: a schematic, nothing in it is measured. */
export function footPartsBelow(): SvgNode {
  const box = printBox(foot);
  const width = box.across + 2 * margin;
  const size: Point = [width / 0.8, (box.above + box.under) / 0.8];
  const draw = pen(0.8, [size[0] / 2, box.above / 0.8]);
  return picture(
    size,
    {
      kind: 'foot-parts',
      name: say`The parts of the foot from below`,
      description: say`A left fore from below, toe up. Named: ${parts.map(({ name }) => name).join(', ')}.`,
    },
    ...print(foot, draw),
    svg('path', {
      class: 'white-line',
      d: whiteLine(draw),
      stroke: inks.edge,
      'stroke-width': strokes.line,
      'stroke-dasharray': '1 2',
    }),
    ...named(draw, size, parts),
  );
}

/** Just inside the wall, from heel to heel. */
function whiteLine(draw: Pen): string {
  return draw.path`M${[-40, 18]} C${[-54, 38]} ${[-55, 50]} ${[-54, 61]} C${[-54, 96]} ${[-32, 119]} ${[0, 119]} C${[32, 119]} ${[54, 96]} ${[54, 61]} C${[55, 50]} ${[54, 38]} ${[40, 18]}`;
}

/** Names at both edges, one under the other as their places are, each with a line to its place. */
function named(draw: Pen, [width]: Point, rows: typeof parts): SvgNode[] {
  return (['left', 'right'] as const).flatMap((side) => {
    const own = rows.filter((row) => row.side === side).toSorted((a, b) => b.at[1] - a.at[1]);
    let last = Number.NEGATIVE_INFINITY;
    return own.flatMap(({ name, at }) => {
      const y = Math.max(draw.at(at)[1], last + 16);
      last = y;
      const x = side === 'left' ? 148 : width - 148;
      const [toX, toY] = draw.at(at);
      return [
        svg('line', { x1: x, y1: y, x2: toX, y2: toY, stroke: inks.soft, 'stroke-width': strokes.hair }),
        svg('circle', { cx: toX, cy: toY, r: 2, fill: roles.measured }),
        words(name, [side === 'left' ? x - 4 : x + 4, y + 4], side === 'left' ? 'end' : 'start', { fill: inks.ink }),
      ];
    });
  });
}

/** How a foot takes weight, from the side: what comes down, what gives at the heels, where it rolls over. A schematic. */
export function footUnderWeight(): SvgNode {
  const profile = profileOf(foot);
  const size: Point = [570, 230];
  const draw = pen(0.8, [190, 200]);
  const { toe, heel, heelTop, pasternTop, toeTop } = profile;
  const down = along(pasternTop, heelTop, 0.35);
  return picture(
    size,
    {
      kind: 'foot-under-weight',
      name: say`How the foot takes weight`,
      description: say`A left fore from the side. Weight comes down through the pastern; the heels spread and the frog and the cushion above it give; the foot rolls over at the toe.`,
    },
    ...sideBody(foot, profile, draw),
    arrow(draw, [down[0] + 4, down[1] + 40], [down[0] - 14, down[1] - 8]),
    arrow(draw, [heelTop[0] - 8, heelTop[1] - 4], [heelTop[0] + 30, heelTop[1] + 4]),
    arrow(draw, [heel[0] - 22, 24], [heel[0] - 22, 4]),
    svg('path', {
      class: 'breakover',
      d: draw.path`M${[toe[0] + 16, -6]} C${[toe[0] - 6, -8]} ${[toe[0] - 22, 6]} ${[toe[0] - 24, 28]}`,
      stroke: roles.measured,
      'stroke-width': strokes.strong,
    }),
    svg('path', { d: head(draw, [toe[0] - 24, 28], 96), fill: roles.measured }),
    words(say`weight, through the pastern`, draw.at([down[0] + 10, down[1] + 44]), 'start', { fill: inks.ink }),
    words(say`the heels give`, draw.at([heelTop[0] + 36, heelTop[1] + 2]), 'start', { fill: inks.ink }),
    words(say`frog and cushion`, draw.at([heel[0] + 10, 6]), 'start', { fill: inks.ink }),
    words(say`rolls over here`, draw.at([toe[0] - 30, 14]), 'end', { fill: inks.ink }),
    words(say`the wall, from which`, draw.at([toeTop[0] - 14, toeTop[1] - 14]), 'end', { fill: inks.ink }),
    words(say`the bone hangs`, draw.at([toeTop[0] - 14, toeTop[1] - 26]), 'end', { fill: inks.ink }),
    straight(draw, [toeTop[0] - 12, toeTop[1] - 24], [toeTop[0] + 2, toeTop[1] - 22], {
      stroke: inks.soft,
      'stroke-width': strokes.hair,
    }),
  );
}

function arrow(draw: Pen, from: Point, to: Point): SvgNode {
  const angle = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  return svg(
    'g',
    { class: 'arrow' },
    straight(draw, from, to, { stroke: roles.measured, 'stroke-width': strokes.strong }),
    svg('path', { d: head(draw, to, angle), fill: roles.measured }),
  );
}

/** The head of an arrow at a point, pointing along an angle in degrees above the x axis. */
function head(draw: Pen, at: Point, degrees: number): string {
  const corner = (turn: number, reach: number): Point => {
    const radians = ((degrees + turn) * Math.PI) / 180;
    return [at[0] + reach * Math.cos(radians), at[1] + reach * Math.sin(radians)];
  };
  return draw.path`M${corner(0, 5)} L${corner(140, 6)} L${corner(-140, 6)} Z`;
}
