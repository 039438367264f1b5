import { say } from '../../words/say.ts';
import type { Editing } from './editing.ts';
import { travel } from './typing.ts';

interface BarProps {
  readonly editing: Editing;
  readonly onSaid: (words: string) => void;
  readonly onFill?: () => void;
  readonly onAdd: () => void;
  readonly addWords: string;
  readonly onRemove: () => void;
  readonly removeWords: string;
}

const KEPT = {
  kept: say`Kept on this device.`,
  keeping: say`Keeping …`,
  'not kept': say`Not kept: this browser keeps nothing, and it is gone when you leave. Save the table before you go.`,
};

/** What can be done with the table as a whole, and whether it is safe over a reload. */
export function EditBar({ editing, onSaid, onFill, onAdd, addWords, onRemove, removeWords }: BarProps) {
  const { undoable, redoable, kept, whyNotKept } = editing;
  return (
    <div class="edit-bar unprinted">
      <button type="button" aria-disabled={undoable === undefined} onClick={() => onSaid(travel(editing, 'back'))}>
        {say`Take back`}
        {undoable && `: ${undoable}`}
      </button>
      <button type="button" aria-disabled={redoable === undefined} onClick={() => onSaid(travel(editing, 'forth'))}>
        {say`Do again`}
        {redoable && `: ${redoable}`}
      </button>
      {onFill && <button type="button" onClick={onFill} title={say`Control and D`}>{say`Fill down`}</button>}
      <button type="button" onClick={onAdd}>
        {addWords}
      </button>
      <button type="button" onClick={onRemove}>
        {removeWords}
      </button>
      <p class={`kept ${kept === 'not kept' ? 'trouble' : ''}`} role={kept === 'not kept' ? 'alert' : undefined}>
        {kept === 'not kept' && whyNotKept ? whyNotKept : KEPT[kept]}
      </p>
    </div>
  );
}
