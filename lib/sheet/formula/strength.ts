import type { BinaryOperator } from './operators.ts';

/** How tightly an operator binds, from loose to tight, as in ECMAScript. */
export const strength: Readonly<Record<BinaryOperator, number>> = {
  '||': 2,
  '&&': 3,
  '==': 4,
  '!=': 4,
  '<': 5,
  '<=': 5,
  '>': 5,
  '>=': 5,
  '+': 6,
  '-': 6,
  '*': 7,
  '/': 7,
  '%': 7,
  '**': 9,
};

/** How tightly `test ? a : b` binds. */
export const conditionalStrength = 1;

/** How tightly a sign before a value binds. */
export const signStrength = 8;
