import type { PictureMark, Spot } from './work.ts';

/** How far from its corner an angle is drawn, in px of the screen. */
export const RADIUS = 40;
/** How far words stand from their line, and what a letter and a line of them take, in px of the screen. */
const BESIDE = 14;
const LETTER = 7.6;
const LINE = 17;

/** Words of a measure where they stand over the picture. */
export interface MarkWords {
  readonly text: string;
  readonly at: Spot;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** The direction from one spot to another, in radians clockwise as seen. */
export const towards = ([x, y]: Spot, [u, v]: Spot) => Math.atan2(v - y, u - x);
/** The spot so far from another in a direction. */
export const out = ([x, y]: Spot, angle: number, far: number): Spot => [
  x + far * Math.cos(angle),
  y + far * Math.sin(angle),
];
/** From one direction to another the shorter way round, in radians. */
export const turn = (from: number, to: number) => Math.atan2(Math.sin(to - from), Math.cos(to - from));

/**
 * Where each measure is said: a length beside its line, first on the side away from the foot; an angle between its legs,
 * beyond its arc. Words that would lie on others go to the next place that is free.
 * @param words  of a measure; `undefined` where there are none
 * @param place  from the picture to the screen
 * @param foot  the points of the foot on the screen
 */
export function wordsOf(
  marks: readonly PictureMark[],
  words: (measure: string) => string | undefined,
  place: (spot: Spot) => Spot,
  foot: readonly Spot[],
): readonly MarkWords[] {
  const centre: Spot = [mean(foot.map(([x]) => x)), mean(foot.map(([, y]) => y))];
  const taken: Box[] = [];
  return marks.flatMap((mark) => {
    const text = words(mark.of);
    if (text === undefined) return [];
    const places = placesOf(mark, place, centre).map((one) => ({ ...one, text }));
    const free = places.find((one) => !taken.some((box) => overlap(box, boxOf(one)))) ?? places[0];
    taken.push(boxOf(free));
    return [free];
  });
}

type Place = Omit<MarkWords, 'text'>;

/** Where a mark's words may stand, the best first. */
function placesOf(mark: PictureMark, place: (spot: Spot) => Spot, centre: Spot): readonly Place[] {
  if (mark.kind === 'angle') {
    const [corner, from, to] = [mark.corner, mark.from, mark.to].map(place);
    const start = towards(corner, from);
    const middle = start + turn(start, towards(corner, to)) / 2;
    const anchor = Math.cos(middle) < 0 ? 'end' : 'start';
    return [8, 26, 44, 62].map((more) => ({ at: out(corner, middle, RADIUS + more), anchor }));
  }
  const [from, to] = (mark.kind === 'outline' ? [mark.points[0], mark.points[0]] : [mark.from, mark.to]).map(place);
  const across = towards(from, to) + Math.PI / 2;
  const places = [0.5, 0.25, 0.75].flatMap((share) => {
    const on: Spot = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
    const inwards = Math.cos(across) * (centre[0] - on[0]) + Math.sin(across) * (centre[1] - on[1]) > 0;
    return [inwards ? across + Math.PI : across, inwards ? across : across + Math.PI].map((way): Place => {
      const side = Math.cos(way);
      return { at: out(on, way, BESIDE), anchor: Math.abs(side) < 0.5 ? 'middle' : side < 0 ? 'end' : 'start' };
    });
  });
  return [...places, ...[1, 2, 3].map((lines) => ({ ...places[0], at: moved(places[0].at, lines * LINE) }))];
}

const moved = ([x, y]: Spot, down: number): Spot => [x, y + down];

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function boxOf({ text, at: [x, y], anchor }: MarkWords): Box {
  const width = text.length * LETTER;
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, right: left + width, top: y - LINE / 2, bottom: y + LINE / 2 };
}

const overlap = (a: Box, b: Box) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
