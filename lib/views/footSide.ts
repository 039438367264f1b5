import { sideOf } from '../hoof/limbs.ts';
import { formatQuantity } from '../sheet/display.ts';
import { say } from '../words/say.ts';
import { type DrawingOptions, isKnown, type Settled, settled } from './drawingOptions.ts';
import type { FootShape } from './footShape.ts';
import { footWords } from './footWords.ts';
import { along, arc, away, lines, notMeasured, type Pen, type Point, pen, picture, straight, words } from './pen.ts';
import { type SvgNode, svg } from './svg.ts';
import { inks, tissues } from './theme.ts';

/**
 * The foot from its own outer side, toe, heel and pastern lines at their angles and lengths to scale. A faint line
 * runs from the toe parallel to the pastern: where the hoof wall leaves it, the axis is broken back or forward.
 * A left foot has its toe to the left, a right foot to the right.
 * @param foot     angles in degrees against the ground, lengths in mm; what is missing is dashed or left out, and named
 * @param options  scale in mm a px, and the reader's units
 * @returns an `svg` whose size in px is its size in mm over the scale; it grows with the foot, the scale never changes
 */
export function footSide(foot: FootShape, options: DrawingOptions = {}): SvgNode {
  const settings = settled(options);
  const { mmPerPx, units, small } = settings;
  const profile = profileOf(foot);
  const flip = sideOf(foot.limb) === 'left' ? 1 : -1;
  const toeRoom = 22;
  const across = toeRoom + Math.max(183, profile.heel[0] + 52, profile.heelTop[0] + 14);
  const above = Math.max(140, profile.pasternTop[1] + 6);
  const width = across / mmPerPx;
  const draw = pen(mmPerPx, [flip === 1 ? toeRoom / mmPerPx : width - toeRoom / mmPerPx, above / mmPerPx], flip);
  const parts = ['toeAngle', 'toeLength', 'heelAngle', 'heelLength', 'pasternAngle', 'length'] as const;
  return picture(
    [width, (above + 8) / mmPerPx + (small ? 0 : 12)],
    { kind: 'foot-side', ...footWords(foot, say`from the side`, parts, units) },
    ...(isKnown(foot.toeAngle)
      ? [...sideBody(foot, profile, draw), ...measuredLines(foot, profile, draw)]
      : [ground(profile, draw)]),
    ...(small ? [] : labels(foot, profile, draw, settings)),
  );
}

/** Landmarks of the side view in mm: x backwards from the toe, y up from the ground. */
export interface Profile {
  readonly toe: Point;
  /** The hairline above toe and heel. */
  readonly toeTop: Point;
  readonly heel: Point;
  readonly heelTop: Point;
  /** Where the drawing of the pastern ends, in front and behind. */
  readonly pasternTop: Point;
  readonly pasternBack: Point;
}

/** The landmarks; where a number is missing, a stand-in that is only ever drawn dashed or not at all. */
export function profileOf(foot: FootShape): Profile {
  const or = (value: number | undefined, standIn: number) => (isKnown(value) ? value : standIn);
  const toeAngle = or(foot.toeAngle, 50);
  const toeLength = or(foot.toeLength, 85);
  const toe: Point = [0, 0];
  const heel: Point = [or(foot.length, 1.45 * toeLength), 0];
  const toeTop = away(toe, toeLength, toeAngle);
  const pasternAngle = or(foot.pasternAngle, toeAngle);
  const pasternTop = away(toeTop, 70, pasternAngle);
  return {
    toe,
    toeTop,
    heel,
    heelTop: away(heel, or(foot.heelLength, 0.45 * toeLength), or(foot.heelAngle, toeAngle)),
    pasternTop,
    pasternBack: away(pasternTop, 56, pasternAngle - 90),
  };
}

/** Horn, skin and ground, without what was measured. */
export function sideBody(foot: FootShape, profile: Profile, draw: Pen): SvgNode[] {
  const { toe, toeTop, heel, heelTop } = profile;
  const [third, twoThirds] = [1 / 3, 2 / 3].map((share): Point => raised(along(toeTop, heelTop, share), 3));
  const hairline = draw.path`C${third} ${twoThirds} ${heelTop}`;
  const parts = isKnown(foot.pasternAngle) ? skin(profile, draw) : [];
  if (isComplete(foot)) {
    parts.push(
      svg('path', {
        class: 'horn',
        d: `${draw.path`M${toe} L${toeTop}`}${hairline}${draw.path`L${heel} Z`}`,
        fill: tissues.horn,
        ...lines.outline,
      }),
    );
    for (const share of [0.2, 0.4, 0.6, 0.8]) {
      const [low, high] = [along(toe, heel, share), along(toeTop, heelTop, share)];
      parts.push(
        straight(draw, along(low, high, 0.06), along(low, high, 0.92), { ...lines.fine, 'stroke-opacity': 0.35 }),
      );
    }
  } else {
    parts.push(svg('path', { class: 'missing', d: draw.path`M${toeTop}` + hairline, ...lines.missing }));
    parts.push(straight(draw, heel, heelTop, { class: 'missing', ...lines.missing }));
    parts.push(straight(draw, toe, toeTop, { class: 'missing', ...lines.missing }));
  }
  return [...parts, ground(profile, draw)];
}

/** Whether the outline of the horn stands on measured numbers all round. */
function isComplete({ toeAngle, toeLength, heelAngle, heelLength, length }: FootShape): boolean {
  return [toeAngle, toeLength, heelAngle, heelLength, length].every(isKnown);
}

function raised([x, y]: Point, by: number): Point {
  return [x, y + by];
}

/** The pastern, from the hairline over the heel bulb up to where the drawing stops. */
function skin({ toeTop, heelTop, pasternTop, pasternBack }: Profile, draw: Pen): SvgNode[] {
  const bulb: Point = [heelTop[0] + 6, heelTop[1] + 13];
  const hollow = along(
    pasternBack,
    [pasternBack[0] + toeTop[0] - pasternTop[0], pasternBack[1] + toeTop[1] - pasternTop[1]],
    0.38,
  );
  const back = draw.path`C${hollow} ${[bulb[0] - 4, bulb[1] + 11]} ${bulb} C${[bulb[0] + 2.5, bulb[1] - 6]} ${[heelTop[0] + 5, heelTop[1] + 2]} ${heelTop}`;
  return [
    svg('path', { class: 'skin', d: draw.path`M${toeTop} L${pasternTop} L${pasternBack}` + back, fill: tissues.skin }),
    svg('path', { d: draw.path`M${pasternBack}` + back, ...lines.fine }),
  ];
}

function ground({ heel }: Profile, draw: Pen): SvgNode {
  return straight(draw, [-16, 0], [heel[0] + 46, 0], { class: 'ground', ...lines.ground });
}

function measuredLines(foot: FootShape, { toe, toeTop, heel, heelTop, pasternTop }: Profile, draw: Pen): SvgNode[] {
  const parts: SvgNode[] = [];
  if (isKnown(foot.pasternAngle)) {
    const reach = Math.hypot(...toeTop) + 66;
    parts.push(straight(draw, toe, away(toe, reach, foot.pasternAngle), { class: 'parallel', ...lines.level }));
    parts.push(straight(draw, toeTop, pasternTop, { class: 'pastern', ...lines.measured }));
  }
  if (isKnown(foot.toeLength)) parts.push(straight(draw, toe, toeTop, { class: 'toe', ...lines.measured }));
  if (isKnown(foot.heelAngle) && isKnown(foot.heelLength))
    parts.push(straight(draw, heel, heelTop, { class: 'heel', ...lines.measured }));
  return parts;
}

function labels(foot: FootShape, profile: Profile, draw: Pen, { units }: Settled): SvgNode[] {
  const { toe, toeTop, heel, heelTop } = profile;
  const { toeAngle, heelAngle, pasternAngle } = foot;
  const behind = draw.flip === 1 ? 'start' : 'end';
  const before = draw.flip === 1 ? 'end' : 'start';
  const low = draw.at([0, 0])[1] + 14;
  const px = (distance: number) => distance * draw.mmPerPx;
  const strong = { fill: inks.ink };
  const onHorn = isComplete(foot) ? { ...strong, stroke: tissues.horn } : strong;
  if (!isKnown(toeAngle)) return [notMeasured(say`toe angle`, draw.at([heel[0] / 2, 40]))];
  const parts = [
    arc(draw, toe, 20, toeAngle),
    words(formatQuantity(toeAngle, 'deg', units), draw.at(away(toe, px(40), toeAngle / 2 - 5)), 'middle', onHorn),
  ];
  if (isKnown(heelAngle) && isKnown(foot.heelLength)) {
    const at = draw.at(away(heel, px(24), heelAngle / 2 - 6));
    parts.push(arc(draw, heel, 20, heelAngle), words(formatQuantity(heelAngle, 'deg', units), at, behind, strong));
  } else parts.push(notMeasured(say`heel`, [draw.at([heel[0] + 46, 0])[0], low], before === 'end' ? 'end' : 'start'));
  if (isKnown(pasternAngle)) {
    const at = draw.at(away(away(toeTop, 36, pasternAngle), px(14), pasternAngle + 90));
    parts.push(words(formatQuantity(pasternAngle, 'deg', units), at, before, strong));
  } else parts.push(notMeasured(say`pastern`, draw.at([along(toeTop, heelTop, 0.5)[0], toeTop[1] + 14])));
  if (!isKnown(foot.toeLength)) parts.push(notMeasured(say`toe length`, draw.at(along(toeTop, heel, 0.45))));
  if (!isKnown(foot.length))
    parts.push(notMeasured(say`length`, [draw.at([0, 0])[0], low], before === 'end' ? 'start' : 'end'));
  return parts;
}
