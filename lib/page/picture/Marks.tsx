import type { DisplayUnits } from '../../sheet/display.ts';
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
  return (
    <svg class="picture-marks" aria-hidden="true" role="presentation">
      {marks.map((mark, index) => (
        <Mark key={index} mark={mark} place={place} words={words} />
      ))}
      {points.map(({ name, of }) => {
        const spot = spots.get(name);
        return spot && <Dot key={name} at={place(spot)} of={of} chosen={name === chosen} />;
      })}
    </svg>
  );
}

interface MarkProps {
  readonly mark: PictureMark;
  readonly place: (spot: Spot) => Spot;
  readonly words: (measure: string) => string | undefined;
}

function Mark({ mark, place, words }: MarkProps) {
  switch (mark.kind) {
    case 'line':
    case 'length': {
      const [from, to] = [place(mark.from), place(mark.to)];
      const middle: Spot = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
      return (
        <>
          <Line d={path([from, to])} kind={mark.kind} />
          <Words at={middle} text={words(mark.of)} />
        </>
      );
    }
    case 'outline':
      return <Line d={path(mark.points.map(place))} kind="length" />;
    case 'angle': {
      const [corner, from, to] = [mark.corner, mark.from, mark.to].map(place);
      return (
        <>
          <Line d={arc(corner, from, to)} kind="angle" />
          <Words at={between(corner, from, to)} text={words(mark.of)} />
        </>
      );
    }
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

function Words({ at: [x, y], text }: { at: Spot; text: string | undefined }) {
  if (text === undefined) return null;
  return (
    <text class="picture-words" x={x} y={y}>
      {text}
    </text>
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

/** How far from its corner an angle is drawn, in px of the screen. */
const RADIUS = 40;

const path = (spots: readonly Spot[]) => spots.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('');

const towards = ([x, y]: Spot, [u, v]: Spot) => Math.atan2(v - y, u - x);
const out = ([x, y]: Spot, angle: number, far: number): Spot => [x + far * Math.cos(angle), y + far * Math.sin(angle)];
/** From one direction to another the shorter way round, in radians. */
const turn = (from: number, to: number) => Math.atan2(Math.sin(to - from), Math.cos(to - from));

function arc(at: Spot, along: Spot, to: Spot): string {
  const [from, until] = [towards(at, along), towards(at, to)];
  const [[x, y], [u, v]] = [out(at, from, RADIUS), out(at, until, RADIUS)];
  return `M${x} ${y}A${RADIUS} ${RADIUS} 0 0 ${turn(from, until) > 0 ? 1 : 0} ${u} ${v}`;
}

function between(at: Spot, along: Spot, to: Spot): Spot {
  const from = towards(at, along);
  return out(at, from + turn(from, towards(at, to)) / 2, RADIUS + 30);
}
