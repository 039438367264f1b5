import { dueTask, intervalTask, type Task, trialTask } from '../../lib/index.ts';

/** Every task that pages may have run beside them, as the worker knows them. */
// biome-ignore lint/suspicious/noExplicitAny: input and result belong together where a page names the task
export const tasks: readonly Task<any, any>[] = [intervalTask, trialTask, dueTask];
