import type { Measure, Range } from '../measure.ts';

const front = {
  table: 'feet',
  view: 'front',
  sign: 'medial minus lateral: positive where the inside is higher',
} as const;
const rear = {
  table: 'feet',
  view: 'rear',
  sign: 'medial minus lateral: positive where the inside is higher',
} as const;

const alongSign = 'medial minus lateral: positive where the inside is longer';

const wallRange: Range = {
  atLeast: -5,
  atMost: 5,
  below: 'outside high',
  above: 'inside high',
  source: 'baus-mediolateral',
  firmness: 'published',
  publishedOutside: [
    { outside: 9, of: 58, source: 'dau-2015' },
    { outside: 48, of: 97, source: 'canto-2004' },
    { outside: 15, of: 50, source: 'vaquejada' },
  ],
};

const heelRange: Range = {
  atLeast: -5,
  atMost: 5,
  limitsOutside: true,
  below: 'sheared, outside high',
  above: 'sheared, inside high',
  source: 'ogrady-sheared',
  firmness: 'published',
};

/** From the front and from behind: is the hairline equally far from the ground on the inside and the outside? */
export const level: readonly Measure[] = [
  {
    ...front,
    name: 'wall_level_mm',
    title: 'Level from the front',
    unit: 'mm',
    formula: 'medial_wall_mm - lateral_wall_mm',
    sentence: 'seen from the front the inside is {value} higher than the outside',
    sentenceBelowZero: 'seen from the front the outside is {value} higher than the inside',
    about:
      'The difference of the two projected heights. A projected height rises as the wall stands up, even when horn was removed, so before and after the farrier compare the length along the wall as well. One clinician is not troubled within 3 mm and changes the shoeing beyond 5 mm, on radiographs; the published shares follow their own definitions.',
    context: 'crooked',
    ranked: true,
    ranges: [wallRange],
    source: 'ogrady-mediolateral',
    example: { given: { medial_wall_mm: 68, lateral_wall_mm: 62 }, value: 6 },
  },
  {
    ...front,
    name: 'wall_level_percent',
    title: 'Level from the front, in percent',
    unit: '%',
    formula: '(medial_wall_mm - lateral_wall_mm) / ((medial_wall_mm + lateral_wall_mm) / 2)',
    sentence: 'seen from the front the inside is {value} of their mean higher than the outside',
    sentenceBelowZero: 'seen from the front the outside is {value} of their mean higher than the inside',
    about: 'The same difference in percent of the mean of the two heights, so that a pony and a heavy horse compare.',
    context: 'crooked',
    ranges: [],
    source: 'common practice, no source',
    example: { given: { medial_wall_mm: 84, lateral_wall_mm: 76 }, value: 10 },
  },
  {
    ...front,
    name: 'medial_wall_along_mm',
    title: 'Inside wall length',
    unit: 'mm',
    sign: undefined,
    formula: 'medial_wall_mm / sin(medial_wall_angle_deg)',
    sentence: 'the inside wall is {value} long along its own slope',
    about:
      'From the projected height and the slope of the wall in the same front view. Missing where the slope was not measured. It does not rise when the wall merely stands up.',
    ranges: [],
    source: 'lesniak-2017',
    example: { given: { medial_wall_mm: 60, medial_wall_angle_deg: 90 }, value: 60 },
  },
  {
    ...front,
    name: 'lateral_wall_along_mm',
    title: 'Outside wall length',
    unit: 'mm',
    sign: undefined,
    formula: 'lateral_wall_mm / sin(lateral_wall_angle_deg)',
    sentence: 'the outside wall is {value} long along its own slope',
    about:
      'From the projected height and the slope of the wall in the same front view. Missing where the slope was not measured. It does not rise when the wall merely stands up.',
    ranges: [],
    source: 'lesniak-2017',
    example: { given: { lateral_wall_mm: 60, lateral_wall_angle_deg: 70 }, value: 63.85066634855473 },
  },
  {
    ...front,
    name: 'wall_level_along_mm',
    title: 'Level from the front, along the wall',
    unit: 'mm',
    sign: alongSign,
    formula: 'medial_wall_along_mm - lateral_wall_along_mm',
    sentence: 'along the wall the inside is {value} longer than the outside',
    sentenceBelowZero: 'along the wall the outside is {value} longer than the inside',
    about:
      'The difference of the two lengths along the wall as seen from the front. The inside wall is often the steeper, so equal heights can go with unequal lengths, and the other way round. Missing where a slope was not measured.',
    context: 'crooked',
    ranges: [],
    source: 'lesniak-2017',
    example: {
      given: { medial_wall_mm: 60, medial_wall_angle_deg: 90, lateral_wall_mm: 60, lateral_wall_angle_deg: 70 },
      value: -3.85066634855473,
    },
  },
  {
    ...front,
    name: 'wall_level_along_percent',
    title: 'Level from the front, along the wall, in percent',
    unit: '%',
    sign: alongSign,
    formula: '(medial_wall_along_mm - lateral_wall_along_mm) / ((medial_wall_along_mm + lateral_wall_along_mm) / 2)',
    sentence: 'along the wall the inside is {value} of their mean longer than the outside',
    sentenceBelowZero: 'along the wall the outside is {value} of their mean longer than the inside',
    about: 'The same difference in percent of the mean of the two lengths.',
    context: 'crooked',
    ranges: [],
    source: 'common practice, no source',
    example: {
      given: { medial_wall_mm: 84, medial_wall_angle_deg: 90, lateral_wall_mm: 76, lateral_wall_angle_deg: 90 },
      value: 10,
    },
  },
  {
    ...rear,
    name: 'heel_level_mm',
    title: 'Level from behind',
    unit: 'mm',
    formula: 'medial_heel_mm - lateral_heel_mm',
    sentence: 'seen from behind the inside heel is {value} higher than the outside heel',
    sentenceBelowZero: 'seen from behind the outside heel is {value} higher than the inside heel',
    about:
      'The difference of the two projected heel heights. Heels are called sheared from 5 mm apart, hairline to ground or shoe. Papers mix heel height and heel length; this one is the height, and the length along the heel has its own column.',
    context: 'crooked',
    ranked: true,
    ranges: [heelRange],
    source: 'ogrady-sheared',
    example: { given: { medial_heel_mm: 44, lateral_heel_mm: 47 }, value: -3 },
  },
  {
    ...rear,
    name: 'heel_level_percent',
    title: 'Level from behind, in percent',
    unit: '%',
    formula: '(medial_heel_mm - lateral_heel_mm) / ((medial_heel_mm + lateral_heel_mm) / 2)',
    sentence: 'seen from behind the inside heel is {value} of their mean higher than the outside heel',
    sentenceBelowZero: 'seen from behind the outside heel is {value} of their mean higher than the inside heel',
    about:
      'The same difference in percent of the mean of the two heights. Along the heel the percentage is the same, because both heels are taken at one slope.',
    context: 'crooked',
    ranges: [],
    source: 'common practice, no source',
    example: { given: { medial_heel_mm: 42, lateral_heel_mm: 38 }, value: 10 },
  },
  {
    ...rear,
    name: 'heel_level_along_mm',
    title: 'Level from behind, along the heel',
    unit: 'mm',
    sign: alongSign,
    formula: '(medial_heel_mm - lateral_heel_mm) / sin(heel_angle_deg)',
    sentence: 'along the heel the inside is {value} longer than the outside',
    sentenceBelowZero: 'along the heel the outside is {value} longer than the inside',
    about:
      'The difference of the heel lengths along the slope of the heel, hairline to ground or shoe. The slope is the heel angle seen from the side and serves both heels, so the length differs more than the height and never the other way. Missing where the heel angle was not measured.',
    context: 'crooked',
    ranges: [heelRange],
    source: 'ogrady-sheared',
    example: { given: { medial_heel_mm: 44, lateral_heel_mm: 40, heel_angle_deg: 30 }, value: 8 },
  },
];
