import { useState } from 'preact/hooks';
import { say } from '../../words/say.ts';
import type { KeptReading, TrialPicture } from './work.ts';

interface ChoiceProps {
  readonly kept: readonly KeptReading[];
  readonly trials: readonly TrialPicture[];
  /** The picture that is open; `''` where none is. */
  readonly open: string;
  readonly onFile: (file: File) => void;
  readonly onTrial: (trial: TrialPicture) => void;
  readonly onKept: (photo: string) => void;
  readonly onPoints: (file: File) => void;
}

/** Where a picture comes from: the device, the camera, an earlier day, or our own pen to try it on. */
export function PictureChoice({ kept, trials, open, onFile, onTrial, onKept, onPoints }: ChoiceProps) {
  const [trial, setTrial] = useState('0');
  return (
    <div class="picture-choice unprinted">
      <p class="picture-choosers">
        <Chooser label={say`Choose a photograph`} accept="image/*" onFile={onFile} />
        <Chooser label={say`Take one now`} accept="image/*" camera onFile={onFile} />
      </p>
      <p class="note">{say`It stays on this device. What is kept of it is the picture alone: the place and everything else that a camera writes into its file are left behind.`}</p>
      {kept.length > 0 && (
        <p class="picture-kept">
          <label class="picture-field">
            {say`Pictures on this device`}
            <select value={open} onChange={(event) => event.currentTarget.value && onKept(event.currentTarget.value)}>
              <option value="">{say`choose one`}</option>
              {kept.map(({ photo, subject }) => (
                <option key={photo} value={photo}>
                  {[subject.horse || say`no horse yet`, subject.limb, subject.date, photo].join(', ')}
                </option>
              ))}
            </select>
          </label>
          <Chooser label={say`Open saved points`} accept=".csv,text/csv" onFile={onPoints} />
        </p>
      )}
      <p class="picture-kept">
        <label class="picture-field">
          {say`No photograph at hand? A drawn foot, invented, to try it on`}
          <select value={trial} onChange={(event) => setTrial(event.currentTarget.value)}>
            {trials.map(({ title }, index) => (
              <option key={title} value={String(index)}>
                {title}
              </option>
            ))}
          </select>
        </label>
        <button type="button" onClick={() => onTrial(trials[Number(trial)])}>{say`Draw it`}</button>
        {kept.length === 0 && <Chooser label={say`Open saved points`} accept=".csv,text/csv" onFile={onPoints} />}
      </p>
    </div>
  );
}

interface ChooserProps {
  readonly label: string;
  readonly accept: string;
  /** Whether a phone opens its camera. */
  readonly camera?: boolean;
  readonly onFile: (file: File) => void;
}

function Chooser({ label, accept, camera, onFile }: ChooserProps) {
  return (
    <label class={`chooser${camera ? ' picture-camera' : ''}`}>
      {label}
      <input
        type="file"
        accept={accept}
        {...(camera && { capture: 'environment' })}
        onChange={(event) => {
          const chooser = event.currentTarget;
          const file = chooser.files?.[0];
          // The same file may be chosen again.
          chooser.value = '';
          if (file) onFile(file);
        }}
      />
    </label>
  );
}
