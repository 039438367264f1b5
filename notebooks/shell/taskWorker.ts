import { say } from '../../lib/index.ts';
import { tasks } from './tasks.ts';

/** What a page asks of the worker, and what comes back. */
export interface Asked {
  readonly task: string;
  readonly input: unknown;
}

export type Answer =
  | { readonly kind: 'progress'; readonly done: number; readonly total: number }
  | { readonly kind: 'result'; readonly result: unknown }
  | { readonly kind: 'failure'; readonly message: string };

const answer = (message: Answer) => postMessage(message);

/** Often enough for the eye. */
const EVERY_MS = 50;

addEventListener('message', async ({ data }: MessageEvent<Asked>) => {
  const task = tasks.find(({ name }) => name === data.task);
  let last = 0;
  try {
    if (!task) throw new Error(say`There is no task ${data.task}`);
    const result = await task.run(data.input, (done, total) => {
      const now = performance.now();
      if (now - last > EVERY_MS) answer({ kind: 'progress', done, total });
      last = now - last > EVERY_MS ? now : last;
      return true;
    });
    answer({ kind: 'result', result });
  } catch (error) {
    answer({ kind: 'failure', message: error instanceof Error ? error.message : String(error) });
  }
});
