import { say } from '../../words/say.ts';

interface UnreadProps {
  readonly unread: { readonly text: string; readonly expected: string; readonly remedy: string };
  /** Whether the cell has the focus: then it says what to do. */
  readonly near: boolean;
  /** Whether its text stands in the cell, and not in an editor. */
  readonly alone: boolean;
}

/** A typed text that could not be read, kept as it was typed and marked; what was expected stands at the cell. */
export function UnreadCell({ unread: { text, expected, remedy }, near, alone }: UnreadProps) {
  return (
    <>
      {alone && (
        <>
          <span class="unread-text">{text}</span> <span aria-hidden="true">?</span>
          <span class="unseen"> {say`can’t be used`}</span>
        </>
      )}
      {near && <span class="cell-note"> {say`Expected ${expected}. ${remedy}.`}</span>}
    </>
  );
}
