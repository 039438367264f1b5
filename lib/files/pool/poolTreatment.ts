import { type Context, contextOf } from '../../hoof/context.ts';
import { measured } from '../../hoof/measured.ts';
import type { Kind } from '../../sheet/column.ts';
import { describeColumn } from '../describeColumn.ts';
import { wordsOf } from '../headings.ts';

/**
 * What happens to a column on its way into a pool. `named`: its texts get pseudonyms. `moved`: its dates go by the
 * horse's own days. `worded`: only the words that the column is known by stay. `computed`: left out, as it is worked out
 * afresh from the others. `left out`: nobody knows what may stand in it.
 */
export type PoolTreatment = 'kept' | 'named' | 'moved' | 'worded' | 'computed' | 'left out';

export interface PoolChoices {
  /** Columns that stay as they are though nothing is known of them, or though they hold free words. */
  readonly keep?: readonly string[];
  /** Columns that are left out though they could stay. */
  readonly leaveOut?: readonly string[];
}

/** Words in a heading that say that its column names someone, or where they are. */
const someone = new Set([
  ...['name', 'owner', 'rider', 'keeper', 'groom', 'trainer', 'person', 'client', 'vet', 'veterinarian', 'surgeon'],
  ...['yard', 'barn', 'stable', 'stables', 'stud', 'farm', 'livery', 'premises', 'address', 'email', 'phone'],
  ...['farrier', 'trimmer', 'observer', 'horse', 'sire', 'dam', 'passport', 'microchip', 'chip', 'ueln'],
]);

/** What may stand beside such a word and names nobody itself. */
const beside = new Set(['id', 'no', 'number', 'of', 'the', 's']);

/** Whether a column names someone, so that its texts never leave as they are. */
export function namesSomeone(column: string): boolean {
  const { naming } = contextOf(column) ?? { naming: isUnknown(column) && headingWords(column).some(isSomeone) };
  return naming === true;
}

const isUnknown = (column: string) => describeColumn(column).title === undefined;
const headingWords = (column: string) => wordsOf(column.replaceAll('_', ' '));
const isSomeone = (word: string) => someone.has(word);

/** Whether a heading itself names nobody: `owner of the horse`, but not `owner Smith`. */
const isPlain = (column: string) => headingWords(column).every((word) => isSomeone(word) || beside.has(word));

/** What happens to a column of a name and kind. */
export function poolTreatment(name: string, kind: Kind, { keep = [], leaveOut = [] }: PoolChoices = {}): PoolTreatment {
  const known = contextOf(name);
  if (leaveOut.includes(name)) return 'left out';
  if (namesSomeone(name)) return known || isPlain(name) ? 'named' : 'left out';
  if (known?.kind === 'date') return 'moved';
  if (keep.includes(name)) return kind === 'date' ? 'moved' : 'kept';
  if (known) return fromContext(known);
  if (measured.some((row) => row.name === name)) return 'kept';
  return isUnknown(name) ? 'left out' : 'computed';
}

function fromContext({ name, kind, words, open }: Context): PoolTreatment {
  if (kind !== 'text' || name === 'limb') return 'kept';
  // Free words may say anything, and are still told apart.
  return words === undefined ? 'named' : open ? 'worded' : 'kept';
}
