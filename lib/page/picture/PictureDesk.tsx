import { useContext, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { say } from '../../words/say.ts';
import { adoptStyle } from '../adoptStyle.ts';
import type { PictureBlock } from '../blocks.ts';
import { FailureLine, useFailure } from '../parts/FailureLine.tsx';
import { saveFile } from '../saveFile.ts';
import { travelKey } from '../sheet/typing.ts';
import { useRevision } from '../sheet/useRevision.ts';
import { SurroundingsContext } from '../surroundings.ts';
import { entryOf } from './entering.ts';
import { Guide, Tools } from './Guide.tsx';
import { KnownSizeFields } from './KnownSizeFields.tsx';
import { LaidOver } from './LaidOver.tsx';
import { PictureChoice } from './PictureChoice.tsx';
import { PointList } from './PointList.tsx';
import { pictureStyle } from './pictureStyle.ts';
import { back, choose, forth, nextPoint, type Placing, put, takeOff } from './placing.ts';
import { Readings } from './Readings.tsx';
import { Stage } from './Stage.tsx';
import { type Slot, slotsOf } from './slots.ts';
import { useOpenPicture } from './useOpenPicture.ts';
import { WhichFoot } from './WhichFoot.tsx';
import type { PictureWork } from './work.ts';

adoptStyle(pictureStyle);

/** A picture, its foot, its points and what they say, from the first choice to the row in the record. */
export function PictureDesk({ block, work }: { block: PictureBlock; work: PictureWork }) {
  const { units, editing: editingOf, set } = useContext(SurroundingsContext);
  const editing = editingOf?.(block.table);
  useRevision(block.sheet, editing);
  const [said, setSaid] = useState('');
  const [failure, attempt] = useFailure();
  const desk = useOpenPicture(work, (photo) => set('photo', photo));
  const { open, kept } = desk;
  const points = useMemo(() => (open ? slotsOf(desk.landmarksOf(open), open.placing.spots) : []), [work, open]);
  const reading = useMemo(() => open && desk.readingOf(open), [open]);
  const answer = useMemo(() => reading && work.answer(reading, kept), [work, reading, kept]);
  const last = useRef<Placing | undefined>(undefined);

  useEffect(() => {
    if (block.photo) attempt(() => desk.openKept(block.photo));
  }, [block.photo]);

  // What was just done is said once it is drawn, for those who don't see it.
  useEffect(() => {
    const [before, now] = [last.current, open?.placing];
    last.current = now;
    if (!before || !now || before === now) return;
    const words = now.past.length > before.past.length ? now.past.at(-1)?.words : undefined;
    const next = nextPoint(points, now);
    if (words) setSaid(say`Done: ${words}. ${next ? say`Next: ${next.title}` : say`Every point is placed`}`);
  }, [open?.placing]);

  function change(by: (placing: Placing) => Placing) {
    desk.change((now) => ({ ...now, placing: by(now.placing) }));
  }

  function onKey(event: KeyboardEvent, step: number) {
    const point = points.find(({ name }) => name === open?.placing.chosen);
    const spot = point && open?.placing.spots.get(point.name);
    if (!point || !spot || !open) return;
    const [across, down] = ARROWS[event.key] ?? [0, 0];
    if (across !== 0 || down !== 0) {
      const { width, height } = open.pyramid;
      const to = (at: number, by: number, most: number) => Math.min(Math.max(at + by * step, 0), most);
      change((placing) => {
        const [x, y] = placing.spots.get(point.name) ?? spot;
        return put(placing, point, [to(x, across, width), to(y, down, height)], `keys ${point.name}`);
      });
    } else if (event.key === 'Delete' || event.key === 'Backspace') change((placing) => takeOff(placing, point));
    else return;
    event.preventDefault();
  }

  function onKeyDown(event: KeyboardEvent) {
    if ((event.target as Element).matches('input, select, textarea')) return;
    const way = travelKey(event);
    if (!way) return;
    event.preventDefault();
    travelled(way);
  }

  function travelled(way: 'back' | 'forth') {
    const step = open?.placing[way === 'back' ? 'past' : 'future'].at(-1);
    change(way === 'back' ? back : forth);
    setSaid(step ? `${way === 'back' ? say`Taken back` : say`Done again`}: ${step.words}` : say`There is nothing more`);
  }

  // A second round is there for its error alone.
  const entry = reading && answer && !reading.again ? entryOf(block.sheet, reading, answer) : undefined;
  function enter() {
    if (!entry || !editing) return;
    const { row, cells, values, repeat } = entry;
    if (row < 0) editing.addRows([cells]);
    else {
      const columns = Object.keys(values);
      const texts = [columns.map((name) => String(values[name]))];
      editing.put({ rows: [row], columns, texts, how: 'set', unitOf: () => undefined });
    }
    desk.change((now) => ({ ...now, entered: { repeat, values } }));
    setSaid(say`The measures are in the record`);
  }

  const others = open
    ? kept.filter(
        ({ photo, subject, again }) =>
          photo !== open.photo &&
          again === undefined &&
          subject.horse === open.subject.horse &&
          subject.limb === open.subject.limb &&
          subject.view === open.subject.view,
      )
    : [];
  const chooseOrPlace = (point: Slot) => change((placing) => choose(placing, point.name));

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys for the whole desk; each has a button too
    <div class="picture-desk" onKeyDown={onKeyDown}>
      <PictureChoice
        kept={kept}
        trials={work.trials}
        open={open?.photo ?? ''}
        onFile={(file) => attempt(() => desk.openFile(file))}
        onTrial={(trial) => attempt(() => desk.openTrial(trial))}
        onKept={(photo) => attempt(() => desk.openKept(photo))}
        onPoints={(file) => attempt(async () => setSaid(await desk.openPoints(file)))}
      />
      <FailureLine failure={failure} />
      <p class="note" role="status">
        {desk.busy || said}
      </p>
      {open && reading && answer && (
        <>
          <h2>{say`Which foot, and what gives its size`}</h2>
          {open.again && (
            <p class="picture-invented">
              <strong>{say`${open.again} once more.`}</strong>{' '}
              {say`Place the same points without looking back. From ten coordinates on, how closely you place points is reckoned from your own repeats.`}
            </p>
          )}
          {open.invented && (
            <p class="picture-invented">
              <strong>{say`A drawn foot.`}</strong>{' '}
              {say`It is invented, and so is everything that is measured from it.`}
            </p>
          )}
          <div class="picture-about">
            <WhichFoot
              subject={open.subject}
              onChange={(subject) => desk.change((now) => ({ ...now, subject }))}
              horses={block.horses}
              limbs={block.limbs}
              moments={block.moments}
              views={work.views}
            />
            <KnownSizeFields
              key={open.photo}
              size={open.size}
              onChange={(size) => desk.change((now) => ({ ...now, size }))}
              units={units}
            />
          </div>
          <h2>{say`The points`}</h2>
          <Guide points={points} placing={open.placing} doubt={answer.doubt} />
          <div class="picture-work">
            <Stage
              key={open.photo}
              pyramid={open.pyramid}
              label={`${open.photo}, ${block.limbs.find(({ value }) => value === open.subject.limb)?.label}`}
              points={points}
              placing={open.placing}
              onPlacing={change}
              onKey={onKey}
              answer={answer}
              units={units}
              inside={work.inside(open.subject.view, open.subject.limb)}
            >
              <Tools points={points} placing={open.placing} onPlacing={change} onTravel={travelled} />
            </Stage>
            <PointList
              points={points}
              placing={open.placing}
              onChoose={chooseOrPlace}
              onTakeOff={(point) => change((placing) => takeOff(placing, point))}
              onKey={onKey}
            />
          </div>
          <Readings
            answer={answer}
            reading={reading}
            entry={entry}
            editing={editing}
            units={units}
            onEnter={enter}
            onSaid={setSaid}
          />
          <LaidOver
            key={`over ${open.photo}`}
            work={work}
            reading={reading}
            answer={answer}
            pyramid={open.pyramid}
            others={others}
            kept={kept}
          />
          <p class="takeaway">
            <button
              type="button"
              class="download"
              onClick={() => saveFile('points.csv', 'text/csv', work.toCsv(desk.all(reading)))}
            >{say`Save all points as tidy CSV`}</button>
            <button
              type="button"
              class="download"
              onClick={() => attempt(async () => saveFile(`${open.photo}.jpg`, 'image/jpeg', open.jpeg))}
            >{say`Save this picture without its place`}</button>
            <button
              type="button"
              onClick={() => attempt(desk.placeAgain)}
            >{say`Place the points once more, to know your hand`}</button>
            <button
              type="button"
              onClick={() => attempt(desk.forget)}
            >{say`Remove this picture from the device`}</button>
          </p>
          <p class="note">
            {desk.notKept
              ? say`The browser keeps nothing, so picture and points are gone when you leave this page. Save them before you go.`
              : say`Picture and points are kept on this device as you go.`}
          </p>
        </>
      )}
    </div>
  );
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
