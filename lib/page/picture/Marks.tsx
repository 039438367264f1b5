import type { DisplayUnits } from '../../sheet/display.ts';
import { out, RADIUS, towards, turn, wordsOf } from './markWords.ts';
import { measureWords } from './measureWords.ts';
import { type Sight, toRoom } from './sight.ts';
import type { Slot } from './slots.ts';
import type { PictureMark, PictureMeasure, Spot } from './work.ts';

interface MarksProps {
  readonly sight: Sight;
  readonly points: readonly Slot[];
  readonly spots: ReadonlyMap<string, Spot>;
  readonly chosen: string;
  readonly marks: readonly PictureMark[];
  readonly measures: readonly PictureMeasure[];
  readonly units: DisplayUnits;
}

/** Lines, angles, lengths and points over the picture. Points of the foot are round, those of the scale square. */
export function Marks({ sight, points, spots, chosen, marks, measures, units }: MarksProps) {
  const place = (spot: Spot) => toRoom(sight, spot);
  const words = (name: string) => {
    const measure = measures.find((one) => one.name === name);
    return measure && !measure.refused ? measureWords(measure, units) : undefined;
  };
  const feet = points
    .filter(({ name, of }) => of === 'foot' && spots.has(name))
    .map(({ name }) => place(spots.get(name)!));
  return (
    <svg class="picture-marks" aria-hidden="true" role="presentation">
      {marks.map((mark, index) => (
        <Mark key={index} mark={mark} place={place} />
      ))}
      {points.map(({ name, of }) => {
        const spot = spots.get(name);
        return spot && <Dot key={name} at={place(spot)} of={of} chosen={name === chosen} />;
      })}
      {wordsOf(marks, words, place, feet).map(({ text, at: [x, y], anchor }, index) => (
        <text key={index} class="picture-words" x={x} y={y} text-anchor={anchor}>
          {text}
        </text>
      ))}
    </svg>
  );
}

function Mark({ mark, place }: { mark: PictureMark; place: (spot: Spot) => Spot }) {
  switch (mark.kind) {
    case 'line':
    case 'length':
      return <Line d={path([place(mark.from), place(mark.to)])} kind={mark.kind} />;
    case 'outline':
      return <Line d={path(mark.points.map(place))} kind="length" />;
    case 'angle':
      return <Line d={arc(place(mark.corner), place(mark.from), place(mark.to))} kind="angle" />;
  }
}

function Line({ d, kind }: { d: string; kind: string }) {
  return (
    <>
      <path class="halo" d={d} />
      <path class={`line ${kind}`} d={d} />
    </>
  );
}

function Dot({ at: [x, y], of, chosen }: { at: Spot; of: 'scale' | 'foot'; chosen: boolean }) {
  const size = chosen ? 9 : 6;
  const ring = (kind: string) =>
    of === 'foot' ? (
      <circle class={kind} cx={x} cy={y} r={size} />
    ) : (
      <rect class={kind} x={x - size} y={y - size} width={2 * size} height={2 * size} />
    );
  return (
    <g class={`dot${chosen ? ' chosen' : ''}`}>
      {ring('halo')}
      {ring('ring')}
      {chosen && <path class="ring" d={`M${x} ${y - 17}v8M${x} ${y + 17}v-8M${x - 17} ${y}h8M${x + 17} ${y}h-8`} />}
      <circle class="middle" cx={x} cy={y} r={1.4} />
    </g>
  );
}

const path = (spots: readonly Spot[]) => spots.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('');

function arc(corner: Spot, from: Spot, to: Spot): string {
  const [start, end] = [towards(corner, from), towards(corner, to)];
  const [[x, y], [u, v]] = [out(corner, start, RADIUS), out(corner, end, RADIUS)];
  return `M${x} ${y}A${RADIUS} ${RADIUS} 0 0 ${turn(start, end) > 0 ? 1 : 0} ${u} ${v}`;
}
