import type { PictureLandmark, Spot } from './work.ts';

/** One point that is placed by hand: a landmark, or one of the many on it. */
export interface Slot {
  /** Unlike that of any other: the landmark's code, from the second of many on with its number behind a space. */
  readonly name: string;
  readonly code: string;
  readonly title: string;
  readonly where: string;
  readonly of: PictureLandmark['of'];
  readonly optional: boolean;
  /** One more than need be: it is offered and only asked for where the landmark wants a long row of points. */
  readonly extra: boolean;
  /** Whether it is asked for when its turn comes. */
  readonly asked: boolean;
}

/** From as many points on a row is a whole outline, and one more is always asked for. */
const LONG = 5;

/**
 * The points to be placed, in order: one a landmark; of one with many as many as are needed, as many as there are, and
 * one more.
 */
export function slotsOf(landmarks: readonly PictureLandmark[], spots: ReadonlyMap<string, Spot>): readonly Slot[] {
  return landmarks.flatMap(({ code, title, where, of, optional, many, least }) => {
    const common = { code, where, of, optional };
    if (!many) return [{ ...common, name: code, title, extra: false, asked: true }];
    let highest = 0;
    for (const name of spots.keys()) if (codeOf(name) === code) highest = Math.max(highest, numberOf(name));
    const whole = highest >= least;
    const count = Math.max(highest, least) + (whole ? 1 : 0);
    return Array.from({ length: count }, (_, at): Slot => {
      const extra = at >= Math.max(highest, least);
      const name = at === 0 ? code : `${code} ${at + 1}`;
      return { ...common, name, title: `${title}, ${at + 1}`, extra, asked: !extra || least >= LONG };
    });
  });
}

/** The landmark of a slot. @example codeOf('ground 2') // 'ground' */
export const codeOf = (slot: string) => slot.split(' ')[0];

/** Which of the many a slot is. @example numberOf('ground 2') // 2 */
export const numberOf = (slot: string) => Number(slot.split(' ')[1] ?? 1);
