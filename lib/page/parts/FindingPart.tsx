import { useContext } from 'preact/hooks';
import { stateSign, stateWords } from '../../views/stateSign.ts';
import { svg } from '../../views/svg.ts';
import { say } from '../../words/say.ts';
import type { Finding } from '../blocks.ts';
import { SurroundingsContext } from '../surroundings.ts';
import { Drawing } from './Drawing.tsx';

const sign = (state: Finding['state']) =>
  svg('svg', { width: 14, height: 14, viewBox: '0 0 14 14' }, stateSign(state, [7, 7]));

export function FindingPart({ block }: { block: Finding }) {
  const { drawing, value, against = [], notes = [] } = block;
  const { still } = useContext(SurroundingsContext);
  return (
    <article
      class={`finding ${block.state.replace(' ', '-')}`}
      aria-label={`${block.subject}: ${stateWords[block.state]}`}
    >
      {drawing && <Drawing node={drawing} label={block.subject} />}
      <div>
        <p class="finding-subject">
          <strong>{block.subject}</strong>{' '}
          <span class="state">
            <Drawing node={sign(block.state)} label="" />
            {stateWords[block.state]}
          </span>
        </p>
        <p>{block.sentence}</p>
        {value && <p class="finding-value number">{value}</p>}
        {against.length + notes.length > 0 && (
          <details open={still || block.state === 'raise'}>
            <summary>{say`Held against`}</summary>
            <ul class="against">
              {against.map((words) => (
                <li key={words}>{words}</li>
              ))}
            </ul>
            {notes.map((note) => (
              <p key={note} class="note">
                {note}
              </p>
            ))}
          </details>
        )}
      </div>
    </article>
  );
}
