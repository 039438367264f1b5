import { say } from '../../words/say.ts';
import type { Measure } from '../measure.ts';

const side = { table: 'feet', view: 'side' } as const;

/** From the side: how long is the toe, against its heel and against the horse's weight? */
export const length: readonly Measure[] = [
  {
    ...side,
    name: 'toe_to_heel',
    title: say`Toe length to heel length`,
    unit: '1',
    formula: 'toe_length_mm / heel_length_mm',
    sentence: say`the toe is {value} times as long as the heel`,
    about: say`A textbook gives 2 in front and 1.3 (2 to 1.5) behind; 77 mares of four breeds measured about 2 in front and behind. The limit of 3 is quoted for heights and is used here for lengths, which are the larger at both places.`,
    context: 'long',
    ranked: true,
    ranges: [{ atMost: 3, above: say`long in the toe for its heel`, source: 'dyson-2011', firmness: 'published' }],
    source: 'adams-stashak',
    example: { given: { toe_length_mm: 84, heel_length_mm: 40 }, value: 2.1 },
  },
  {
    ...side,
    name: 'toe_guide_mm',
    title: say`Guideline toe length for the weight`,
    unit: 'mm',
    formula: `body_weight_kg >= quantity(360, 'kg') && body_weight_kg <= quantity(400, 'kg') ? quantity(76, 'mm')
      : body_weight_kg >= quantity(425, 'kg') && body_weight_kg <= quantity(475, 'kg') ? quantity(82.5, 'mm')
      : body_weight_kg >= quantity(525, 'kg') && body_weight_kg <= quantity(575, 'kg') ? quantity(89, 'mm')
      : missing()`,
    sentence: say`the guideline for a horse of this weight is {value}`,
    about: say`Three bands of weight, from memory. The original leaves gaps between the bands and gives nothing for lighter or heavier horses, so there the guideline is missing rather than guessed.`,
    ranges: [],
    source: 'turner-1992',
    example: { given: { body_weight_kg: 450 }, value: 82.5 },
  },
  {
    ...side,
    name: 'toe_over_guide_mm',
    title: say`Toe length for the weight`,
    unit: 'mm',
    formula: 'toe_length_mm - toe_guide_mm',
    sentence: say`the toe is {value} longer than the guideline for the weight`,
    sentenceBelowZero: say`the toe is {value} shorter than the guideline for the weight`,
    sign: say`toe minus guideline: positive where the toe is longer`,
    about: say`In a shod foot the thickness of the shoe is in the toe length. In a published herd nine in ten horses were over the guideline. Gaited builds carry longer feet on purpose and have no range here.`,
    context: 'long',
    ranges: [
      {
        atMost: 0,
        above: say`long for the weight`,
        when: { exceptBuild: ['gaited'] },
        source: 'turner-1992',
        firmness: 'from memory',
        publishedOutside: [{ outside: 52, of: 58, source: 'dau-2015' }],
      },
    ],
    source: 'turner-1992',
    example: { given: { toe_length_mm: 87, body_weight_kg: 450 }, value: 4.5 },
  },
];
