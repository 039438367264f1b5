import { say } from '../words/say.ts';

const names: Readonly<Record<string, string>> = Object.assign(Object.create(null), {
  before: say`before`,
  after: say`after`,
  between: say`between`,
});

/** When a foot was measured, in one word; a moment of the reader's own as it stands. @example momentName('before') // 'before' */
export function momentName(moment: string): string {
  return names[moment] ?? moment;
}
