/** Where a range comes from and how firm it is; `source` is a key of the bibliography unless firmness says otherwise. */
export interface Range {
  /** In the measure's unit. Inside is `atLeast <= value <= atMost`; a side that is left out has no limit. */
  readonly atLeast?: number;
  readonly atMost?: number;
  /** The limits themselves already lie outside, as in "5 mm apart or more". */
  readonly limitsOutside?: boolean;
  /** The trade's word for a value under `atLeast` or over `atMost`: `contracted`, `broken back`. */
  readonly below?: string;
  readonly above?: string;
  /** Which feet it holds for; left out means all. */
  readonly when?: {
    readonly end?: 'front' | 'hind';
    readonly build?: readonly string[];
    readonly exceptBuild?: readonly string[];
    readonly shod?: boolean;
    readonly weightKg?: readonly [number, number];
  };
  readonly source: string;
  readonly firmness: 'published' | 'common practice, no source' | 'from memory';
  /** How many feet or horses of a published herd lay outside: shown beside the range so that nobody is alarmed. */
  readonly publishedOutside?: readonly { readonly outside: number; readonly of: number; readonly source: string }[];
}

/** A computed column as data: everything that pages, files, documentation and tests need to know of it. */
export interface Measure {
  readonly name: string;
  readonly title: string;
  /** UCUM code. */
  readonly unit: string;
  readonly formula: string;
  /** Plain words with `{value}` where the number and its unit go: `the frog is {value} times as wide as it is long`. */
  readonly sentence: string;
  /** Where a sign says which way: the sentence for a value below zero, `{value}` then standing without its sign. */
  readonly sentenceBelowZero?: string;
  /** Which way the sign points, in words: `positive: the inside is higher`. */
  readonly sign?: string;
  /** What it is, what it isn't, and where it misleads: a short paragraph. */
  readonly about: string;
  readonly table: 'feet' | 'horses';
  /** From where it is seen; picks the drawing. */
  readonly view: 'side' | 'front' | 'rear' | 'below' | 'pair' | 'horse';
  readonly ranges: readonly Range[];
  /** Takes part in the list of what is worth raising; left out where another column says the same or nothing to raise. */
  readonly ranked?: boolean;
  /** What goes with it in a grown horse (`crooked`) or a gaited one (`long`). */
  readonly context?: 'crooked' | 'long';
  /** Of the definition: a key of the bibliography, or the words `common practice, no source` or `from memory`. */
  readonly source: string;
  /** A worked case: shown on the page, run as a test. `given` are cells of one row (or of the named limb's row). */
  readonly example: {
    readonly given: Readonly<Record<string, number | string>>;
    readonly others?: readonly Readonly<Record<string, number | string>>[];
    readonly value: number;
  };
}

/** A column that is measured and typed in. */
export interface Measured {
  readonly name: string;
  readonly title: string;
  readonly unit: string;
  readonly table: 'feet' | 'horses';
  readonly view: 'side' | 'front' | 'rear' | 'below' | 'horse';
  /** From which landmark to which, and what "ground" is in a shod foot. */
  readonly landmarks: string;
  /** How to take it, in two or three sentences. */
  readonly how: string;
  /** Beyond these no foot is: the value is kept, marked, and left out of computation. */
  readonly anatomy: readonly [number, number];
  /** Standard error of one reading in `unit` where nothing is known of this herd's own repeats; `undefined`: unknown. */
  readonly error?: { readonly value: number; readonly source: string };
  /** Headings that people write for it, besides name and title. */
  readonly headings: readonly string[];
}
