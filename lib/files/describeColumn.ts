import { bibliography } from '../hoof/bibliography.ts';
import { contextOf } from '../hoof/context.ts';
import { derivedColumn } from '../hoof/derived.ts';
import { limbs } from '../hoof/limbs.ts';
import { measured } from '../hoof/measured.ts';
import { measures } from '../hoof/measures/index.ts';
import { say } from '../words/say.ts';

/** What a column is, for a data dictionary. */
export interface DescribedColumn {
  readonly title?: string;
  readonly description?: string;
  /** Of a computed column, in the formula language. */
  readonly formula?: string;
  readonly source?: string;
  /** The only words that stand in it. */
  readonly words?: readonly string[];
  /** UCUM code, where the column itself does not say. */
  readonly unit?: string;
  /** Whether its table works it out, where the table says so. */
  readonly origin?: 'measured' | 'computed';
}

/** A key of the bibliography as its reference; other words as they are. */
function reference(source: string): string {
  return Object.hasOwn(bibliography, source) ? bibliography[source].text : source;
}

/**
 * What is known of a column by its name: keys and circumstances, measured columns, built-in computed columns,
 * and what the herd joins, counts and sets side by side.
 * @returns nothing in it for a column that is none of ours
 * @example describeColumn('frog_width_mm').title // 'Frog width'
 */
export function describeColumn(name: string): DescribedColumn {
  const context = contextOf(name);
  if (context) {
    const { title, about: description, words, open, kind } = context;
    const fixed = name === 'limb' ? limbs : kind === 'text' && words && !open ? Object.keys(words) : undefined;
    return { title, description, ...(fixed && { words: fixed }) };
  }
  const reading = measured.find((row) => row.name === name);
  if (reading) {
    const { title, landmarks, how, unit } = reading;
    return { title, description: `${landmarks} ${how}`, unit };
  }
  const computed = measures.find((row) => row.name === name);
  if (computed) {
    const { title, about, sign, formula, unit, source } = computed;
    const description = [about, sign].filter((part) => part !== undefined).join(say` Sign: `);
    return { title, description, formula, unit, source: reference(source) };
  }
  const derived = derivedColumn(name);
  return derived
    ? { title: derived.title, description: derived.about, formula: derived.formula, unit: derived.unit }
    : {};
}
