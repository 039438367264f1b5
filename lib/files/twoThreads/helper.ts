import type { PartRead } from '../rowReader.ts';
import type { PartTask } from './readPart.ts';

/** Another thread that reads rows while this one does. */
export interface Helper {
  /** Whether it has come and has nothing to do. */
  readonly free: boolean;
  /**
   * Gives it a part of a file.
   * @returns waits for the rows; `undefined` where the part can't be read by itself, or no answer comes
   */
  ask(task: PartTask): () => PartRead | undefined;
}
