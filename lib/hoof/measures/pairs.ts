import { say } from '../../words/say.ts';
import type { Measure, Range } from '../measure.ts';

const pair = { table: 'feet', view: 'pair' } as const;

/** Left minus right, the same on both feet of the pair. */
const leftMinusRight = (column: string): string =>
  `limb == 'LF' || limb == 'LH' ? ${column} - opposite(${column}) : opposite(${column}) - ${column}`;

const sign = say`left minus right, the same on both feet of the pair`;

const uneven: Omit<Range, 'when' | 'publishedOutside'> = {
  atLeast: -1.5,
  atMost: 1.5,
  below: say`uneven, right steeper`,
  above: say`uneven, left steeper`,
  source: 'hobbs-2018',
  firmness: 'published',
};

/** Left against right, front against hind: the same horse's other feet at the same date and moment. */
export const pairs: readonly Measure[] = [
  {
    ...pair,
    name: 'toe_angle_left_minus_right_deg',
    title: say`Toe angle, left minus right`,
    unit: 'deg',
    formula: leftMinusRight('toe_angle_deg'),
    sentence: say`the left toe is {value} steeper than the right`,
    sentenceBelowZero: say`the right toe is {value} steeper than the left`,
    sign,
    about: say`No two feet match: of 40 horses none had a perfectly matching pair. The limit of 1.5 degrees is for front pairs and near the error of one gauge reading; the published shares follow their own definitions.`,
    ranked: true,
    ranges: [
      {
        ...uneven,
        when: { end: 'front' },
        publishedOutside: [
          { outside: 16, of: 58, source: 'dau-2015' },
          { outside: 23, of: 97, source: 'canto-2004' },
          { outside: 18, of: 44, source: 'schade-2013' },
        ],
      },
    ],
    source: 'hobbs-2018',
    example: {
      given: { limb: 'RF', toe_angle_deg: 52 },
      others: [{ limb: 'LF', toe_angle_deg: 49.5 }],
      value: -2.5,
    },
  },
  {
    ...pair,
    name: 'foot_width_left_minus_right_mm',
    title: say`Foot width, left minus right`,
    unit: 'mm',
    formula: leftMinusRight('foot_width_mm'),
    sentence: say`the left foot is {value} wider than the right`,
    sentenceBelowZero: say`the right foot is {value} wider than the left`,
    sign,
    about: say`A slightly larger left front foot is usual: 70 percent of 40 Warmbloods had one. No limit was read.`,
    ranked: true,
    ranges: [],
    source: 'kummer-2006',
    example: { given: { limb: 'LF', foot_width_mm: 131 }, others: [{ limb: 'RF', foot_width_mm: 128 }], value: 3 },
  },
  {
    ...pair,
    name: 'foot_length_left_minus_right_mm',
    title: say`Foot length, left minus right`,
    unit: 'mm',
    formula: leftMinusRight('foot_length_mm'),
    sentence: say`the left foot is {value} longer than the right`,
    sentenceBelowZero: say`the right foot is {value} longer than the left`,
    sign,
    about: say`A slightly longer left foot is usual: 72 percent of 81 ponies in front, 67 percent behind. No limit was read.`,
    ranges: [],
    source: 'ponies-2015',
    example: { given: { limb: 'LH', foot_length_mm: 134 }, others: [{ limb: 'RH', foot_length_mm: 135 }], value: -1 },
  },
  {
    ...pair,
    name: 'front_shape_over_hind_shape',
    title: say`Front shape over hind shape`,
    unit: '1',
    formula: `limb == 'LF' || limb == 'RF' ? width_to_length / hind_of(width_to_length)
      : front_of(width_to_length) / width_to_length`,
    sentence: say`the front foot is {value} times as wide for its length as the hind foot of its side`,
    about: say`Width to length of the front foot over that of the hind foot of the same side: above 1 where the front is the rounder, as is usual. The same on both feet. No figure was read, so there is no range.`,
    ranges: [],
    source: 'stachurska-2008',
    example: {
      given: { limb: 'LF', foot_width_mm: 135, foot_length_mm: 135 },
      others: [{ limb: 'LH', foot_width_mm: 120, foot_length_mm: 150 }],
      value: 1.25,
    },
  },
];
