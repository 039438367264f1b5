/** A place in a picture, in px right and down from its upper left corner, the picture turned as it is meant to be seen. */
export type Spot = readonly [x: number, y: number];

/** A place that is found again on every picture of one view; where `many`, several points are placed on it in order. */
export interface PictureLandmark {
  readonly code: string;
  readonly title: string;
  /** Where it lies, in words. */
  readonly where: string;
  readonly optional: boolean;
  readonly many: boolean;
  /** How many points are the least that are of use. */
  readonly least: number;
  /** `scale`: on the bar or the board. `foot`: on the foot or the ground beside it. */
  readonly of: 'scale' | 'foot';
}

export interface PictureView {
  readonly name: string;
  readonly title: string;
  /** How the camera is held for it, in words. */
  readonly stand: string;
}

/** What in a picture gives its size, in mm. */
export type KnownSize =
  | { readonly kind: 'bar'; readonly length: number }
  | { readonly kind: 'board'; readonly width: number; readonly height: number }
  | { readonly kind: 'none' };

/** Which foot a picture is of, when it was taken, and from where. */
export interface Subject {
  readonly horse: string;
  readonly limb: string;
  /** As it stands in a file: `2026-03-09`. */
  readonly date: string;
  readonly moment: string;
  readonly view: string;
}

/** The points of a picture with what they need to be understood. */
export interface PictureReading {
  readonly subject: Subject;
  readonly size: KnownSize;
  readonly width: number;
  readonly height: number;
  /** By slot: the landmark's code, and its number behind a space where it is not the first of many. */
  readonly points: ReadonlyMap<string, Spot>;
}

/** One measure as the picture gives it. Where it is refused, why and what to do stands in words instead of a value. */
export interface PictureMeasure {
  readonly name: string;
  readonly title: string;
  readonly unit: string;
  readonly value: number;
  /** One standard error, in `unit`. */
  readonly error: number;
  /** The landmarks it is made from, by their codes. */
  readonly from: readonly string[];
  readonly refused?: { readonly reason: string; readonly remedy: string };
}

/** What is drawn over the picture once its points are there; `of` is a measure where it has a number. */
export type PictureMark =
  | { readonly kind: 'line' | 'length'; readonly of: string; readonly from: Spot; readonly to: Spot }
  | { readonly kind: 'angle'; readonly of: string; readonly corner: Spot; readonly from: Spot; readonly to: Spot }
  | { readonly kind: 'outline'; readonly of: string; readonly points: readonly Spot[] };

/** How square the camera stood, as far as the scale points tell. */
export interface Squareness {
  readonly state: 'square' | 'usable' | 'oblique' | 'unknown';
  /** What to do about it included. */
  readonly words: string;
}

/** A turn, size and shift: `[a, b, c, d, e, f]` takes (x, y) to (a·x + c·y + e, b·x + d·y + f). */
export type FlatMap = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export interface PictureAnswer {
  readonly squareness?: Squareness;
  readonly measures: readonly PictureMeasure[];
  readonly marks: readonly PictureMark[];
  /** What had to be assumed, a sentence each. */
  readonly assumptions: readonly string[];
  /** What can't be right about the points as they lie, in words. */
  readonly doubt?: string;
}

/** A picture on the device with its points: what is kept, and what is listed to go on with. */
export interface KeptReading extends PictureReading {
  /** The picture's own name, unlike any other on the device. */
  readonly photo: string;
  /** Landmarks that were left out on purpose. */
  readonly skipped: readonly string[];
  /** Whose points are placed once more, by its name: the same picture, to know the hand by. */
  readonly again?: string;
  /** Whether the picture was drawn and not taken. */
  readonly invented: boolean;
  /** The row of feet that the measures were entered into: which repeat, and the values by column. */
  readonly entered?: { readonly repeat: number; readonly values: Readonly<Record<string, number>> };
}

/** Where pictures and their points are kept on the device. */
export interface PictureShelf {
  list(): Promise<readonly KeptReading[]>;
  picture(photo: string): Promise<Blob | undefined>;
  keep(reading: KeptReading, picture?: Blob): Promise<void>;
  forget(photo: string): Promise<void>;
}

/** A drawn picture to try on. */
export interface TrialPicture {
  readonly title: string;
  readonly subject: Omit<Subject, 'date' | 'moment'>;
  readonly size: KnownSize;
  /** Draws it. */
  readonly draw: () => Promise<Blob>;
}

/** What working on pictures needs besides the page; fetched when the page is drawn. */
export interface PictureWork {
  readonly views: readonly PictureView[];
  /** What is placed on a view, in order; what gives the size comes first. */
  landmarks(view: string, limb: string, size: KnownSize['kind']): readonly PictureLandmark[];
  /** Which of the picture's sides is the inside of the foot; `undefined` where it is neither. */
  inside(view: string, limb: string): 'left' | 'right' | undefined;
  /** What the points say; `all` are the pictures on the device, for what a hand's own repeats tell of it. */
  answer(reading: PictureReading, all: readonly KeptReading[]): PictureAnswer;
  /** Brings one picture of a foot onto another: from px of `over` to px of `under`, or why not, in words. */
  layOver(under: PictureReading, over: PictureReading): { readonly map: FlatMap } | { readonly failure: string };
  readonly trials: readonly TrialPicture[];
  readonly shelf: PictureShelf;
  /** The points of pictures as tidy CSV. */
  toCsv(readings: readonly KeptReading[]): string;
  /** The inverse of `toCsv`. @throws Error in words for the reader */
  fromCsv(text: string): readonly KeptReading[];
}
