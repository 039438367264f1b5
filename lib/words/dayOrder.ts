import { say } from './say.ts';

/** In which order the reader's language writes day and month; English is read in places that write either. */
export const dayOrder: 'dmy' | 'mdy' | undefined = (['dmy', 'mdy'] as const).find(
  (order) => order === say`neither day nor month first`,
);
