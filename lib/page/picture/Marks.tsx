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
  const all = [...spots.values()].map(place);
  const centre: Spot = [mean(all.map(([x]) => x)), mean(all.map(([, y]) => y))];
  return (
    <svg class="picture-marks" aria-hidden="true" role="presentation">
      {marks.map((mark, index) => (
        <Mark key={index} mark={mark} place={place} />
      ))}
      {points.map(({ name, of }) => {
        const spot = spots.get(name);
        return spot && <Dot key={name} at={place(spot)} of={of} chosen={name === chosen} />;
      })}
      {marks.map((mark, index) => {
        const text = words(mark.of);
        return text && <Words key={index} {...wordsPlace(mark, place, centre)} text={text} />;
      })}
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

interface WordsPlace {
  readonly at: Spot;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** How far words stand from their line, in px of the screen. */
const BESIDE = 16;

/** A length is said beside its line, away from the other points; an angle between its legs, beyond its arc. */
function wordsPlace(mark: PictureMark, place: (spot: Spot) => Spot, centre: Spot): WordsPlace {
  if (mark.kind === 'angle')
    return { at: between(...([mark.corner, mark.from, mark.to].map(place) as Legs)), anchor: 'start' };
  const [from, to] = mark.kind === 'outline' ? [mark.points[0], mark.points[0]] : [mark.from, mark.to];
  const [[x, y], [u, v]] = [place(from), place(to)];
  const middle: Spot = [(x + u) / 2, (y + v) / 2];
  const along = towards([x, y], [u, v]) + Math.PI / 2;
  const away = Math.cos(along) * (centre[0] - middle[0]) + Math.sin(along) * (centre[1] - middle[1]);
  const at = out(middle, away > 0 ? along + Math.PI : along, BESIDE);
  const across = at[0] - middle[0];
  return { at, anchor: Math.abs(across) < BESIDE / 2 ? 'middle' : across < 0 ? 'end' : 'start' };
}

function Line({ d, kind }: { d: string; kind: string }) {
  return (
    <>
      <path class="halo" d={d} />
      <path class={`line ${kind}`} d={d} />
    </>
  );
}

function Words({ at: [x, y], anchor, text }: WordsPlace & { readonly text: string }) {
  return (
    <text class="picture-words" x={x} y={y} text-anchor={anchor}>
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

type Legs = [corner: Spot, from: Spot, to: Spot];

function arc(...[corner, from, to]: Legs): string {
  const [start, end] = [towards(corner, from), towards(corner, to)];
  const [[x, y], [u, v]] = [out(corner, start, RADIUS), out(corner, end, RADIUS)];
  return `M${x} ${y}A${RADIUS} ${RADIUS} 0 0 ${turn(start, end) > 0 ? 1 : 0} ${u} ${v}`;
}

function between(...[corner, from, to]: Legs): Spot {
  const start = towards(corner, from);
  return out(corner, start + turn(start, towards(corner, to)) / 2, RADIUS + 8);
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
