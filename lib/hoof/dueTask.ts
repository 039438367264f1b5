import type { DueData } from './dueData.ts';
import type { DueList } from './dueList.ts';

/** `dueList` for a place where it can take its time. */
export const dueTask = {
  name: 'due',
  run: async ({ data, weeks }: { readonly data: DueData; readonly weeks: number }): Promise<DueList> =>
    (await import('./dueList.ts')).dueList(data, weeks),
};
