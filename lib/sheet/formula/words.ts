/** Words that ECMAScript keeps for itself, or that name no column in it. */
const kept = new Set(
  'await break case catch class const continue debugger default delete do else enum export extends false finally for function if implements import in instanceof interface let new null package private protected public return static super switch this throw true try typeof var void while with yield'.split(
    ' ',
  ),
);

/** What one word is, as the source of a regular expression with the flag `u`. */
export const wordPattern = String.raw`[\p{ID_Start}_$][\p{ID_Continue}$]*`;

const word = new RegExp(`^${wordPattern}$`, 'u');

export function isKept(name: string): boolean {
  return kept.has(name);
}

/** Whether a column of this name can be written as it is, without `column("…")`. */
export function isWord(name: string): boolean {
  return word.test(name) && !kept.has(name);
}
