import type { ReadonlySignal } from '@preact/signals';

/** A page as it is kept: under which title, and what its controls say. */
export interface KeptChoice {
  readonly title: string;
  readonly controls: Readonly<Record<string, string>>;
}

/** Takes back what was done. */
export type TakeBack = () => Promise<void>;

/** Keeps pages by their titles, as whoever shows the notebook can. What can't be done fails in words. */
export interface Keeper {
  /** Those that are kept; grows and shrinks with what is done here or elsewhere. */
  readonly pages: ReadonlySignal<readonly KeptChoice[]>;
  /** Where a page goes that is kept now, as a sentence. */
  readonly where: ReadonlySignal<string>;
  /** The address that shows a page again. */
  address(page: KeptChoice): string;
  /** Keeps a page, in place of one of the same title. */
  keep(page: KeptChoice): Promise<TakeBack>;
  rename(title: string, to: string): Promise<TakeBack>;
  remove(title: string): Promise<TakeBack>;
}
