import type { TrialPicture } from '../../lib/index.ts';

/** Drawn feet to try the page on; none of them exists. */
export const trialPictures: readonly TrialPicture[] = [];
