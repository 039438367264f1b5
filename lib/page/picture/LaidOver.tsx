import { useEffect, useId, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { say } from '../../words/say.ts';
import { FailureLine, useFailure } from '../parts/FailureLine.tsx';
import { asItLies, seenThrough, sightOf, through } from './frames.ts';
import { openPicture } from './openPicture.ts';
import { closePyramid, density, levelFor, type Pyramid, pyramidOf } from './pyramid.ts';
import type { Size } from './sight.ts';
import { codeOf } from './slots.ts';
import type { FlatMap, KeptReading, PictureAnswer, PictureWork, Spot } from './work.ts';

interface OverProps {
  readonly work: PictureWork;
  readonly reading: KeptReading;
  readonly answer: PictureAnswer;
  readonly pyramid: Pyramid;
  /** The other pictures of the same foot from the same view. */
  readonly others: readonly KeptReading[];
  readonly kept: readonly KeptReading[];
}

/** Two pictures of one foot at one size and on one level ground line, the other let through as much as is wanted. */
export function LaidOver({ work, reading, answer, pyramid, others, kept }: OverProps) {
  const id = useId();
  const [photo, setPhoto] = useState('');
  const [share, setShare] = useState(50);
  const [other, setOther] = useState<Pyramid | undefined>();
  const [failure, attempt] = useFailure();
  const chosen = others.find((one) => one.photo === photo);
  useEffect(() => {
    if (!chosen) return;
    let gone = false;
    let made: Pyramid | undefined;
    attempt(async () => {
      const blob = await work.shelf.picture(photo);
      if (!blob) throw new Error(say`The picture ${photo} is not on this device any more`);
      made = await pyramidOf(await openPicture(blob, photo));
      if (gone) closePyramid(made);
      else setOther(made);
    });
    return () => {
      gone = true;
      setOther(undefined);
      if (made) closePyramid(made);
    };
  }, [photo, chosen === undefined]);

  const laid = useMemo(() => chosen && work.layOver(reading, chosen), [reading, chosen]);
  return (
    <section class="picture-over" aria-labelledby={id}>
      <h2 id={id}>{say`Beside another picture of this foot`}</h2>
      {others.length === 0 ? (
        <p class="note">{say`Once there are two pictures of this foot from this side on the device, they can be laid over each other.`}</p>
      ) : (
        <label class="picture-field unprinted">
          {say`Lay over it`}
          <select value={photo} onChange={(event) => setPhoto(event.currentTarget.value)}>
            <option value="">{say`nothing`}</option>
            {others.map((one) => (
              <option key={one.photo} value={one.photo}>
                {whenWords(one)}
              </option>
            ))}
          </select>
        </label>
      )}
      <FailureLine failure={failure} />
      {laid && 'failure' in laid && <p class="note">{laid.failure}.</p>}
      {chosen && other && laid && 'map' in laid && (
        <>
          <label class="picture-field picture-share">
            {say`How much of the other shows`}
            <input
              type="range"
              min="0"
              max="100"
              step="5"
              value={share}
              aria-valuetext={say`${share} of 100`}
              onInput={(event) => setShare(Number(event.currentTarget.value))}
            />
          </label>
          <Both
            label={say`${whenWords(reading)}, and over it ${whenWords(chosen)}`}
            share={share / 100}
            layers={[
              { pyramid, map: asItLies, answer, spots: spotsOf(reading, work) },
              { pyramid: other, map: laid.map, answer: work.answer(chosen, kept), spots: spotsOf(chosen, work) },
            ]}
          />
          <ul class="picture-key">
            <li>
              <Sample which="first" /> {whenWords(reading)}
            </li>
            <li>
              <Sample which="second" /> {whenWords(chosen)}
            </li>
          </ul>
        </>
      )}
    </section>
  );
}

/** The points of the foot itself: what is to be seen. */
function spotsOf({ subject, size, points }: KeptReading, work: PictureWork): readonly Spot[] {
  const foot = work
    .landmarks(subject.view, subject.limb, size.kind)
    .filter(({ of, code }) => of === 'foot' && code !== 'ground');
  const codes = new Set(foot.map(({ code }) => code));
  return [...points].flatMap(([name, spot]) => (codes.has(codeOf(name)) ? [spot] : []));
}

const whenWords = ({ subject: { date, moment }, photo }: KeptReading) => `${date}, ${moment} (${photo})`;

function Sample({ which }: { which: string }) {
  return (
    <svg class="picture-sample" viewBox="0 0 36 10" aria-hidden="true" role="presentation">
      <path class={`line ${which}`} d="M0 5H36" />
    </svg>
  );
}

interface Layer {
  readonly pyramid: Pyramid;
  /** Onto the first picture. */
  readonly map: FlatMap;
  readonly answer: PictureAnswer;
  readonly spots: readonly Spot[];
}

interface BothProps {
  readonly label: string;
  readonly share: number;
  readonly layers: readonly Layer[];
}

function Both({ label, share, layers }: BothProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [room, setRoom] = useState<Size | undefined>();
  useLayoutEffect(() => {
    const element = canvas.current!.parentElement!;
    const watched = new ResizeObserver(() => setRoom({ width: element.clientWidth, height: element.clientHeight }));
    watched.observe(element);
    return () => watched.disconnect();
  }, []);
  const spots = layers.flatMap(({ map, spots }) => spots.map((spot) => through(map, spot)));
  const sight = room && sightOf(spots, room);
  const maps = sight ? layers.map(({ map }) => seenThrough(map, sight)) : [];
  useLayoutEffect(() => {
    if (!room || maps.length === 0) return;
    const dense = density();
    const element = canvas.current!;
    element.width = Math.round(room.width * dense);
    element.height = Math.round(room.height * dense);
    const context = element.getContext('2d')!;
    layers.forEach(({ pyramid }, index) => {
      context.globalAlpha = index === 0 ? 1 : share;
      draw(context, pyramid, maps[index], dense);
    });
  });
  return (
    <div class="picture-room picture-both" role="img" aria-label={label}>
      <canvas ref={canvas} />
      <svg class="picture-marks" aria-hidden="true" role="presentation">
        {maps.flatMap((map, index) =>
          layers[index].answer.marks.flatMap((mark, at) => {
            if (mark.kind === 'angle') return [];
            const spots = mark.kind === 'outline' ? mark.points : [mark.from, mark.to];
            const d = spots.map((spot, i) => `${i === 0 ? 'M' : 'L'}${through(map, spot).join(' ')}`).join('');
            return [
              <path key={`${index} ${at} halo`} class="halo" d={d} />,
              <path key={`${index} ${at}`} class={`line ${index === 0 ? 'first' : 'second'}`} d={d} />,
            ];
          }),
        )}
      </svg>
    </div>
  );
}

function draw(context: CanvasRenderingContext2D, pyramid: Pyramid, map: FlatMap, dense: number): void {
  const { levels, width } = pyramid;
  const level = levels[levelFor(Math.hypot(map[0], map[1]) * dense, levels.length)];
  const larger = width / level.width;
  context.setTransform(
    map[0] * larger * dense,
    map[1] * larger * dense,
    map[2] * larger * dense,
    map[3] * larger * dense,
    map[4] * dense,
    map[5] * dense,
  );
  context.drawImage(level, 0, 0);
}
