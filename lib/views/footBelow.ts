import { endOf, sideOf } from '../hoof/limbs.ts';
import { say } from '../words/say.ts';
import { type DrawingOptions, isKnown, settled } from './drawingOptions.ts';
import type { FootShape } from './footShape.ts';
import { footWords } from './footWords.ts';
import { lines, notMeasured, type Pen, pen, picture, straight, words } from './pen.ts';
import { type SvgNode, svg } from './svg.ts';
import { closed, type Half, open } from './symmetric.ts';
import { inks, tissues } from './theme.ts';

/**
 * The foot as its print on the ground, seen from above with the toe up: width, length, heels and frog to scale.
 * The outline between those numbers is a schematic, rounder for a front foot and more pointed for a hind one, and the
 * same on both sides: nothing that was not measured is told. The inside lies towards the horse's midline.
 * @param foot     widths and lengths in mm; what is missing is dashed or left out, and named
 * @param options  scale in mm a px, and the reader's units
 * @returns an `svg` whose size in px is its size in mm over the scale; it grows with the foot, the scale never changes
 */
export function footBelow(foot: FootShape, options: DrawingOptions = {}): SvgNode {
  const { mmPerPx, units, small } = settled(options);
  const box = printBox(foot);
  const [width, height] = [box.across / mmPerPx, (box.above + box.under) / mmPerPx];
  const draw = pen(mmPerPx, [width / 2, box.above / mmPerPx]);
  return picture(
    [width, height],
    {
      kind: 'foot-below',
      ...footWords(
        foot,
        say`as its print on the ground, seen from above`,
        ['width', 'length', 'heelWidth', 'frogWidth', 'frogLength'],
        units,
      ),
    },
    ...print(foot, draw, small),
    ...(small ? [] : tags(foot, width, height - 4)),
  );
}

/** The room a print needs, in mm from its heel line and across; the same for all but large feet, so that neighbours line up. */
export function printBox(foot: FootShape): { readonly across: number; readonly above: number; readonly under: number } {
  return { across: Math.max(158, (foot.width || 0) + 12), above: Math.max(154, (foot.length || 0) + 8), under: 26 };
}

/** The print alone, the middle of its heel line at the pen's origin, to be placed in a larger drawing. */
export function print(foot: FootShape, draw: Pen, small = false): SvgNode[] {
  const { width, length, heelWidth, frogWidth, frogLength } = foot;
  const front = endOf(foot.limb) === 'front';
  if (!isKnown(width) || !isKnown(length)) return unfinished(foot, front, draw, small);
  const sole: Sole = { half: width / 2, length, heel: (isKnown(heelWidth) ? heelWidth : usualHeel * width) / 2, front };
  const edge = outline(sole);
  const parts = [svg('path', { class: 'sole', d: closed(draw, edge), fill: tissues.sole })];
  if (isKnown(heelWidth))
    parts.unshift(svg('path', { class: 'bulbs', d: closed(draw, bulbs(sole)), fill: tissues.skin, ...lines.fine }));
  if (isKnown(frogWidth) && isKnown(frogLength)) parts.push(...frog(frogWidth / 2, frogLength, -0.05 * length, draw));
  else if (!small) parts.push(notMeasured(say`frog`, draw.at([0, 0.62 * length])));
  if (isKnown(heelWidth))
    parts.push(svg('path', { class: 'wall', d: closed(draw, wall(sole)), fill: tissues.horn, ...lines.outline }));
  else {
    parts.push(
      svg('path', { class: 'wall', d: open(draw, edge, 0, 1), ...lines.outline }),
      svg('path', { class: 'missing', d: open(draw, edge, 1), ...lines.missing }),
    );
    if (!small) parts.push(notMeasured(say`heels`, draw.at([0, -0.13 * length])));
  }
  return parts;
}

/** The edge of a print as path data; width, length and heel width must be known. */
export function outlineBelow({ limb, width, length, heelWidth }: FootShape, draw: Pen): string {
  const front = endOf(limb) === 'front';
  return closed(
    draw,
    outline({ half: (width as number) / 2, length: length as number, heel: (heelWidth as number) / 2, front }),
  );
}

interface Sole {
  /** Half the width, the length, half the heel width, in mm. */
  readonly half: number;
  readonly length: number;
  readonly heel: number;
  readonly front: boolean;
}

/** Heel width to foot width where the heels are only dashed; a stand-in, never told as a number. */
const usualHeel = 0.66;

/** Where the schematic has its widest place and how full its toe is; the wall is a seventh of half the width thick. */
function build({ half, length, heel, front }: Sole) {
  const widest = length * (front ? 0.47 : 0.44);
  return {
    widest,
    round: front ? 0.57 : 0.45,
    shoulder: widest + (length - widest) * (front ? 0.55 : 0.5),
    spread: half - heel,
    thick: half * 0.14,
  };
}

function outline(sole: Sole): Half {
  const { half, length, heel } = sole;
  const { widest, round, shoulder, spread, thick } = build(sole);
  return {
    top: [0, length],
    curves: [
      [
        [half * round, length],
        [half, shoulder],
        [half, widest],
      ],
      [
        [half, widest * 0.6],
        [heel + spread * 0.5, length * 0.2],
        [heel + spread * 0.08, length * 0.09],
      ],
      [
        [heel + spread * 0.03, length * 0.078],
        [heel, length * 0.07],
        [heel, length * 0.055],
      ],
      [
        [heel, length * 0.018],
        [heel - thick * 0.35, 0],
        [heel - thick * 0.8, 0],
      ],
    ],
  };
}

/** The wall as a band: outside down to the heel buttress, round it, forward as the bar, back, and up the inside. */
function wall(sole: Sole): Half {
  const { half, length, heel } = sole;
  const { widest, round, shoulder, spread, thick } = build(sole);
  const { top, curves } = outline(sole);
  const inner = half - thick;
  return {
    top,
    curves: [
      ...curves,
      [
        [heel - thick * 1.35, 0],
        [heel - thick * 1.75, length * 0.03],
        [heel - thick * 1.85, length * 0.08],
      ],
      [
        [heel * 0.66, length * 0.2],
        [heel * 0.5, length * 0.3],
        [heel * 0.4, length * 0.46],
      ],
      [
        [heel * 0.58, length * 0.38],
        [heel * 0.7, length * 0.3],
        [heel - thick * 0.95, length * 0.185],
      ],
      [
        [heel + spread * 0.4 - thick * 0.4, length * 0.28],
        [inner, widest * 0.72],
        [inner, widest],
      ],
      [
        [inner, shoulder - thick * 0.6],
        [inner * round, length - thick * 1.25],
        [0, length - thick * 1.25],
      ],
    ],
  };
}

function bulbs({ length, heel }: Sole): Half {
  return {
    top: [0, length * 0.1],
    curves: [
      [
        [heel * 0.4, length * 0.1],
        [heel * 0.8, length * 0.1],
        [heel, length * 0.08],
      ],
      [
        [heel * 1.06, -length * 0.05],
        [heel * 0.82, -length * 0.14],
        [heel * 0.46, -length * 0.14],
      ],
      [
        [heel * 0.22, -length * 0.14],
        [heel * 0.06, -length * 0.11],
        [0, -length * 0.065],
      ],
    ],
  };
}

function frog(half: number, length: number, base: number, draw: Pen): SvgNode[] {
  const y = (share: number) => base + length * share;
  const edge: Half = {
    top: [0, y(1)],
    curves: [
      [
        [half * 0.12, y(1)],
        [half * 0.18, y(0.965)],
        [half * 0.22, y(0.91)],
      ],
      [
        [half * 0.46, y(0.64)],
        [half, y(0.38)],
        [half, y(0.14)],
      ],
      [
        [half, y(0.03)],
        [half * 0.82, y(0)],
        [half * 0.58, y(0)],
      ],
      [
        [half * 0.28, y(0)],
        [half * 0.1, y(0.03)],
        [0, y(0.1)],
      ],
    ],
  };
  const groove: Half = {
    top: [0, y(0.52)],
    curves: [
      [
        [half * 0.13, y(0.38)],
        [half * 0.17, y(0.25)],
        [0, y(0.17)],
      ],
    ],
  };
  return [
    svg('path', { class: 'frog', d: closed(draw, edge), fill: tissues.frog, ...lines.fine }),
    svg('path', { d: closed(draw, groove), fill: tissues.line, 'fill-opacity': 0.4 }),
  ];
}

/** Without width and length there is no outline: a dashed one in its place, and the one that is known as a line. */
function unfinished({ width, length }: FootShape, front: boolean, draw: Pen, small: boolean): SvgNode[] {
  const [across, along] = [isKnown(width) ? width : 118, isKnown(length) ? length : 118];
  const edge = outline({ half: across / 2, length: along, heel: (usualHeel * across) / 2, front });
  const parts = [svg('path', { class: 'missing', d: open(draw, edge, 0), ...lines.missing })];
  if (isKnown(width))
    parts.push(straight(draw, [-width / 2, along / 2], [width / 2, along / 2], { class: 'width', ...lines.outline }));
  if (isKnown(length)) parts.push(straight(draw, [0, 0], [0, length], { class: 'length', ...lines.outline }));
  const what = isKnown(width) ? 'length' : isKnown(length) ? 'width' : 'foot';
  return small ? parts : [...parts, notMeasured(what, draw.at([0, along * 0.62]))];
}

function tags({ limb }: FootShape, width: number, y: number): SvgNode[] {
  const left = sideOf(limb) === 'left';
  const code = { fill: inks.ink, 'font-weight': 600 };
  return [
    words(limb, [left ? 2 : width - 2, y], left ? 'start' : 'end', code),
    words(say`inside`, [left ? width - 2 : 2, y], left ? 'end' : 'start'),
  ];
}
