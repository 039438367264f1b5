import { say } from '../words/say.ts';
/** Tables that no herd can be made from: what was found, what was expected, and the way out. */
export class HerdError extends Error {
  override readonly name = 'HerdError';
  constructor(
    readonly found: string,
    readonly expected: string,
    readonly remedy: string,
  ) {
    super(say`${found}; expected ${expected}. ${remedy}`);
  }
}
