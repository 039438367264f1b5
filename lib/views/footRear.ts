import { say } from '../words/say.ts';
import { type DrawingOptions, isKnown, settled } from './drawingOptions.ts';
import type { FootShape } from './footShape.ts';
import { footWords } from './footWords.ts';
import { atHeight, levelMarks, outsideTo } from './levelMarks.ts';
import { lines, notMeasured, type Pen, type Point, pen, picture } from './pen.ts';
import { type SvgNode, svg } from './svg.ts';
import { tissues } from './theme.ts';

/**
 * The foot from behind, the hairline at the heels tilted by the heel heights measured inside and outside, at true
 * scale; where that is too little to see, an enlarged tick stands beside it and says so. Looking at the horse from
 * behind, a left foot has its inside to the right.
 * @param foot     heights and widths in mm; what is missing is dashed or left out, and named
 * @param options  scale in mm a px, and the reader's units
 * @returns an `svg` whose size in px is its size in mm over the scale; it grows with the foot, the scale never changes
 */
export function footRear(foot: FootShape, options: DrawingOptions = {}): SvgNode {
  const settings = settled(options);
  const { mmPerPx, units, small } = settings;
  const rear = rearOf(foot);
  const across = Math.max(150, 2 * rear.half + 20) / mmPerPx + (small ? 0 : 80);
  const above = Math.max(112, rear.high + 58);
  const draw = pen(mmPerPx, [across / 2, above / mmPerPx], outsideTo(foot, 'rear'));
  return picture(
    [across, (above + 3) / mmPerPx + (small ? 0 : 18)],
    {
      kind: 'foot-rear',
      ...footWords(foot, say`from behind`, ['medialHeel', 'lateralHeel', 'heelWidth', 'width'], units),
    },
    ...rearBody(foot, rear, draw),
    ...levelMarks(foot, rear, draw, settings),
    ...(small ? [] : missing(foot, rear, draw)),
  );
}

/** Landmarks of the view from behind in mm. */
export interface Rear {
  readonly half: number;
  /** Half the width across the heels. */
  readonly heel: number;
  readonly inside: Point | undefined;
  readonly outside: Point | undefined;
  /** Heights of the hairline at the heels in the drawing, measured or not. */
  readonly medial: number;
  readonly lateral: number;
  readonly high: number;
}

export function rearOf(foot: FootShape): Rear {
  const half = (isKnown(foot.width) ? foot.width : isKnown(foot.heelWidth) ? foot.heelWidth / 0.66 : 125) / 2;
  const heel = isKnown(foot.heelWidth) ? foot.heelWidth / 2 : half * 0.66;
  const standIn = [foot.medialHeel, foot.lateralHeel].find(isKnown) ?? 38;
  const [medial, lateral] = [foot.medialHeel, foot.lateralHeel].map((height) => (isKnown(height) ? height : standIn));
  return {
    half,
    heel,
    inside: atHeight(-heel * 0.62, foot.medialHeel),
    outside: atHeight(heel * 0.62, foot.lateralHeel),
    medial,
    lateral,
    high: Math.max(medial, lateral),
  };
}

/** Horn, skin and frog; a heel whose height is missing is dashed. */
export function rearBody(foot: FootShape, { half, heel, medial, lateral, high }: Rear, draw: Pen): SvgNode[] {
  const heels = isKnown(foot.heelWidth);
  const parts: SvgNode[] = [];
  if (isKnown(foot.width)) parts.push(quarters(half, heel, high, draw));
  parts.push(...pastern(heel, medial, lateral, high, draw));
  if (isKnown(foot.medialHeel) && isKnown(foot.lateralHeel) && heels)
    parts.push(frogBetween(heel, medial, lateral, draw));
  const columns: [1 | -1, number, boolean][] = [
    [-1, medial, isKnown(foot.medialHeel)],
    [1, lateral, isKnown(foot.lateralHeel)],
  ];
  for (const [side, height, known] of columns) {
    const solid = known && heels;
    const look = solid
      ? { class: 'horn', fill: tissues.horn, ...lines.outline }
      : { class: 'missing', ...lines.missing };
    parts.push(svg('path', { d: column(side, heel, height, draw), ...look }));
  }
  return parts;
}

/** The walls beyond the heels: as wide as the foot, rising forwards out of sight. */
function quarters(half: number, heel: number, high: number, draw: Pen): SvgNode {
  const side = (s: 1 | -1): Point[] => [
    [s * half, 0],
    [s * (half - 6), high * 0.75],
    [s * (half - 9), high + 12],
    [s * heel * 0.95, high + 14],
  ];
  const [i, o] = [side(-1), side(1)];
  const d = draw.path`M${i[0]} L${i[1]} C${i[2]} ${i[2]} ${i[3]} L${o[3]} C${o[2]} ${o[2]} ${o[1]} L${o[0]} Z`;
  return svg('path', { class: 'quarters', d, fill: tissues.sole, ...lines.fine });
}

/** Bulbs and pastern in one outline, and the cleft between the bulbs. */
function pastern(heel: number, medial: number, lateral: number, high: number, draw: Pen): SvgNode[] {
  const top = high + 54;
  const side = (s: 1 | -1, h: number): Point[] => [
    [s * heel * 0.94, h],
    [s * heel * 1.12, h + 24],
    [s * heel * 0.74, h + 22],
    [s * heel * 0.74, h + 44],
    [s * heel * 0.74, top],
  ];
  const [i, o] = [side(-1, medial), side(1, lateral)];
  const up = draw.path`M${i[0]} C${i[1]} ${i[2]} ${i[3]} L${i[4]}`;
  const down = draw.path`L${o[3]} C${o[2]} ${o[1]} ${o[0]}`;
  const mean = (medial + lateral) / 2;
  const lobe = (s: 1 | -1, h: number) =>
    draw.path`M${[0, mean * 0.9]} C${[s * heel * 0.04, mean + 10]} ${[s * heel * 0.2, h + 22]} ${[s * heel * 0.46, h + 20]}`;
  return [
    svg('path', {
      class: 'skin',
      d: up + draw.path`L${o[4]}` + down + draw.path`L${[0, mean * 0.7]} Z`,
      fill: tissues.skin,
    }),
    svg('path', { d: up + draw.path`M${o[4]}` + down + lobe(-1, medial) + lobe(1, lateral), ...lines.fine }),
  ];
}

/** One heel: outside of the buttress, hairline, inside towards the frog. */
function column(s: 1 | -1, heel: number, h: number, draw: Pen): string {
  const [ground, outer, top]: Point[] = [
    [s * heel, 0],
    [s * heel * 0.99, h * 0.5],
    [s * heel * 0.94, h],
  ];
  const [crest, slope, cleft]: Point[] = [
    [s * heel * 0.75, h + 1],
    [s * heel * 0.45, h + 1],
    [s * heel * 0.2, h * 0.9],
  ];
  const [inner, low, bar]: Point[] = [
    [s * heel * 0.24, h * 0.55],
    [s * heel * 0.36, h * 0.3],
    [s * heel * 0.36, 0],
  ];
  return draw.path`M${ground} C${outer} ${outer} ${top} C${crest} ${slope} ${cleft} C${inner} ${low} ${bar} Z`;
}

function frogBetween(heel: number, medial: number, lateral: number, draw: Pen): SvgNode {
  const side = (s: 1 | -1, h: number): Point[] => [
    [s * heel * 0.36, 4],
    [s * heel * 0.34, h * 0.5],
    [s * heel * 0.16, h * 0.84],
  ];
  const [i, o] = [side(-1, medial), side(1, lateral)];
  const mean = (medial + lateral) / 2;
  const d = draw.path`M${[0, 9]} C${[-heel * 0.08, 3]} ${[-heel * 0.26, 1]} ${i[0]} C${i[1]} ${i[2]} ${[0, mean * 0.84]} C${o[2]} ${o[1]} ${o[0]} C${[heel * 0.26, 1]} ${[heel * 0.08, 3]} ${[0, 9]} Z`;
  return svg('path', { class: 'frog', d, fill: tissues.frog, ...lines.fine });
}

function missing(foot: FootShape, { heel, high }: Rear, draw: Pen): SvgNode[] {
  const parts: SvgNode[] = [];
  const inside = isKnown(foot.medialHeel);
  const outside = isKnown(foot.lateralHeel);
  if (!inside && !outside) parts.push(notMeasured(say`heel heights`, draw.at([0, high * 0.5])));
  else if (!inside || !outside)
    parts.push(
      notMeasured(inside ? say`outside heel` : say`inside heel`, draw.at([(inside ? 1 : -1) * heel * 0.6, high * 0.5])),
    );
  if (!isKnown(foot.heelWidth)) parts.push(notMeasured(say`heel width`, draw.at([0, high * 0.15])));
  return parts;
}
