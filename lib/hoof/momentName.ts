import { cellWord } from '../words/cellWord.ts';

/** When a foot was measured, in one word; a moment of the reader's own as it stands. @example momentName('before') // 'before' */
export function momentName(moment: string): string {
  return cellWord('moment', moment);
}
