import { useId } from 'preact/hooks';
import { say } from '../../words/say.ts';
import type { PictureView, Subject } from './work.ts';

export interface Choice {
  readonly value: string;
  readonly label: string;
}

interface WhichProps {
  readonly subject: Subject;
  readonly onChange: (subject: Subject) => void;
  readonly horses: readonly string[];
  readonly limbs: readonly Choice[];
  readonly moments: readonly Choice[];
  readonly views: readonly PictureView[];
}

/** Which foot it is, when, and seen from where. */
export function WhichFoot({ subject, onChange, horses, limbs, moments, views }: WhichProps) {
  const id = useId();
  const set = (name: keyof Subject) => (value: string) => onChange({ ...subject, [name]: value });
  const stand = views.find(({ name }) => name === subject.view)?.stand;
  return (
    <div class="picture-which">
      <label class="picture-field">
        {say`Horse`}
        <input
          type="text"
          list={`${id}-horses`}
          value={subject.horse}
          autocomplete="off"
          onInput={(event) => set('horse')(event.currentTarget.value)}
        />
      </label>
      <datalist id={`${id}-horses`}>
        {horses.map((horse) => (
          <option key={horse} value={horse} />
        ))}
      </datalist>
      <label class="picture-field">
        {say`Taken on`}
        <input type="date" value={subject.date} required onInput={(event) => set('date')(event.currentTarget.value)} />
      </label>
      <label class="picture-field">
        {say`Moment`}
        <select value={subject.moment} onChange={(event) => set('moment')(event.currentTarget.value)}>
          {moments.map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <Ways legend={say`Foot`} choices={limbs} value={subject.limb} onChange={set('limb')} />
      <Ways
        legend={say`Seen`}
        choices={views.map(({ name, title }) => ({ value: name, label: title }))}
        value={subject.view}
        onChange={set('view')}
      />
      {stand && <p class="note">{stand}</p>}
    </div>
  );
}

interface WaysProps {
  readonly legend: string;
  readonly choices: readonly Choice[];
  readonly value: string;
  readonly onChange: (value: string) => void;
}

/** A few answers side by side, one of which stands. */
export function Ways({ legend, choices, value, onChange }: WaysProps) {
  const name = useId();
  return (
    <fieldset class="ways picture-ways">
      <legend>{legend}</legend>
      {choices.map((choice) => (
        <label key={choice.value}>
          <input type="radio" name={name} checked={choice.value === value} onChange={() => onChange(choice.value)} />
          {choice.label}
        </label>
      ))}
    </fieldset>
  );
}
