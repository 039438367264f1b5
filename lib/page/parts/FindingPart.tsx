import type { Finding } from '../blocks.ts';
import { Drawing } from './Drawing.tsx';

const STATE_WORDS: Record<Finding['state'], string> = {
  raise: 'Worth raising',
  unsure: 'Can’t tell yet',
  steady: 'Nothing beyond the error',
  'on purpose': 'Set so on purpose',
};

export function FindingPart({ block }: { block: Finding }) {
  const { drawing, value, against = [], notes = [] } = block;
  return (
    <article
      class={`finding ${block.state.replace(' ', '-')}`}
      aria-label={`${block.subject}: ${STATE_WORDS[block.state]}`}
    >
      {drawing && <Drawing node={drawing} label={block.subject} />}
      <div>
        <p class="finding-subject">
          <strong>{block.subject}</strong> <span class="state">{STATE_WORDS[block.state]}</span>
        </p>
        <p class="finding-sentence">
          {block.sentence} {value && <span class="number">{value}</span>}
        </p>
        {against.length > 0 && (
          <ul class="against">
            {against.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        )}
        {notes.map((note) => (
          <p key={note} class="note">
            {note}
          </p>
        ))}
      </div>
    </article>
  );
}
