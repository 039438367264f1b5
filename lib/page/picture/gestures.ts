import { type Sight, toPicture, toRoom } from './sight.ts';
import type { Spot } from './work.ts';

/** What fingers, pen and mouse do on a picture, told in the picture's own words. */
export interface Gestures {
  /** The sight as it is now. */
  readonly sight: () => Sight;
  readonly onSight: (change: (sight: Sight) => Sight) => void;
  /** The placed points, by name. */
  readonly spots: () => ReadonlyMap<string, Spot>;
  /** Where someone would place a point now, for the magnifier; `undefined` when nobody aims any more. */
  readonly onAim: (spot: Spot | undefined) => void;
  /** Someone taps or clicks. @returns whether a point was placed */
  readonly onPlace: (spot: Spot) => boolean;
  /** A point is taken hold of. */
  readonly onHold: (name: string) => void;
  /** A held point is moved; all that has one `stroke` is one movement. */
  readonly onDrag: (name: string, spot: Spot, stroke: string) => void;
  readonly onPinch: (before: readonly [Spot, Spot], now: readonly [Spot, Spot]) => void;
}

type Doing =
  | { readonly kind: 'press'; readonly from: Spot; readonly precise: boolean; readonly timer: number }
  | { readonly kind: 'aim' }
  | { readonly kind: 'pan'; last: Spot }
  | {
      readonly kind: 'hold';
      readonly name: string;
      readonly offset: Spot;
      readonly stroke: string;
      readonly from: Spot;
      moves: boolean;
    }
  | { readonly kind: 'pinch'; last: readonly [Spot, Spot] }
  | { readonly kind: 'nothing' };

/** How far from a point one may take hold of it, in px of the screen. */
const REACH = { mouse: 12, pen: 16, touch: 26 } as const;
/** How far a press may slip and be a press still. */
const SLIP = { mouse: 4, pen: 7, touch: 9 } as const;
/** How long a finger rests before it aims, in ms. */
const REST = 280;

let strokes = 0;

/**
 * Reads pointer events on an element. A tap or click places; a drag from a point moves it, by as much as the finger moves
 * and not to under it; a drag from elsewhere moves the picture; a finger that rests aims, and places where it is lifted;
 * two fingers zoom.
 * @returns what ends it
 */
export function listenToGestures(element: HTMLElement, told: Gestures): () => void {
  const fingers = new Map<number, Spot>();
  let doing: Doing = { kind: 'nothing' };
  const begin = (next: Doing) => {
    if (doing.kind === 'press') clearTimeout(doing.timer);
    doing = next;
  };
  const at = ({ clientX, clientY }: PointerEvent): Spot => {
    const { left, top } = element.getBoundingClientRect();
    return [clientX - left - element.clientLeft, clientY - top - element.clientTop];
  };
  const kindOf = ({ pointerType }: PointerEvent) =>
    (pointerType in REACH ? pointerType : 'mouse') as keyof typeof REACH;
  const nearest = (place: Spot, reach: number): string | undefined => {
    const all = [...told.spots()].map(([name, spot]) => ({ name, away: distance(toRoom(told.sight(), spot), place) }));
    const [first] = all.sort((a, b) => a.away - b.away);
    return first && first.away <= reach ? first.name : undefined;
  };
  const pair = () => [...fingers.values()].slice(0, 2) as unknown as readonly [Spot, Spot];
  const aimAt = (place: Spot) => told.onAim(toPicture(told.sight(), place));

  function onDown(event: PointerEvent) {
    if (event.pointerType === 'mouse' && event.button > 1) return;
    element.setPointerCapture(event.pointerId);
    const place = at(event);
    fingers.set(event.pointerId, place);
    if (fingers.size === 2) {
      begin({ kind: 'pinch', last: pair() });
      told.onAim(undefined);
      return;
    }
    if (fingers.size > 2) return;
    if (event.button === 1) {
      event.preventDefault();
      begin({ kind: 'pan', last: place });
      return;
    }
    const kind = kindOf(event);
    const name = nearest(place, REACH[kind]);
    if (name !== undefined) {
      const spot = told.spots().get(name)!;
      const [x, y] = toRoom(told.sight(), spot);
      const offset: Spot = [x - place[0], y - place[1]];
      begin({ kind: 'hold', name, offset, stroke: `drag ${++strokes}`, from: place, moves: false });
      told.onAim(spot);
      return;
    }
    const timer = kind === 'touch' ? setTimeout(rested, REST, place) : 0;
    begin({ kind: 'press', from: place, precise: kind !== 'touch', timer: Number(timer) });
    if (kind !== 'touch') aimAt(place);
  }

  function rested(place: Spot) {
    begin({ kind: 'aim' });
    aimAt(place);
  }

  function onMove(event: PointerEvent) {
    const place = at(event);
    if (!fingers.has(event.pointerId)) {
      if (event.pointerType !== 'touch') aimAt(place);
      return;
    }
    fingers.set(event.pointerId, place);
    const slip = SLIP[kindOf(event)];
    switch (doing.kind) {
      case 'press':
        if (distance(place, doing.from) > slip) {
          const [x, y] = doing.from;
          begin({ kind: 'pan', last: place });
          told.onAim(undefined);
          told.onSight((sight) => ({ ...sight, x: sight.x + place[0] - x, y: sight.y + place[1] - y }));
        }
        return;
      case 'pan': {
        const [x, y] = doing.last;
        doing.last = place;
        told.onSight((sight) => ({ ...sight, x: sight.x + place[0] - x, y: sight.y + place[1] - y }));
        return;
      }
      case 'aim':
        aimAt(place);
        return;
      case 'hold': {
        const { name, offset, stroke, from } = doing;
        // A tap that only takes a point in hand must not shift it.
        if (!doing.moves && distance(place, from) <= slip) return;
        if (!doing.moves) told.onHold(name);
        doing.moves = true;
        const spot = toPicture(told.sight(), [place[0] + offset[0], place[1] + offset[1]]);
        told.onDrag(name, spot, stroke);
        told.onAim(spot);
        return;
      }
      case 'pinch': {
        const now = pair();
        told.onPinch(doing.last, now);
        doing.last = now;
      }
    }
  }

  function onUp(event: PointerEvent) {
    const known = fingers.delete(event.pointerId);
    if (!known) return;
    const place = at(event);
    const touch = event.pointerType === 'touch';
    const was = doing;
    if (fingers.size > 0) {
      // One finger of two is lifted: the other goes on moving the picture.
      begin(was.kind === 'pinch' ? { kind: 'pan', last: [...fingers.values()][0] } : { kind: 'nothing' });
      return;
    }
    begin({ kind: 'nothing' });
    if (event.type === 'pointerup') {
      const spot = toPicture(told.sight(), place);
      if (was.kind === 'press' || was.kind === 'aim') told.onPlace(spot);
      // Two landmarks may lie in one place, so a tap on a point places the next one, as long as one is wanted.
      else if (was.kind === 'hold' && !was.moves && !told.onPlace(spot)) told.onHold(was.name);
    }
    if (touch) told.onAim(undefined);
  }

  const onLeave = (event: PointerEvent) => {
    if (!fingers.has(event.pointerId)) told.onAim(undefined);
  };
  // A resting finger would open the browser's own menu.
  const onMenu = (event: Event) => event.preventDefault();
  const listeners = {
    pointerdown: onDown,
    pointermove: onMove,
    pointerup: onUp,
    pointercancel: onUp,
    pointerleave: onLeave,
    contextmenu: onMenu,
  };
  for (const [name, listener] of Object.entries(listeners))
    element.addEventListener(name, listener as (event: Event) => void);
  return () => {
    begin({ kind: 'nothing' });
    for (const [name, listener] of Object.entries(listeners))
      element.removeEventListener(name, listener as (event: Event) => void);
  };
}

const distance = ([x, y]: Spot, [u, v]: Spot) => Math.hypot(x - u, y - v);
