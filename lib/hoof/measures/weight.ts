import { say } from '../../words/say.ts';
import type { Measure } from '../measure.ts';

const horse = { table: 'horses', view: 'horse', unit: 'kg', ranges: [] } as const;

/** How heavy is the horse, where it was not weighed? */
export const weight: readonly Measure[] = [
  {
    ...horse,
    name: 'weight_by_girth_kg',
    title: say`Weight from girth and length (11 900)`,
    formula: "girth_cm ** 2 * length_cm / quantity(11900, 'cm3/kg')",
    sentence: say`by girth and length the horse weighs about {value}`,
    about: say`Girth² times length over 11 900 cm³/kg, the average over 281 horses. Girth close behind the elbow, length from the point of the shoulder to the point of the buttock: with another landmark the divisor is wrong. Accuracy 5 to 10 percent. Not for donkeys.`,
    source: 'carroll-1988',
    example: { given: { girth_cm: 175.88, length_cm: 164.94 }, value: 428.75771004504196 },
  },
  {
    ...horse,
    name: 'weight_by_girth_330_kg',
    title: say`Weight from girth and length (330 in inches and pounds)`,
    formula: "girth_cm ** 2 * length_cm / quantity(330, '[in_i]3/[lb_av]')",
    sentence: say`by girth and length in inches and pounds the horse weighs about {value}`,
    about: say`The extension formula: girth² times length in inches over 330 is the weight in pounds. 330 cubic inches a pound are 11 922 cm³/kg, so it gives 0.2 percent less than the other.`,
    source: 'russell-extension',
    example: { given: { girth_cm: 190.5, length_cm: 177.8 }, value: 541.21816875 },
  },
  {
    ...horse,
    name: 'body_weight_kg',
    title: say`Body weight, weighed or estimated`,
    formula: 'coalesce(weight_kg, girth_cm ** 2 * length_cm / weight_divisor)',
    sentence: say`the horse weighs {value}`,
    about: say`The weight where the horse was weighed; else girth² times length over the divisor that is set, 11 900 cm³/kg unless you choose another. The divisor carries the error of the formula itself: 4.5 percent on average in 159 horses.`,
    source: 'carroll-1988',
    example: { given: { girth_cm: 180, length_cm: 170, weight_divisor: 11900 }, value: 462.85714285714283 },
  },
];
