import type { RunTask } from '../../lib/index.ts';
import { say } from '../../lib/index.ts';
import type { Answer } from './taskWorker.ts';

let idle: Worker | undefined;

/**
 * Runs a task in a worker, so that it never blocks the page. A worker is kept for the next task; one that is stopped in the
 * middle of a task is ended, as it hears nothing before it is done.
 */
export const runTask: RunTask = (task, input, progress) => {
  const worker = idle ?? new Worker(new URL('./taskWorker.ts', import.meta.url), { type: 'module' });
  idle = undefined;
  let ended = false;
  const result = new Promise<never>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<Answer>) => {
      if (data.kind === 'progress') return progress(data.done, data.total);
      ended = true;
      idle = worker;
      if (data.kind === 'result') resolve(data.result as never);
      else reject(new Error(data.message));
    };
    worker.onerror = ({ message }) => {
      ended = true;
      reject(new Error(message || say`the worker could not be started`));
    };
  });
  worker.postMessage({ task: task.name, input });
  return {
    result,
    stop: () => {
      if (!ended) worker.terminate();
      ended = true;
    },
  };
};
