const LETTERS = 'abcdefghijkmnpqrstuvwxyz23456789';

/** A name that no other has, on this device or another. */
export function randomName(length = 12): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(length)), (byte) => LETTERS[byte % LETTERS.length]).join('');
}

/** This page of the notebook, while it is open: another has another. */
export const pageName = randomName();
let count = 0;

/** The id of a change: this page's own name, of which every page that is opened has another, and a number. */
export function newEntryId(): string {
  count++;
  return `${pageName}-${count}`;
}
