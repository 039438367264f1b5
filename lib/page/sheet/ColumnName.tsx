import { say } from '../../words/say.ts';
import type { ShownColumn } from './shownColumns.ts';

/** A column that is worked out carries the sign for "therefore", and says so to those who can't see it. */
export function ColumnName({ shown }: { shown: ShownColumn }) {
  return (
    <>
      {shown.formula !== undefined && (
        <>
          <span aria-hidden="true">∴ </span>
          <span class="unseen">{say`worked out:`} </span>
        </>
      )}
      {shown.title}
    </>
  );
}

/** Numbers stand to the right, what is worked out in italics. */
export function columnClass({ kind, formula }: ShownColumn): string {
  return `${kind === 'number' ? 'as-number' : ''}${formula === undefined ? '' : ' worked-out'}`;
}
