import { say } from '../../words/say.ts';
import type { Slot } from './slots.ts';
import type { Spot } from './work.ts';

/** Where the points are by slot, and which landmarks were left out by code. */
export interface Placed {
  readonly spots: ReadonlyMap<string, Spot>;
  readonly skipped: ReadonlySet<string>;
}

interface Step extends Placed {
  /** What led away from here, in words. */
  readonly words: string;
  /** Steps of one drag or one run of keys are one. */
  readonly stroke: string;
}

/** Points as they are being placed: what stands, what can be taken back or done again, which point is in hand. */
export interface Placing extends Placed {
  readonly past: readonly Step[];
  readonly future: readonly Step[];
  /** The point in hand; `''` where none is. */
  readonly chosen: string;
}

/** Begins with points as they were kept, or with none. */
export function begin(spots: ReadonlyMap<string, Spot> = new Map(), skipped: Iterable<string> = []): Placing {
  return { spots, skipped: new Set(skipped), past: [], future: [], chosen: '' };
}

/**
 * The point that is placed next: the one in hand where it has no place yet, else the first after it that is asked for and
 * has none, else the first of all; landmarks that were left out don't count.
 * @returns `undefined` where every point is placed or left out
 */
export function nextPoint(points: readonly Slot[], placing: Placing): Slot | undefined {
  const waits = ({ name, code, asked }: Slot) => asked && !placing.spots.has(name) && !placing.skipped.has(code);
  const at = points.findIndex(({ name }) => name === placing.chosen);
  if (at >= 0 && !placing.spots.has(points[at].name)) return points[at];
  return points.slice(at + 1).find(waits) ?? points.find(waits);
}

/**
 * Puts a point where it belongs and takes it in hand.
 * @param stroke  what changes with one name in a row is taken back at once; a change of its own where left out
 */
export function put(placing: Placing, point: Slot, spot: Spot, stroke = ''): Placing {
  const spots = new Map(placing.spots).set(point.name, spot);
  const words = placing.spots.has(point.name) ? say`moving ${point.title}` : say`placing ${point.title}`;
  const last = placing.past.at(-1);
  const skipped = without(placing.skipped, point.code);
  if (stroke !== '' && last?.stroke === stroke) return { ...placing, spots, skipped, future: [], chosen: point.name };
  return { ...after(placing, words, stroke), spots, skipped, chosen: point.name };
}

/** Leaves out what is still wanted of a point's landmark; the next in order is then in hand. */
export function skip(placing: Placing, point: Slot): Placing {
  const skipped = new Set(placing.skipped).add(point.code);
  const title = point.title.replace(/, \d+$/, '');
  const words = point.extra ? say`no more of ${title}` : say`leaving out ${title}`;
  return { ...after(placing, words), skipped, chosen: '' };
}

/** Takes a placed point off the picture, or wants one that was left out after all; it is the next to be placed. */
export function takeOff(placing: Placing, point: Slot): Placing {
  const spots = new Map(placing.spots);
  const words = spots.delete(point.name) ? say`taking off ${point.title}` : say`wanting ${point.title}`;
  return { ...after(placing, words), spots, skipped: without(placing.skipped, point.code), chosen: point.name };
}

/** Takes a point in hand. */
export function choose(placing: Placing, name: string): Placing {
  return { ...placing, chosen: name };
}

/** Takes the last change back. */
export function back(placing: Placing): Placing {
  const step = placing.past.at(-1);
  if (!step) return placing;
  const { words, stroke } = step;
  const { spots, skipped, chosen } = placing;
  return {
    spots: step.spots,
    skipped: step.skipped,
    past: placing.past.slice(0, -1),
    future: [...placing.future, { spots, skipped, words, stroke }],
    chosen: step.spots.has(chosen) ? chosen : '',
  };
}

/** Does again what was taken back last. */
export function forth(placing: Placing): Placing {
  const step = placing.future.at(-1);
  if (!step) return placing;
  const { spots, skipped, chosen } = placing;
  return {
    spots: step.spots,
    skipped: step.skipped,
    past: [...placing.past, { spots, skipped, words: step.words, stroke: '' }],
    future: placing.future.slice(0, -1),
    chosen: step.spots.has(chosen) ? chosen : '',
  };
}

function after({ spots, skipped, past, chosen }: Placing, words: string, stroke = ''): Placing {
  return { spots, skipped, past: [...past, { spots, skipped, words, stroke }], future: [], chosen };
}

function without(names: ReadonlySet<string>, name: string): ReadonlySet<string> {
  const left = new Set(names);
  left.delete(name);
  return left;
}
