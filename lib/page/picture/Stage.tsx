import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { DisplayUnits } from '../../sheet/display.ts';
import { say } from '../../words/say.ts';
import { listenToGestures } from './gestures.ts';
import { Lens } from './Lens.tsx';
import { Marks } from './Marks.tsx';
import { choose, nextPoint, type Placing, put } from './placing.ts';
import { density, drawSight, type Pyramid } from './pyramid.ts';
import { bringing, held, pinched, type Sight, type Size, toPicture, toRoom, wholeSight, zoomed } from './sight.ts';
import type { Slot } from './slots.ts';
import type { PictureAnswer, Spot } from './work.ts';

interface StageProps {
  readonly pyramid: Pyramid;
  /** What the picture is of, in words. */
  readonly label: string;
  readonly points: readonly Slot[];
  readonly placing: Placing;
  readonly onPlacing: (change: (placing: Placing) => Placing) => void;
  readonly onKey: (event: KeyboardEvent, step: number) => void;
  readonly answer: PictureAnswer;
  readonly units: DisplayUnits;
  /** Which side of the picture is the inside of the foot. */
  readonly inside?: 'left' | 'right';
  /** What stands below the picture. */
  readonly children?: ComponentChildren;
}

const STEP = 1.5;

/** The picture, its points and what they say, to be moved, zoomed and placed on. */
export function Stage(props: StageProps) {
  const { pyramid, label, points, placing, answer, units, inside } = props;
  const stage = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const [room, setRoom] = useState<Size | undefined>();
  const [given, setSight] = useState<Sight | undefined>();
  const [aim, setAim] = useState<Spot | undefined>();
  const sight = room && (given ? held(given, pyramid, room) : wholeSight(pyramid, room));
  const now = useRef({ props, sight, room });
  now.current = { props, sight, room };
  const change = useCallback((by: (sight: Sight, room: Size) => Sight) => {
    const { sight, room, props } = now.current;
    if (!sight || !room) return;
    const next = held(by(sight, room), props.pyramid, room);
    // Several events can come before the next frame.
    now.current.sight = next;
    setSight(next);
  }, []);

  useLayoutEffect(() => {
    const element = stage.current!;
    const measure = () => setRoom({ width: element.clientWidth, height: element.clientHeight });
    const watched = new ResizeObserver(measure);
    watched.observe(element);
    measure();
    return () => watched.disconnect();
  }, []);

  useEffect(() => {
    const element = stage.current!;
    const ended = listenToGestures(element, {
      sight: () => now.current.sight!,
      onSight: change,
      spots: () => now.current.props.placing.spots,
      onAim: setAim,
      onPlace(spot) {
        const { points, placing, onPlacing, pyramid } = now.current.props;
        const point = nextPoint(points, placing);
        if (!point || !inPicture(spot, pyramid)) return false;
        onPlacing((placing) => put(placing, point, rounded(spot)));
        return true;
      },
      onHold: (name) => now.current.props.onPlacing((placing) => choose(placing, name)),
      onDrag(name, spot, stroke) {
        const { points, onPlacing, pyramid } = now.current.props;
        const point = points.find((one) => one.name === name)!;
        onPlacing((placing) => put(placing, point, rounded(kept(spot, pyramid)), stroke));
      },
      onPinch: (before, after) => change((sight) => pinched(sight, before, after)),
    });
    // Control and the wheel is what a pinch on a touchpad comes as; the wheel alone scrolls the page.
    const onWheel = (event: WheelEvent) => {
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      const { left, top } = element.getBoundingClientRect();
      change((sight) => zoomed(sight, Math.exp(-event.deltaY / 180), [event.clientX - left, event.clientY - top]));
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => {
      ended();
      element.removeEventListener('wheel', onWheel);
    };
  }, []);

  useLayoutEffect(() => {
    if (!sight || !room) return;
    const dense = density();
    const element = canvas.current!;
    const [width, height] = [Math.round(room.width * dense), Math.round(room.height * dense)];
    // Setting a size clears the canvas and makes a new one.
    if (element.width !== width) element.width = width;
    if (element.height !== height) element.height = height;
    drawSight(element.getContext('2d')!, pyramid, sight, room, dense);
  }, [pyramid, sight?.scale, sight?.x, sight?.y, room]);

  const inHand = placing.spots.get(placing.chosen);
  // A point that is moved by keys must not leave the sight.
  useEffect(() => {
    if (inHand && !aim) change((sight, room) => bringing(sight, inHand, room));
  }, [inHand?.[0], inHand?.[1]]);

  const zoom = (factor: number) =>
    change((sight, room) => {
      const centre: Spot = [room.width / 2, room.height / 2];
      return zoomed(sight, factor, inHand ? toRoom(sight, inHand) : centre);
    });

  function onKeyDown(event: KeyboardEvent) {
    if (event.target !== stage.current || !sight || !room) return;
    if (event.key === '+' || event.key === '=') zoom(STEP);
    else if (event.key === '-') zoom(1 / STEP);
    else if (event.key === '0') setSight(undefined);
    else if (event.key === 'Enter' || event.key === ' ') {
      const point = nextPoint(points, placing);
      const middle = kept(toPicture(sight, [room.width / 2, room.height / 2]), pyramid);
      if (point) props.onPlacing((placing) => put(placing, point, rounded(middle)));
    } else return props.onKey(event, keyStep(sight, event.shiftKey));
    event.preventDefault();
  }

  const looked = aim ?? inHand;
  const side = sight && room && looked && toRoom(sight, looked)[0] < room.width / 2 ? 'right' : 'left';
  return (
    <div class="picture-stage">
      <div
        ref={stage}
        class="picture-room"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: keys place and move points in it
        tabIndex={0}
        role="application"
        aria-roledescription={say`picture to place points on`}
        aria-label={label}
        aria-describedby="picture-keys"
        onKeyDown={onKeyDown}
      >
        <canvas ref={canvas} />
        {sight && (
          <Marks
            sight={sight}
            points={points}
            spots={placing.spots}
            chosen={placing.chosen}
            marks={answer.marks}
            measures={answer.measures}
            units={units}
          />
        )}
        {sight && looked && <Lens pyramid={pyramid} spot={looked} scale={sight.scale} side={side} />}
        {inside && (
          <p class="picture-sides" aria-hidden="true">
            <span>{inside === 'left' ? 'inside' : 'outside'}</span>
            <span>{inside === 'left' ? 'outside' : 'inside'}</span>
          </p>
        )}
      </div>
      <div class="picture-zoom">
        <button type="button" onClick={() => zoom(STEP)}>{say`Closer`}</button>
        <button type="button" onClick={() => zoom(1 / STEP)}>{say`Wider`}</button>
        <button type="button" onClick={() => setSight(undefined)}>{say`Whole picture`}</button>
        <span class="picture-pad">
          {PAD.map(({ key, words, sign }) => (
            <button
              key={key}
              type="button"
              aria-label={say`${words} by one px`}
              disabled={!inHand}
              onClick={() => props.onKey(new KeyboardEvent('keydown', { key }), 1)}
            >
              {sign}
            </button>
          ))}
        </span>
      </div>
      {props.children}
      <p
        class="note unprinted"
        id="picture-keys"
      >{say`Tap or click to place, drag a point to move it, drag beside it to move the picture; rest a finger to aim. Keys on the picture: Enter places in its middle, arrows move the point in hand (Shift for more), Delete takes it off, + and − come closer and go wider.`}</p>
    </div>
  );
}

const PAD = [
  { key: 'ArrowLeft', words: 'Left', sign: '←' },
  { key: 'ArrowUp', words: 'Up', sign: '↑' },
  { key: 'ArrowDown', words: 'Down', sign: '↓' },
  { key: 'ArrowRight', words: 'Right', sign: '→' },
];

/** How many px of the picture an arrow key moves a point: one, or with Shift as far as the eye sees as a step. */
export function keyStep({ scale }: Sight, large: boolean): number {
  return large ? Math.max(10, Math.round(16 / scale)) : 1;
}

/** Tenths of a px are finer than any hand. */
const rounded = ([x, y]: Spot): Spot => [Math.round(x * 10) / 10, Math.round(y * 10) / 10];

const inPicture = ([x, y]: Spot, { width, height }: Size) => x >= 0 && y >= 0 && x <= width && y <= height;

function kept([x, y]: Spot, { width, height }: Size): Spot {
  return [Math.min(Math.max(x, 0), width), Math.min(Math.max(y, 0), height)];
}
