import type { DisplayUnits } from '../../sheet/display.ts';
import { counted } from '../../words/counted.ts';
import { midSentence } from '../../words/midSentence.ts';
import { say } from '../../words/say.ts';
import type { Editing } from '../sheet/editing.ts';
import { travel } from '../sheet/typing.ts';
import type { Entry } from './entering.ts';
import { measureWords } from './measureWords.ts';
import type { KeptReading, PictureAnswer } from './work.ts';

interface ReadingsProps {
  readonly answer: PictureAnswer;
  readonly reading: KeptReading;
  readonly entry: Entry | undefined;
  readonly editing: Editing | undefined;
  readonly units: DisplayUnits;
  readonly onEnter: () => void;
  readonly onSaid: (words: string) => void;
}

/** What the points say: each measure with its error, or why there is none and what to do. */
export function Readings({ answer, reading, entry, editing, units, onEnter, onSaid }: ReadingsProps) {
  const { measures, squareness } = answer;
  const told = measures.filter(({ refused }) => !refused);
  const refused = measures.filter(({ refused }) => refused);
  return (
    <section class="picture-readings" aria-labelledby="picture-readings">
      <h2 id="picture-readings">{say`What the points say`}</h2>
      {squareness && (
        <p class={`picture-square ${squareness.state}`} role="status">
          {squareness.words}.
        </p>
      )}
      {told.length === 0 && refused.length === 0 && (
        <p class="note">{say`Nothing yet. Each measure appears as soon as its points are placed.`}</p>
      )}
      {told.length > 0 && (
        <dl class="picture-measures">
          {told.map((measure) => (
            <div key={measure.name}>
              <dt>{measure.title}</dt>
              <dd class="number">{measureWords(measure, units)}</dd>
            </div>
          ))}
        </dl>
      )}
      {refused.length > 0 && (
        <>
          <h3>{say`Not from this picture`}</h3>
          <ul class="picture-refused">
            {byReason(refused).map(({ titles, reason, remedy }) => (
              <li key={titles}>
                <strong>{titles}:</strong> {reason}. {remedy}.
              </li>
            ))}
          </ul>
        </>
      )}
      {measures.length > 0 && (
        <p class="note">
          {say`± is one standard error: of placing the points, of the size, of how square the camera stood, and of what stands before or behind the plane of the scale.`}{' '}
          {answer.assumptions.map((words) => `${words}. `)}
        </p>
      )}
      {editing && told.length > 0 && !reading.again && (
        <div class="picture-enter unprinted">
          <p>{entryWords(entry, reading)}</p>
          <p class="edit-bar">
            <button
              type="button"
              class="picture-main"
              disabled={!entry || isEntered(entry, reading)}
              onClick={onEnter}
            >{say`Enter into the record`}</button>
            {reading.entered && editing.undoable && (
              <button
                type="button"
                onClick={() => onSaid(travel(editing, 'back'))}
              >{say`Take back: ${editing.undoable}`}</button>
            )}
            <a href="record.html">{say`To the record`}</a>
          </p>
        </div>
      )}
    </section>
  );
}

/** Measures that are refused for one reason, said together. */
function byReason(measures: PictureAnswer['measures']) {
  const said = new Map<string, { titles: string; readonly reason: string; readonly remedy: string }>();
  for (const { title, refused } of measures) {
    const { reason, remedy } = refused!;
    const known = said.get(`${reason}\n${remedy}`);
    if (known) known.titles += `, ${midSentence(title)}`;
    else said.set(`${reason}\n${remedy}`, { titles: title, reason, remedy });
  }
  return [...said.values()];
}

function isEntered({ row, values }: Entry, { entered }: KeptReading): boolean {
  if (row < 0 || !entered) return false;
  return (
    Object.keys(values).length === Object.keys(entered.values).length &&
    Object.entries(values).every(([name, value]) => entered.values[name] === value)
  );
}

function entryWords(entry: Entry | undefined, reading: KeptReading): string {
  const { horse, limb, date, moment } = reading.subject;
  if (!entry) return say`Name the horse and the day, and the measures can be entered into the record.`;
  const count = Object.keys(entry.values).length;
  const what = counted(count, { one: say`One measure`, other: say`${count} measures` });
  const where = [horse, limb, date, moment, say`repeat ${entry.repeat}`].join(', ');
  if (isEntered(entry, reading)) return say`${what}: in the record as ${where}.`;
  if (entry.row >= 0)
    return say`${what} for the row ${where}${reading.entered ? say`, in place of what this picture said before` : say`, beside what is there`}.`;
  return say`${what} for a new row: ${where}.`;
}
