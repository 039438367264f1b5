import { dayMs } from '../sheet/days.ts';
import { say } from '../words/say.ts';

/** Two weeks without a copy are worth a line, no sooner. */
const OLD_DAYS = 14;

/** When the record was begun, last changed and last copied, in milliseconds since 1970-01-01 UTC. */
export interface CopyTimes {
  readonly begun: number;
  readonly changed: number;
  readonly copied?: number;
}

/**
 * A quiet line about copies of the record outside the browser; `undefined` where there is nothing to say: it is new, or
 * nothing has changed since it was copied, or the copy is young. A clock that was set back says nothing.
 * @example copyReminder({ begun: 0, changed: 30 * 86_400_000 }, 30 * 86_400_000) // 'No copy of this record has been saved yet'
 */
export function copyReminder({ begun, changed, copied }: CopyTimes, now: number): string | undefined {
  if (copied === undefined)
    return now - begun >= OLD_DAYS * dayMs ? say`No copy of this record has been saved yet` : undefined;
  const days = Math.floor((now - copied) / dayMs);
  if (changed <= copied || days < OLD_DAYS) return undefined;
  return say`The last saved copy of this record is ${days < 60 ? say`${Math.floor(days / 7)} weeks` : say`${Math.floor(days / 30)} months`} old`;
}
