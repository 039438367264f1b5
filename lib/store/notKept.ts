import { say } from '../words/say.ts';
/** A record that another page has deleted while this one had it open. */
export class RecordGone extends Error {}

/** Why something typed could not be kept, and what to do about it, in words. */
export function whyNotKept(error: unknown): string {
  if (error instanceof RecordGone)
    return say`Not kept: this record was deleted in another tab. What you typed since is on this page only; save the table before you go.`;
  switch (error instanceof DOMException ? error.name : '') {
    case 'QuotaExceededError':
      return say`Not kept: there is no room left on this device. What you typed stays on this page and is tried again; make room, or save the table before you go.`;
    case 'VersionError':
      return say`Not kept: a newer Evenhoof has taken over the records on this device, and this page leaves them alone. Save the table, then reload the page.`;
    default:
      return say`Not kept: this browser keeps nothing, and it is gone when you leave. Save the table before you go.`;
  }
}
