import { say } from '../words/say.ts';
import { intervalMeasures } from './intervalMeasures.ts';
import { measured } from './measured.ts';
import { measures } from './measures/index.ts';
import { partName } from './partName.ts';

/** A column that the herd adds to its tables besides the measures: joined, counted, or a part of another column. */
export interface Derived {
  readonly name: string;
  readonly title: string;
  readonly about: string;
  /** UCUM code; left out for words, days and yes or no. */
  readonly unit?: string;
  /** Where a formula makes it. */
  readonly formula?: string;
}

/** Columns with a name of their own. */
export const ownDerived: readonly Derived[] = [
  { name: 'end', title: say`End`, about: say`Front or hind, from the limb.` },
  { name: 'side', title: say`Side`, about: say`Left or right, from the limb.` },
  {
    name: 'poorly_seen',
    title: say`Seen poorly`,
    about: say`Whether the view was poor or hair lay over the hairline; the error of measuring is then taken as twice as large.`,
  },
  {
    name: 'days_since_work',
    title: say`Days since the last work`,
    about: say`Counted from the work that made the foot what was measured: for a measurement before the work, from the visit before.`,
    unit: 'd',
  },
  {
    name: 'share_in_front',
    title: say`Share of weight in front`,
    about: say`The share of the body weight on the two front feet, a setting: 0.575, the middle of the published 55 to 60 percent at rest.`,
    unit: '1',
  },
  {
    name: 'readings',
    title: say`Readings`,
    about: say`How many readings of one foot at one moment were averaged.`,
    unit: '1',
  },
  {
    name: 'weight_divisor',
    title: say`Weight divisor`,
    about: say`What girth² times length is divided by, a setting: 11 900 cm³/kg. Its error is that of the formula.`,
    unit: 'cm3/kg',
  },
  {
    name: 'occasions_measured',
    title: say`Occasions measured`,
    about: say`How many feet at how many days and moments were measured of the horse.`,
    unit: '1',
  },
  {
    name: 'last_measured',
    title: say`Last measured`,
    about: say`The day on which a foot of the horse was measured last.`,
  },
  { name: 'start_date', title: say`Start`, about: say`The day of the work at the start of the interval.` },
  { name: 'end_date', title: say`End of the interval`, about: say`The day of the work at the end of the interval.` },
  { name: 'days', title: say`Days`, about: say`From the work at the start to the work at the end.`, unit: 'd' },
  {
    name: 'compared',
    title: say`Compared`,
    about: say`Which measurements stand at the two ends: after to before the work where both were taken, else like moments; empty where nothing can be compared.`,
  },
];

const parts: readonly (readonly [part: string, title: string, about: string])[] = [
  ['start', say`at the start`, say`At the start of the interval.`],
  ['end', say`at the end`, say`At the end of the interval.`],
  ['front', say`front feet`, say`Mean of the front feet over all occasions.`],
  ['hind', say`hind feet`, say`Mean of the hind feet over all occasions.`],
  ['front_left_minus_right', say`front, left minus right`, say`Mean over all occasions at which both were measured.`],
  ['hind_left_minus_right', say`hind, left minus right`, say`Mean over all occasions at which both were measured.`],
];

const whole = [...measured, ...measures].filter(({ table }) => table === 'feet');
const ofParts: readonly Derived[] = whole.flatMap(({ name, title, unit }) =>
  parts.map(([part, words, about]) => ({ name: partName(name, part), title: `${title}, ${words}`, about, unit })),
);

const starts = Object.fromEntries(ofParts.map(({ name }) => [name, { values: [] }]));
const known = new Map([...ownDerived, ...ofParts, ...intervalMeasures(starts)].map((row) => [row.name, row]));

/** What is known of such a column by its name: `derivedColumn('toe_length_start_mm')?.title // 'Toe length, at the start'`. */
export function derivedColumn(name: string): Derived | undefined {
  return known.get(name);
}
