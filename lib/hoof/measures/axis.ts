import { say } from '../../words/say.ts';
import type { Measure } from '../measure.ts';

const side = { table: 'feet', view: 'side', unit: 'deg' } as const;

/** From the side: do toe, pastern, shoulder and heel run parallel? */
export const axis: readonly Measure[] = [
  {
    ...side,
    name: 'toe_minus_pastern_deg',
    title: say`Toe angle against pastern angle`,
    formula: 'toe_angle_deg - pastern_angle_deg',
    sentence: say`the hoof wall is {value} steeper than the pastern`,
    sentenceBelowZero: say`the hoof wall is {value} flatter than the pastern`,
    sign: say`hoof minus pastern: negative is broken back, positive is broken forward`,
    about: say`The hoof-pastern axis: straight where the dorsal wall and the dorsal line of the pastern are parallel. It changes at once when the horse stands with the foot set forward or back, so it is worth measuring twice. The definition prints no tolerance; here the measuring error is the tolerance.`,
    ranked: true,
    ranges: [
      {
        atLeast: 0,
        atMost: 0,
        below: say`broken back`,
        above: say`broken forward`,
        source: 'turner-balance',
        firmness: 'published',
        publishedOutside: [
          { outside: 11, of: 97, source: 'canto-2004' },
          { outside: 116, of: 120, source: 'sport-horse-survey' },
        ],
      },
    ],
    source: 'turner-balance',
    example: { given: { toe_angle_deg: 48, pastern_angle_deg: 52 }, value: -4 },
  },
  {
    ...side,
    name: 'toe_minus_shoulder_deg',
    title: say`Toe angle against shoulder angle`,
    formula: 'toe_angle_deg - shoulder_angle_deg',
    sentence: say`the hoof wall is {value} steeper than the shoulder`,
    sentenceBelowZero: say`the hoof wall is {value} flatter than the shoulder`,
    sign: say`hoof minus shoulder: negative where the hoof wall is the flatter`,
    about: say`The trade sets a front foot at the slope of its own shoulder, so that each horse is its own measure. The shoulder line lies under muscle and is hard to find: expect an error of several degrees.`,
    ranges: [
      {
        atLeast: 0,
        atMost: 0,
        below: say`flatter than the shoulder`,
        above: say`steeper than the shoulder`,
        when: { end: 'front' },
        source: 'common practice, no source',
        firmness: 'common practice, no source',
      },
    ],
    source: 'common practice, no source',
    example: { given: { limb: 'LF', toe_angle_deg: 50, shoulder_angle_deg: 47.5 }, value: 2.5 },
  },
  {
    ...side,
    name: 'toe_minus_heel_deg',
    title: say`Toe angle less heel angle`,
    formula: 'toe_angle_deg - heel_angle_deg',
    sentence: say`the heel is {value} flatter than the toe`,
    sentenceBelowZero: say`the heel is {value} steeper than the toe`,
    sign: say`toe minus heel: the larger, the more the heel runs forward under the foot`,
    about: say`The heel should come near the toe angle and is generally lower. Heels are called underrun beyond 5 degrees. In a published trial underrun heels moved only after half a year: look for slow change.`,
    ranked: true,
    ranges: [
      {
        atMost: 5,
        above: say`underrun`,
        source: 'turner-balance',
        firmness: 'published',
        publishedOutside: [{ outside: 28, of: 58, source: 'dau-2015' }],
      },
    ],
    source: 'turner-balance',
    example: { given: { toe_angle_deg: 52, heel_angle_deg: 45 }, value: 7 },
  },
];
