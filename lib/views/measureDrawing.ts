import { measured } from '../hoof/measured.ts';
import { midSentence } from '../words/midSentence.ts';
import { say } from '../words/say.ts';
import { print } from './footBelow.ts';
import { frontBody, frontOf } from './footFront.ts';
import { rearBody, rearOf } from './footRear.ts';
import type { FootShape } from './footShape.ts';
import { profileOf, sideBody } from './footSide.ts';
import { horseMarks, horseOutline } from './horseOutline.ts';
import { arc, away, dot, lines, type Pen, type Point, pen, picture, straight, words } from './pen.ts';
import { type SvgNode, svg } from './svg.ts';
import { drawingScales, inks, roles } from './theme.ts';

/** The foot that the drawings are made on: invented, near the middle of what is published. */
const model: FootShape & Required<Pick<FootShape, 'toeAngle' | 'heelAngle' | 'pasternAngle'>> = {
  limb: 'LF',
  toeAngle: 51,
  heelAngle: 47,
  pasternAngle: 52,
  toeLength: 86,
  heelLength: 42,
  medialWall: 53,
  lateralWall: 53,
  medialHeel: 39,
  lateralHeel: 39,
  width: 130,
  length: 126,
  frogWidth: 54,
  frogLength: 86,
  heelWidth: 88,
};

type Base = 'side' | 'front' | 'rear' | 'below' | 'horse';

const profile = profileOf(model);
const front = frontOf(model);
const rear = rearOf(model);

/** The drawing under a measure: its frame in mm, where its origin lies in it, and what is drawn there. */
const bases: Readonly<Record<Base, { size: Point; origin: Point; mmPerPx: number; body: (draw: Pen) => SvgNode[] }>> = {
  side: {
    size: [200, 146],
    origin: [18, 136],
    mmPerPx: drawingScales.usual,
    body: (draw) => sideBody(model, profile, draw),
  },
  front: {
    size: [160, 146],
    origin: [80, 136],
    mmPerPx: drawingScales.usual,
    body: (draw) => [...frontBody(model, front, draw), ground(draw)],
  },
  rear: {
    size: [160, 146],
    origin: [80, 136],
    mmPerPx: drawingScales.usual,
    body: (draw) => [...rearBody(model, rear, draw), ground(draw)],
  },
  below: { size: [160, 166], origin: [80, 142], mmPerPx: drawingScales.usual, body: (draw) => print(model, draw) },
  horse: { size: [2300, 2150], origin: [170, 2080], mmPerPx: 12, body: horseOutline },
};

/** Where each measured column is measured: the drawing it is shown on, and what is marked there. */
const places: Readonly<Record<string, readonly [Base, (draw: Pen) => SvgNode[]]>> = {
  toe_angle_deg: ['side', (draw) => angle(draw, profile.toe, profile.toeTop, model.toeAngle)],
  heel_angle_deg: ['side', (draw) => angle(draw, profile.heel, profile.heelTop, model.heelAngle)],
  pastern_angle_deg: ['side', (draw) => angle(draw, profile.toeTop, profile.pasternTop, model.pasternAngle)],
  toe_length_mm: ['side', (draw) => dimension(draw, profile.toe, profile.toeTop)],
  heel_length_mm: ['side', (draw) => dimension(draw, profile.heel, profile.heelTop)],
  medial_wall_mm: [
    'front',
    (draw) => [...dimension(draw, [front.insideTop[0], 0], front.insideTop), named(draw, say`inside`, -1)],
  ],
  lateral_wall_mm: [
    'front',
    (draw) => [...dimension(draw, [front.outsideTop[0], 0], front.outsideTop), named(draw, say`outside`, 1)],
  ],
  medial_wall_angle_deg: ['front', (draw) => [...wallSlope(draw, -1), named(draw, say`inside`, -1)]],
  lateral_wall_angle_deg: ['front', (draw) => [...wallSlope(draw, 1), named(draw, say`outside`, 1)]],
  coronet_circumference_mm: ['front', tape],
  medial_heel_mm: ['rear', (draw) => [...heelHeight(draw, -1), named(draw, say`inside`, -1)]],
  lateral_heel_mm: ['rear', (draw) => [...heelHeight(draw, 1), named(draw, say`outside`, 1)]],
  foot_width_mm: ['below', (draw) => dimension(draw, [-65, 126 * 0.47], [65, 126 * 0.47])],
  foot_length_mm: [
    'below',
    (draw) => [...dimension(draw, [0, 0], [0, 126]), straight(draw, [-44, 0], [44, 0], lines.level)],
  ],
  frog_width_mm: ['below', (draw) => dimension(draw, [-27, 5.7], [27, 5.7])],
  frog_length_mm: ['below', (draw) => dimension(draw, [0, -6.3], [0, 79.7])],
  heel_width_mm: ['below', (draw) => dimension(draw, [-44, 6.9], [44, 6.9])],
  shoulder_angle_deg: ['horse', (draw) => shoulder(draw)],
  weight_kg: ['horse', scales],
  girth_cm: ['horse', girth],
  length_cm: ['horse', (draw) => dimension(draw, horseMarks.shoulderPoint, horseMarks.buttockPoint)],
};

/**
 * Where columns are measured, marked on a drawing of a foot or a horse: landmarks as dots, lengths as lines, angles
 * as arcs.
 * @param names  measured columns; those seen from elsewhere than the first one are left out
 * @returns an `svg`, or `undefined` where none of the names is a measured column
 * @example measureDrawing(['toe_angle_deg', 'pastern_angle_deg']) // both, from the side
 */
export function measureDrawing(names: string | readonly string[]): SvgNode | undefined {
  const asked = (typeof names === 'string' ? [names] : names).filter((name) => Object.hasOwn(places, name));
  if (asked.length === 0) return undefined;
  const base = places[asked[0]][0];
  const shown = asked.filter((name) => places[name][0] === base);
  const { size, origin, mmPerPx, body } = bases[base];
  const draw = pen(mmPerPx, [origin[0] / mmPerPx, origin[1] / mmPerPx]);
  const rows = shown.map((name) => measured.find((row) => row.name === name));
  return picture(
    [size[0] / mmPerPx, size[1] / mmPerPx],
    {
      kind: 'measure',
      name: say`Where it is measured: ${rows.map((row) => midSentence(row?.title ?? '')).join(', ')}`,
      description: rows.map((row) => row?.landmarks).join(' '),
    },
    svg('g', { class: 'model', opacity: 0.75 }, ...body(draw)),
    ...shown.flatMap((name) => svg('g', { class: `place ${name}` }, ...places[name][1](draw))),
  );
}

function ground(draw: Pen): SvgNode {
  return straight(draw, [-76, 0], [76, 0], { class: 'ground', ...lines.ground });
}

/** A length: its two landmarks and the line between. */
function dimension(draw: Pen, from: Point, to: Point): SvgNode[] {
  return [straight(draw, from, to, { class: 'dimension', ...lines.measured }), dot(draw, from), dot(draw, to)];
}

/** An angle at a landmark, between the ground direction and the line to another landmark. */
function angle(draw: Pen, at: Point, to: Point, degrees: number): SvgNode[] {
  const along = straight(draw, at, away(at, 34 * draw.mmPerPx, 0), { ...lines.ground, stroke: roles.measured });
  return [
    along,
    straight(draw, at, to, { class: 'dimension', ...lines.measured }),
    arc(draw, at, 24, degrees),
    dot(draw, at),
    dot(draw, to),
  ];
}

function wallSlope(draw: Pen, side: 1 | -1): SvgNode[] {
  const top = side === 1 ? front.outsideTop : front.insideTop;
  const corner: Point = [side * front.half, 0];
  const slope = (Math.atan2(top[1], Math.abs(top[0] - corner[0])) * 180) / Math.PI;
  return [
    straight(draw, corner, top, { class: 'dimension', ...lines.measured }),
    arc(draw, corner, 24, slope, side === 1 ? -1 : 1),
    dot(draw, corner),
    dot(draw, top),
  ];
}

function heelHeight(draw: Pen, side: 1 | -1): SvgNode[] {
  const x = side * rear.heel * 0.62;
  return dimension(draw, [x, 0], [x, rear.medial]);
}

function named(draw: Pen, text: string, side: 1 | -1): SvgNode {
  const at = draw.at([side * 64, 0]);
  return words(text, [at[0], at[1] + 12], side === 1 ? 'end' : 'start', { fill: inks.ink });
}

/** A tape round the hairline: in front as a line, behind dashed. */
function tape(draw: Pen): SvgNode[] {
  const [from, to] = [front.insideTop, front.outsideTop];
  const ends: [Point, Point] = [
    [from[0], from[1] + 2],
    [to[0], to[1] + 2],
  ];
  const [up, down] = [22, -10].map((by): [Point, Point] => [
    [from[0] * 0.7, from[1] + by],
    [to[0] * 0.7, to[1] + by],
  ]);
  return [
    svg('path', {
      class: 'dimension',
      d: draw.path`M${ends[0]} C${down[0]} ${down[1]} ${ends[1]}`,
      ...lines.missing,
      stroke: roles.measured,
    }),
    svg('path', { class: 'dimension', d: draw.path`M${ends[0]} C${up[0]} ${up[1]} ${ends[1]}`, ...lines.measured }),
  ];
}

function shoulder(draw: Pen): SvgNode[] {
  const [low, high] = [horseMarks.shoulderPoint, horseMarks.bladeTop];
  const slope = (Math.atan2(high[1] - low[1], high[0] - low[0]) * 180) / Math.PI;
  return angle(draw, low, high, slope);
}

/** The tape behind the elbow: the near side as a line, the far side dashed. */
function girth(draw: Pen): SvgNode[] {
  const { withers } = horseMarks;
  const under: Point = [770, 763];
  const near = draw.path`M${withers} C${[880, 1300]} ${[880, 980]} ${under}`;
  const far = draw.path`M${withers} C${[690, 1300]} ${[690, 980]} ${under}`;
  return [
    svg('path', { class: 'dimension', d: far, ...lines.missing, stroke: roles.measured }),
    svg('path', { class: 'dimension', d: near, ...lines.measured }),
    dot(draw, withers),
  ];
}

/** The whole horse on the plate of a weighbridge. */
function scales(draw: Pen): SvgNode[] {
  const plate = draw.path`M${[240, -8]} L${[1880, -8]} L${[1840, -60]} L${[280, -60]} Z`;
  return [svg('path', { class: 'dimension', d: plate, fill: roles.measured })];
}
