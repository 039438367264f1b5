import type { Spot } from './work.ts';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Which part of a picture is seen in a room on the screen: a spot of the picture lies at `spot · scale + (x, y)`, in px. */
export interface Sight {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/** How many px of the screen one px of the picture takes at most. */
const CLOSEST = 12;

/** The whole picture, in the middle of the room. */
export function wholeSight(picture: Size, room: Size): Sight {
  const scale = Math.min(room.width / picture.width, room.height / picture.height);
  return {
    scale,
    x: (room.width - picture.width * scale) / 2,
    y: (room.height - picture.height * scale) / 2,
  };
}

/** Where a spot of the picture is in the room. */
export const toRoom = ({ scale, x, y }: Sight, [px, py]: Spot): Spot => [px * scale + x, py * scale + y];

/** Which spot of the picture is at a place of the room. */
export const toPicture = ({ scale, x, y }: Sight, [rx, ry]: Spot): Spot => [(rx - x) / scale, (ry - y) / scale];

/** The same sight moved by px of the screen. */
export const moved = (sight: Sight, by: Spot): Sight => ({ ...sight, x: sight.x + by[0], y: sight.y + by[1] });

/** A closer or wider sight; what lies at one place of the room stays there. */
export function zoomed(sight: Sight, factor: number, [x, y]: Spot): Sight {
  return { scale: sight.scale * factor, x: x - (x - sight.x) * factor, y: y - (y - sight.y) * factor };
}

/** The sight after two fingers have moved: what was under their middle stays under it. */
export function pinched(sight: Sight, before: readonly [Spot, Spot], now: readonly [Spot, Spot]): Sight {
  const apart = ([a, b]: readonly [Spot, Spot]) => Math.hypot(a[0] - b[0], a[1] - b[1]);
  const middle = ([a, b]: readonly [Spot, Spot]): Spot => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const factor = apart(before) > 0 ? apart(now) / apart(before) : 1;
  const [from, to] = [middle(before), middle(now)];
  return moved(zoomed(sight, factor, from), [to[0] - from[0], to[1] - from[1]]);
}

/** The sight held so that the picture fills the room or lies in its middle, neither too close nor wider than the whole. */
export function held(sight: Sight, picture: Size, room: Size): Sight {
  const least = wholeSight(picture, room).scale;
  const scale = Math.min(Math.max(sight.scale, least), Math.max(CLOSEST, least));
  const { x, y } = zoomed(sight, scale / sight.scale, [room.width / 2, room.height / 2]);
  return { scale, x: within(x, picture.width * scale, room.width), y: within(y, picture.height * scale, room.height) };
}

function within(start: number, length: number, room: number): number {
  if (length <= room) return (room - length) / 2;
  return Math.min(0, Math.max(room - length, start));
}

/** The sight that brings a spot into the room where it is out of it, as little as can be. */
export function bringing(sight: Sight, spot: Spot, room: Size, margin = 24): Sight {
  const [x, y] = toRoom(sight, spot);
  const into = (place: number, length: number) => Math.min(Math.max(place, margin), length - margin) - place;
  return moved(sight, [into(x, room.width), into(y, room.height)]);
}
