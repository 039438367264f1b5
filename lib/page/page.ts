import type { DisplayUnits } from '../sheet/display.ts';
import type { Block } from './blocks.ts';

/** What one control says. */
export type ControlValue = string | number | boolean | readonly string[];
/** What the controls of a page say, by name; one that nobody touched is not there. */
export type ControlValues = Readonly<Record<string, ControlValue>>;

/** What a page is given: the herd, what its controls say so far, and the units the reader chose. */
export interface PageInput<Data> {
  readonly herd: Data;
  readonly controls: ControlValues;
  readonly units: DisplayUnits;
}

/** A page is a pure function from the herd and its controls to blocks. It never touches a document. */
export interface Page<Data> {
  /** Its address and its name on the command line: a lower-case word or words joined by hyphens. */
  readonly name: string;
  readonly title: string;
  /** Its name in the navigation, where the title is long. */
  readonly short?: string;
  /** One sentence: the question it answers. */
  readonly question: string;
  /** `generated`: this page alone needs Arquero's verbs in the browser and gets a policy that allows generated code. */
  readonly policy?: 'strict' | 'generated';
  readonly blocks: (input: PageInput<Data>) => readonly Block[];
}
