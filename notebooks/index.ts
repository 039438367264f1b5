import type { HerdPage } from '../lib/index.ts';
import { page as cautions } from './cautions.ts';

/** Every page, in the order of the navigation; the first is where the notebook opens. */
export const pages: readonly HerdPage[] = [cautions];
