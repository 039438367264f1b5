import type { Kind } from '../sheet/column.ts';
import { cellWord } from '../words/cellWord.ts';
import { say } from '../words/say.ts';

/** The three tables of a herd. */
export type TableName = 'feet' | 'horses' | 'visits';

/** A column that says which foot, when, and how it was measured; not itself a measurement. */
export interface Context {
  readonly name: string;
  readonly title: string;
  readonly tables: readonly TableName[];
  readonly kind: Kind;
  readonly about: string;
  /** Tables that are nothing without it. */
  readonly requiredIn?: readonly TableName[];
  /** The words inside, each with what people write for it. Other words are kept as they are where `open`. */
  readonly words?: Readonly<Record<string, readonly string[]>>;
  readonly open?: boolean;
  /** Its texts name someone. */
  readonly naming?: true;
  /** Headings that people write for it, besides name and title. */
  readonly headings: readonly string[];
}

/** The words that people write for yes and no, in English and in the reader's language; other words below in German too. */
export const yesAndNo: Readonly<Record<'yes' | 'no', readonly string[]>> = {
  yes: [...new Set(['yes', say`yes`]), 'y', 'true', 't', '1', 'x', 'on'],
  no: [...new Set(['no', say`no`]), 'n', 'false', 'f', '0', 'off'],
};

/** Keys and circumstances of the three tables, in the order in which they are written. */
export const context: readonly Context[] = [
  {
    name: 'horse_id',
    title: say`Horse`,
    tables: ['feet', 'horses', 'visits'],
    kind: 'text',
    about: say`Which horse: a name or a number, the same in all tables.`,
    requiredIn: ['feet', 'horses', 'visits'],
    naming: true,
    headings: ['horse', 'horse id', 'horse name', 'name', 'animal', 'id', 'horse no', 'horse number'],
  },
  {
    name: 'date',
    title: say`Date`,
    tables: ['feet', 'visits'],
    kind: 'date',
    about: say`The day of measuring, or of the farrier’s visit.`,
    requiredIn: ['feet', 'visits'],
    headings: ['date', 'day', 'visit date', 'date measured', 'measured on', 'measurement date'],
  },
  {
    name: 'limb',
    title: say`Limb`,
    tables: ['feet', 'visits'],
    kind: 'text',
    about: say`LF, RF, LH or RH. In visits it is optional: a row with a limb holds for that foot only.`,
    requiredIn: ['feet'],
    headings: ['limb', 'foot', 'hoof', 'leg', 'which foot'],
  },
  {
    name: 'moment',
    title: say`Moment`,
    tables: ['feet'],
    kind: 'text',
    about: say`Before or after the farrier’s work of that day, or between visits. Where it is left out: between.`,
    words: {
      before: [
        'before',
        'pre',
        'before trim',
        'before trimming',
        'pre trim',
        'before shoeing',
        'before farrier',
        'vor',
        'vorher',
      ],
      after: [
        'after',
        'post',
        'after trim',
        'after trimming',
        'post trim',
        'after shoeing',
        'after farrier',
        'nach',
        'nachher',
      ],
      between: ['between', 'between visits', 'mid', 'mid cycle', 'midway', 'check', 'zwischen', 'dazwischen'],
    },
    headings: ['moment', 'before or after', 'before/after', 'pre/post', 'when', 'stage', 'timing'],
  },
  {
    name: 'repeat',
    title: say`Repeat`,
    tables: ['feet'],
    kind: 'number',
    about: say`Which of several readings of the same foot at the same moment. Where it is left out, rows are numbered in order.`,
    headings: ['repeat', 'replicate', 'rep', 'reading', 'trial', 'measurement no', 'reading no'],
  },
  {
    name: 'shod',
    title: say`Shod`,
    tables: ['feet'],
    kind: 'boolean',
    about: say`Whether a shoe was on when it was measured: shoe and pad are then in every length to the ground.`,
    words: {
      yes: [...yesAndNo.yes, 'shod', 'shoe', 'beschlagen'],
      no: [...yesAndNo.no, 'bare', 'barefoot', 'unshod', 'barhuf', 'unbeschlagen'],
    },
    headings: ['shod', 'shoe', 'shoes', 'shod or bare', 'wearing shoes'],
  },
  {
    name: 'observer',
    title: say`Observer`,
    tables: ['feet'],
    kind: 'text',
    about: say`Who measured.`,
    naming: true,
    headings: ['observer', 'measured by', 'who', 'rater', 'person', 'by'],
  },
  {
    name: 'method',
    title: say`Method`,
    tables: ['feet'],
    kind: 'text',
    about: say`How it was measured: gauge, tape, photograph.`,
    headings: ['method', 'tool', 'instrument', 'how measured', 'technique'],
  },
  {
    name: 'view_quality',
    title: say`View`,
    tables: ['feet'],
    kind: 'text',
    about: say`How well the foot was seen: good, fair or poor. A poor view doubles the error that is reckoned with.`,
    words: {
      good: ['good', 'clear', 'ok', 'fine', 'square', 'gut'],
      fair: ['fair', 'usable', 'moderate', 'so so', 'mittel'],
      poor: ['poor', 'bad', 'askew', 'blurred', 'oblique', 'unclear', 'schlecht'],
    },
    open: true,
    headings: ['view quality', 'view', 'quality', 'photo quality', 'picture quality'],
  },
  {
    name: 'hair_over_hairline',
    title: say`Hair over the hairline`,
    tables: ['feet'],
    kind: 'boolean',
    about: say`Whether hair hid the hairline, so that lengths to it are uncertain. It counts like a poor view.`,
    headings: ['hair over hairline', 'hair over the hairline', 'feathers over hairline', 'hair in the way'],
  },
  {
    name: 'birth_year',
    title: say`Year of birth`,
    tables: ['horses'],
    kind: 'number',
    about: say`The year in which the horse was born.`,
    headings: ['birth year', 'year of birth', 'born', 'yob', 'foaled'],
  },
  {
    name: 'build',
    title: say`Build`,
    tables: ['horses'],
    kind: 'text',
    about: say`Pony, riding, heavy, gaited, or your own word. Gaited builds carry longer feet on purpose.`,
    words: {
      pony: ['pony', 'ponies'],
      riding: ['riding', 'riding horse', 'light', 'saddle', 'warmblood', 'thoroughbred'],
      heavy: ['heavy', 'draught', 'draft', 'cob', 'coldblood'],
      gaited: ['gaited', 'gaited horse'],
    },
    open: true,
    headings: ['build', 'type', 'horse type', 'body type'],
  },
  {
    name: 'farrier',
    title: say`Farrier`,
    tables: ['visits'],
    kind: 'text',
    about: say`Who did the work. It stands in the tables because farriers differ, and is never scored.`,
    naming: true,
    headings: ['farrier', 'trimmer', 'done by'],
  },
  {
    name: 'work',
    title: say`Work`,
    tables: ['visits'],
    kind: 'text',
    about: say`Trim, shoe, reset or none.`,
    words: {
      trim: ['trim', 'trimmed', 'trimming', 'barefoot trim', 'ausgeschnitten', 'ausschneiden'],
      shoe: ['shoe', 'shod', 'new shoes', 'shoeing', 'new set', 'beschlagen', 'beschlag', 'neubeschlag'],
      reset: ['reset', 'refit', 'same shoes', 'umgelegt'],
      none: ['none', 'no work', 'nothing', 'check only', 'no', 'keine', 'nichts'],
    },
    open: true,
    headings: ['work', 'work done', 'job', 'service', 'what was done'],
  },
  {
    name: 'therapeutic',
    title: say`Therapeutic`,
    tables: ['visits'],
    kind: 'boolean',
    about: say`Whether vet and farrier have set this foot so on purpose. It is never ranked as a fault.`,
    words: { yes: [...yesAndNo.yes, 'therapeutic', 'vet'], no: [...yesAndNo.no] },
    headings: ['therapeutic', 'on purpose', 'corrective', 'vet advised', 'veterinary'],
  },
];

const byName = new Map(context.map((row) => [row.name, row]));

/** The row of a column by its name. */
export function contextOf(name: string): Context | undefined {
  return byName.get(name);
}

/**
 * The inside word for what someone wrote in a column with words of its own.
 * @returns the word; the text itself, trimmed, where the column is open; `undefined` where it isn't understood
 * @example understoodWord(contextOf('moment')!, 'Pre trim') // 'before'
 */
export function understoodWord(column: Context, text: string): string | undefined {
  const said = text
    .trim()
    .toLowerCase()
    .replace(/[-_\s]+/g, ' ');
  const words = column.words ?? (column.kind === 'boolean' ? yesAndNo : {});
  for (const [word, written] of Object.entries(words))
    if (written.includes(said) || cellWord(column.name, word).toLowerCase() === said) return word;
  return column.open || Object.keys(words).length === 0 ? text.trim() : undefined;
}
