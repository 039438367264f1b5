import { say } from '../words/say.ts';
/** A limb by the trade's code: left fore, right fore, left hind, right hind. */
export type Limb = 'LF' | 'RF' | 'LH' | 'RH';
/** Seen from behind the horse. */
export type Side = 'left' | 'right';
/** Fore or hind. */
export type End = 'front' | 'hind';

/** The four limbs in the order in which they are listed everywhere. */
export const limbs: readonly Limb[] = ['LF', 'RF', 'LH', 'RH'];

const codes: Readonly<Record<End, Readonly<Record<Side, Limb>>>> = {
  front: { left: 'LF', right: 'RF' },
  hind: { left: 'LH', right: 'RH' },
};

const names: Readonly<Record<Limb, string>> = {
  LF: say`left fore`,
  RF: say`right fore`,
  LH: say`left hind`,
  RH: say`right hind`,
};

// Common practice, no source: the near side is the horse's left, where one mounts; the off side its right.
const sideWords = words<Side>({
  left: 'l left near n nearside nr ns links linker linkes',
  right: 'r right off o offside os rechts rechter rechtes',
});

const endWords = words<End>({
  front:
    'f fore front forefoot forelimb foreleg forehoof thoracic v vorn vorne vorder vorderhuf vorderbein vordere vorderer',
  hind: 'h hind rear r back hindfoot hindlimb hindleg hindhoof pelvic hinten hinter hinterhuf hinterbein hintere hinterer',
});

const fillers = new Set('foot feet hoof hooves limb leg side the horse s huf bein gliedmaße'.split(' '));

/** End before side only: `lb` is a pound. */
const backCodes: ReadonlyMap<string, Limb> = new Map([
  ['bl', 'LH'],
  ['br', 'RH'],
]);

function words<T extends string>(lists: Readonly<Record<T, string>>): ReadonlyMap<string, T> {
  const map = new Map<string, T>();
  for (const [meaning, list] of Object.entries<string>(lists))
    for (const word of list.split(' ')) map.set(word, meaning as T);
  return map;
}

/**
 * The limb that someone's words mean: `LF`, `left fore`, `near fore`, `n/f`, `off hind`, `Front Left`, `RR`, `vorn links`,
 * `VL`. Side and end may come in either order; near is left and off is right, and `HL` is hind left in both languages.
 * @param text  as written in a cell or a heading
 * @returns the limb code, or `undefined` where the words don't name one limb
 * @source common practice, no source
 * @example parseLimb('off hind') // 'RH'
 */
export function parseLimb(text: string): Limb | undefined {
  const parts = text.toLowerCase().match(/\p{L}+/gu);
  if (parts === null) return undefined;
  const said = parts.filter((word) => !fillers.has(word));
  if (said.length === 1) return backCodes.get(said[0]) ?? fromOneWord(said[0]);
  return said.length === 2 ? fromTwoWords(said[0], said[1]) : undefined;
}

/** `lf`, `nearfore`, `hindleft`: one word, cut wherever both halves mean something. */
function fromOneWord(word: string): Limb | undefined {
  for (let cut = 1; cut < word.length; cut++) {
    const limb = fromTwoWords(word.slice(0, cut), word.slice(cut));
    if (limb !== undefined) return limb;
  }
  return undefined;
}

/** Side before end first: `rr` is the right rear, and `lr` the left rear. */
function fromTwoWords(first: string, second: string): Limb | undefined {
  return limbOf(sideWords.get(first), endWords.get(second)) ?? limbOf(sideWords.get(second), endWords.get(first));
}

function limbOf(side: Side | undefined, end: End | undefined): Limb | undefined {
  return side === undefined || end === undefined ? undefined : codes[end][side];
}

/** The limb's name in words: `left fore`. */
export function limbName(limb: Limb): string {
  return names[limb];
}

/** Whether a text is one of the four codes. */
export function isLimb(text: string): text is Limb {
  return Object.hasOwn(names, text);
}

/** Left or right. */
export function sideOf(limb: Limb): Side {
  return limb.startsWith('L') ? 'left' : 'right';
}

/** Front or hind. */
export function endOf(limb: Limb): End {
  return limb.endsWith('F') ? 'front' : 'hind';
}

/** The other foot of the pair: `LF` and `RF`, `LH` and `RH`. */
export function oppositeOf(limb: Limb): Limb {
  return codes[endOf(limb)][sideOf(limb) === 'left' ? 'right' : 'left'];
}
