import { say } from '../words/say.ts';
/**
 * Names as one reads a list of them aloud.
 * @returns `''` for none
 * @example listed(['a', 'b', 'c']) // 'a, b and c'
 */
export function listed(words: readonly string[], last = say`and`): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${last} ${words[words.length - 1]}`;
}
