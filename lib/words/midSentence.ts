import { say } from './say.ts';

/** A title within a sentence: English writes its nouns small there, other languages may not. */
export function midSentence(title: string): string {
  return say`en` === 'en' ? title.toLowerCase() : title;
}
