import type { Reading } from './reading.ts';
import { sideReadings } from './sideReadings.ts';
import { soleReadings } from './soleReadings.ts';
import { uprightReadings } from './uprightReadings.ts';

/** Everything that is read off pictures, in the order of the views. */
export const readings: readonly Reading[] = [...sideReadings, ...uprightReadings, ...soleReadings];
