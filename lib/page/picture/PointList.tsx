import { say } from '../../words/say.ts';
import { nextPoint, type Placing } from './placing.ts';
import type { Slot } from './slots.ts';

interface ListProps {
  readonly points: readonly Slot[];
  readonly placing: Placing;
  readonly onChoose: (point: Slot) => void;
  readonly onTakeOff: (point: Slot) => void;
  /** Keys on the point in hand; the distance is in px of the picture. */
  readonly onKey: (event: KeyboardEvent, step: number) => void;
}

/** Every point with where it is, in the order in which they are placed; what a pointer does on the picture is done here by keys. */
export function PointList({ points, placing, onChoose, onTakeOff, onKey }: ListProps) {
  const next = nextPoint(points, placing);
  return (
    <ol class="picture-points" aria-label={say`Points`}>
      {points.map((point) => {
        const { name, code, title } = point;
        const state = stateWords(point, placing);
        const left = placing.skipped.has(code);
        const placed = placing.spots.has(name);
        if (left && point.extra) return null;
        return (
          <li key={name} class={name === next?.name ? 'next' : ''}>
            <button
              type="button"
              class="picture-point"
              aria-pressed={name === placing.chosen}
              onClick={() => onChoose(point)}
              onKeyDown={(event) => name === placing.chosen && onKey(event, event.shiftKey ? 10 : 1)}
            >
              <span>{title}</span> <span class="picture-where number">{state}</span>
            </button>
            {(placed || left) && (
              <button
                type="button"
                class="picture-off"
                aria-label={`${placed ? TAKE_OFF : WANT}: ${title}`}
                onClick={() => onTakeOff(point)}
              >
                {placed ? TAKE_OFF : WANT}
              </button>
            )}
          </li>
        );
      })}
    </ol>
  );
}

const TAKE_OFF = say`Take off`;
const WANT = say`Place it after all`;

function stateWords({ name, code, extra }: Slot, { spots, skipped }: Placing): string {
  const spot = spots.get(name);
  if (spot) return spotWords(spot);
  if (skipped.has(code)) return say`left out`;
  return extra ? say`one more, if you like` : say`not placed yet`;
}

/** @example spotWords([1203.4, 880]) // '1203, 880' */
export const spotWords = ([x, y]: readonly [number, number]) => `${Math.round(x)}, ${Math.round(y)}`;
