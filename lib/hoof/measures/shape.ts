import type { Measure } from '../measure.ts';

const below = { table: 'feet', view: 'below' } as const;

/** From below: how wide against how long, how open, how much horse on how much sole? */
export const shape: readonly Measure[] = [
  {
    ...below,
    name: 'width_to_length',
    title: 'Foot width to length',
    unit: '1',
    formula: 'foot_width_mm / foot_length_mm',
    sentence: 'the foot is {value} times as wide as it is long',
    about:
      'Front feet are the rounder, hind feet the more pointed: compare a foot with its own pair and herd. No study with a figure for the ratio was read, so there is no range.',
    ranked: true,
    ranges: [],
    source: 'stachurska-2008',
    example: { given: { foot_width_mm: 126, foot_length_mm: 140 }, value: 0.9 },
  },
  {
    ...below,
    name: 'frog_ratio',
    title: 'Frog width to length',
    unit: '1',
    formula: 'frog_width_mm / frog_length_mm',
    sentence: 'the frog is {value} times as wide as it is long',
    about:
      'A foot is called contracted where its frog is less than 0.67 times as wide as long. In three published herds two thirds to nine tenths of horses were.',
    ranked: true,
    ranges: [
      {
        atLeast: 0.67,
        below: 'contracted',
        source: 'turner-balance',
        firmness: 'published',
        publishedOutside: [
          { outside: 85, of: 97, source: 'canto-2004' },
          { outside: 32, of: 50, source: 'vaquejada' },
          { outside: 31, of: 44, source: 'schade-2013' },
          { outside: 29, of: 44, source: 'schade-2013' },
          { outside: 114, of: 120, source: 'sport-horse-survey' },
        ],
      },
    ],
    source: 'turner-balance',
    example: { given: { frog_width_mm: 45, frog_length_mm: 60 }, value: 0.75 },
  },
  {
    ...below,
    name: 'heel_width_to_foot_width',
    title: 'Heel width to foot width',
    unit: '1',
    formula: 'heel_width_mm / foot_width_mm',
    sentence: 'the heels are {value} times as wide as the foot',
    about: 'How open the heels are. Hind feet are relatively the wider here. No published limit was read.',
    ranked: true,
    ranges: [],
    source: 'stachurska-2008',
    example: { given: { heel_width_mm: 78, foot_width_mm: 130 }, value: 0.6 },
  },
  {
    ...below,
    name: 'sole_area_cm2',
    title: 'Sole area',
    unit: 'cm2',
    formula: 'pi() / 4 * foot_width_mm * foot_length_mm',
    sentence: 'the sole covers about {value}',
    about: 'The ellipse of the width and length of the foot: π/4 times their product. A real sole is no ellipse.',
    ranges: [],
    source: 'ellipse-area',
    example: { given: { foot_width_mm: 120, foot_length_mm: 130 }, value: 122.52211349000193 },
  },
  {
    ...below,
    name: 'sole_load_kg_per_cm2',
    title: 'Weight on the sole',
    unit: 'kg/cm2',
    formula:
      "body_weight_kg * (limb == 'LF' || limb == 'RF' ? share_in_front : 1 - share_in_front) / 2 / sole_area_cm2",
    sentence: 'standing still, each square centimetre of sole carries about {value}',
    about:
      'This foot’s share of the body weight over its sole area. The share in front is a setting: 57.5 percent, the middle of the published 55 to 60 percent at rest; the trade’s saying of about 75 percent is common practice, no source. It moves with the head.',
    ranges: [],
    source: 'anatomy-share',
    example: {
      given: { limb: 'LF', body_weight_kg: 500, share_in_front: 0.6, foot_width_mm: 120, foot_length_mm: 130 },
      value: 1.2242687930145797,
    },
  },
  {
    ...below,
    name: 'whole_load_kg_per_cm2',
    title: 'Whole weight on one foot, as published',
    unit: 'kg/cm2',
    formula: 'body_weight_kg / (coronet_circumference_mm ** 2 / (4 * pi()))',
    sentence: 'the whole horse over one foot is {value}',
    about:
      'The published measure of foot size: whole body weight over the circle of the hairline circumference of one foot. It is not a load that any foot carries. Missing where the circumference was not measured.',
    ranges: [{ atMost: 5.484, above: 'small for the weight', source: 'afj-load', firmness: 'published' }],
    source: 'turner-1992',
    example: { given: { body_weight_kg: 498.951607, coronet_circumference_mm: 381 }, value: 4.319349420431167 },
  },
];
