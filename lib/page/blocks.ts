import type { PlotOptions } from '@observablehq/plot';
import type { Cell } from '../sheet/cell.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { SvgNode } from '../views/svg.ts';
import type { Keeper, KeptChoice } from './keep/keeper.ts';
import type { PictureWork } from './picture/work.ts';
import type { Task } from './task.ts';

/** What a page is made of. Plain data: the renderers in `render/` turn it into a document, a page never does. */
export type Block =
  | Heading
  | Prose
  | Figures
  | Finding
  | Chart
  | LinkedCharts
  | Drawings
  | SheetBlock
  | Form
  | Code
  | Download
  | Control
  | PictureBlock
  | Keep
  | Group
  | Deferred;

export interface Heading {
  readonly kind: 'heading';
  readonly text: string;
  readonly level: 2 | 3;
  readonly id?: string;
}

/** Paragraphs, parted by a blank line; `**strong**` and `[words](address)` are understood, nothing else. */
export interface Prose {
  readonly kind: 'prose';
  readonly text: string;
  readonly tone?: 'plain' | 'caution' | 'aside';
}

/** A few numbers with their words, side by side. */
export interface Figures {
  readonly kind: 'figures';
  readonly items: readonly { readonly label: string; readonly value: string; readonly note?: string }[];
}

/** Something worth a look: one sentence, its number with its error, and against what it was held. */
export interface Finding {
  readonly kind: 'finding';
  readonly id: string;
  /** Horse and limb, in words. */
  readonly subject: string;
  readonly sentence: string;
  /** `raise`: worth raising. `unsure`: can't tell from these measurements. `steady`: nothing beyond the error. `on purpose`: therapeutic, never ranked. */
  readonly state: 'raise' | 'unsure' | 'steady' | 'on purpose';
  readonly value?: string;
  /** Against what: the range and its source, the other foot, this foot's last visit, the herd. */
  readonly against?: readonly string[];
  readonly notes?: readonly string[];
  readonly drawing?: SvgNode;
}

/** A Plot chart. `title` states the finding; `summary` says in words what the picture shows, for those who can't see it. */
export interface Chart {
  readonly kind: 'chart';
  readonly name: string;
  readonly title: string;
  readonly caption?: string;
  readonly summary: string;
  readonly options: PlotOptions;
  /** How it is drawn on paper, at its own width; left out: as it stands on the screen. */
  readonly onPaper?: PlotOptions & { readonly width: number };
}

/** Charts that select each other: a Vega-Lite specification written by the page, never by a user. */
export interface LinkedCharts {
  readonly kind: 'linked';
  readonly name: string;
  readonly title: string;
  readonly caption?: string;
  readonly summary: string;
  readonly specification: object;
}

/** Drawings at one scale, so that they compare at a glance. */
export interface Drawings {
  readonly kind: 'drawings';
  readonly title?: string;
  readonly caption?: string;
  readonly items: readonly {
    readonly title: string;
    readonly note?: string;
    /** One, or several that stand in a row: the sides of one foot. */
    readonly drawing: SvgNode | readonly SvgNode[];
    readonly href?: string;
  }[];
}

/** A table as a sheet: sortable, filterable, any number of rows. */
export interface SheetBlock {
  readonly kind: 'sheet';
  readonly name: string;
  readonly title: string;
  readonly caption?: string;
  readonly sheet: Sheet;
  /** Which columns, in order; all where left out. */
  readonly columns?: readonly string[];
  /** Which rows, in order; all where left out. */
  readonly rows?: Uint32Array;
  /** How it is typed into, where whoever shows the page keeps its table. */
  readonly editable?: Editable;
}

/** A table in words with room to write in by hand, for paper. */
export interface Form {
  readonly kind: 'form';
  readonly name: string;
  readonly title: string;
  readonly caption?: string;
  readonly columns: readonly string[];
  /** Cells in words; an empty one is room to write in. */
  readonly rows: readonly (readonly string[])[];
  /** How many rows go on paper; all where left out. */
  readonly onPaper?: number;
  /** Ruled lines under the table, and what they are for. */
  readonly lines?: { readonly label: string; readonly count: number };
}

/** Text for a machine, shown as it stands. */
export interface Code {
  readonly kind: 'code';
  readonly name: string;
  readonly title: string;
  readonly text: string;
}

/** What a page says of a sheet that people type into; the shell that keeps the table does the rest. */
export interface Editable {
  /** The table that the sheet shows row for row. */
  readonly table: string;
  /** Columns of one foot's form, in the order in which they are measured. */
  readonly form: readonly string[];
  /** The columns that say which foot a row is of. */
  readonly names: readonly string[];
  /** The relation to the row that held last time's values. */
  readonly lastTime: string;
  /** What to begin a new row with, from the row before it. */
  readonly next: (row: Readonly<Record<string, Cell>>) => Readonly<Record<string, Cell>>;
  /** What is known of a column; `inputs` are the measured columns that a cell of it came from. */
  readonly about: (column: string, inputs: readonly string[]) => ColumnAbout;
}

export interface ColumnAbout {
  /** Where it is measured. */
  readonly drawing?: SvgNode;
  readonly facts: readonly { readonly label: string; readonly text: string }[];
}

export interface Download {
  readonly kind: 'download';
  readonly label: string;
  readonly filename: string;
  readonly type: string;
  readonly contents: () => string | Uint8Array;
}

/** One value the reader sets; the page is computed afresh from all of them. */
export type Control = {
  readonly kind: 'control';
  readonly name: string;
  readonly label: string;
  readonly help?: string;
} & (
  | {
      readonly input: 'choice';
      readonly options: readonly { readonly value: string; readonly label: string }[];
      readonly value: string;
    }
  | {
      readonly input: 'several';
      readonly options: readonly { readonly value: string; readonly label: string }[];
      readonly value: readonly string[];
    }
  | {
      readonly input: 'number';
      readonly value: number;
      readonly least: number;
      readonly most: number;
      readonly step: number;
      readonly unit: string;
    }
  | { readonly input: 'yes-no'; readonly value: boolean }
  | { readonly input: 'text'; readonly value: string }
);

/** A photograph to measure from, point by point; what is read goes into a table that people type into. */
export interface PictureBlock {
  readonly kind: 'picture';
  readonly name: string;
  readonly title: string;
  /** The table that measures are entered into, and the sheet that shows it row for row. */
  readonly table: string;
  readonly sheet: Sheet;
  /** The picture that is open, by its name on the device; `''` where none is. Told as the control `photo`. */
  readonly photo: string;
  readonly horses: readonly string[];
  readonly limbs: readonly { readonly value: string; readonly label: string }[];
  readonly moments: readonly { readonly value: string; readonly label: string }[];
  /** What stands in its place in a file, where nothing can be placed. */
  readonly inAFile: string;
  /** Fetches what working on it needs. */
  readonly work: () => Promise<PictureWork>;
}

/** A page to be kept by its title, and a list of those that were; a file leaves it out. */
export interface Keep {
  readonly kind: 'keep';
  readonly name: string;
  /** What would be kept; the list alone where left out. */
  readonly page?: KeptChoice;
  /** Fetches what keeps it. */
  readonly keeper: () => Promise<Keeper>;
}

/** Blocks that belong together; each `sheet of paper` begins a new one when printed, with the cautions in a line at its foot. */
export interface Group {
  readonly kind: 'group';
  readonly layout: 'stack' | 'side by side' | 'small side by side' | 'sheet of paper';
  readonly blocks: readonly Block[];
}

/** A part that waits for a task: in a browser it runs beside the page, in a file it has run. Made by `deferred`. */
export interface Deferred {
  readonly kind: 'deferred';
  readonly name: string;
  /** What is being worked out, in words: `Fitting the model`. */
  readonly label: string;
  // biome-ignore lint/suspicious/noExplicitAny: input and result belong together, which `deferred` holds
  readonly task: Task<any, any>;
  /** Can be structurally cloned; the same input is worked out once. */
  readonly input: unknown;
  /** What the result shows; cheap, as it is asked again whenever the page is. */
  // biome-ignore lint/suspicious/noExplicitAny: see above
  readonly blocks: (result: any) => readonly Block[];
}
