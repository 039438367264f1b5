import type { Measure } from '../measure.ts';
import { axis } from './axis.ts';
import { length } from './length.ts';
import { level } from './level.ts';
import { pairs } from './pairs.ts';
import { shape } from './shape.ts';
import { weight } from './weight.ts';

/** The built-in computed columns, in their order on the page. */
export const measures: readonly Measure[] = [...axis, ...level, ...length, ...shape, ...pairs, ...weight];
