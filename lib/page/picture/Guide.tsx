import { say } from '../../words/say.ts';
import { useFieldText } from '../useFieldText.ts';
import { nextPoint, type Placing, put, skip } from './placing.ts';
import type { Slot } from './slots.ts';
import type { Spot } from './work.ts';

interface GuideProps {
  readonly points: readonly Slot[];
  readonly placing: Placing;
  readonly doubt?: string;
}

interface ToolsProps {
  readonly points: readonly Slot[];
  readonly placing: Placing;
  readonly onPlacing: (change: (placing: Placing) => Placing) => void;
  readonly onTravel: (way: 'back' | 'forth') => void;
}

/** Which point comes next and where it lies. */
export function Guide({ points, placing, doubt }: GuideProps) {
  const next = nextPoint(points, placing);
  const wanted = points.filter(({ extra }) => !extra);
  const done = wanted.filter(({ name }) => placing.spots.has(name)).length;
  return (
    <div class="picture-guide">
      <p class="picture-next">
        {next ? (
          <>
            {say`Next:`} <strong>{next.title}</strong>
            <span class="picture-count number">{say`${done} of ${wanted.length} placed`}</span>
          </>
        ) : (
          <strong>{say`Every point is placed or left out.`}</strong>
        )}
      </p>
      <p class="picture-how">
        {next
          ? `${next.where}${next.optional ? say` It may be left out.` : ''}`
          : say`Drag a point, or nudge it with the arrow keys, to mend it.`}
      </p>
      {doubt && (
        <p class="trouble" role="alert">
          {doubt}
        </p>
      )}
    </div>
  );
}

/** What can be done with the points: one left out, the last change taken back, the one in hand put where it is typed. */
export function Tools({ points, placing, onPlacing, onTravel }: ToolsProps) {
  const next = nextPoint(points, placing);
  const inHand = points.find(({ name }) => name === placing.chosen);
  const spot = inHand && placing.spots.get(inHand.name);
  const [undo, redo] = [placing.past.at(-1), placing.future.at(-1)];
  return (
    <div class="edit-bar unprinted">
      <button type="button" disabled={!next} onClick={() => onPlacing((now) => (next ? skip(now, next) : now))}>
        {next?.extra ? say`That is enough of these` : say`Leave this one out`}
      </button>
      <button type="button" disabled={!undo} onClick={() => onTravel('back')}>
        {say`Take back`}
        {undo && `: ${undo.words}`}
      </button>
      <button type="button" disabled={!redo} onClick={() => onTravel('forth')}>
        {say`Do again`}
        {redo && `: ${redo.words}`}
      </button>
      {spot && <InHand point={inHand} spot={spot} onPlacing={onPlacing} />}
    </div>
  );
}

interface HandProps {
  readonly point: Slot;
  readonly spot: Spot;
  readonly onPlacing: (change: (placing: Placing) => Placing) => void;
}

/** Where the point in hand lies, as two numbers that can be typed. */
function InHand({ point, spot, onPlacing }: HandProps) {
  const [x, y] = spot;
  const move = (to: Spot) => onPlacing((now) => put(now, point, to));
  return (
    <fieldset class="picture-hand">
      <legend class="unseen">{say`${point.title}, in px of the picture`}</legend>
      <Px label={say`px from the left`} value={x} onTyped={(typed) => move([typed, y])} />
      <Px label={say`from the top`} value={y} onTyped={(typed) => move([x, typed])} />
    </fieldset>
  );
}

function Px({ label, value, onTyped }: { label: string; value: number; onTyped: (value: number) => void }) {
  const field = useFieldText(String(value));
  return (
    <label class="picture-px">
      {label}
      <input
        {...field}
        type="number"
        class="number"
        step="any"
        min="0"
        onChange={(event) => {
          const typed = event.currentTarget.valueAsNumber;
          if (typed >= 0) onTyped(typed);
        }}
      />
    </label>
  );
}
