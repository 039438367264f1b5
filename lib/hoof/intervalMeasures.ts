import type { Columns } from '../sheet/column.ts';
import { say } from '../words/say.ts';
import { measured } from './measured.ts';
import { measures } from './measures/index.ts';
import { partName } from './partName.ts';

/** A computed column of the intervals. */
export interface IntervalMeasure {
  readonly name: string;
  readonly title: string;
  readonly about: string;
  readonly formula: string;
  readonly unit?: string;
}

// Over an interval that holds a farrier's work a difference of lengths is not growth.
const undisturbed = `compared == 'after to before' || compared == 'between to between' && is_missing(work)`;

/** Those that ask for one column of the occasions, `of`. */
export const ofIntervals: readonly (IntervalMeasure & { readonly of: string })[] = [
  {
    name: 'wall_imbalance_change_mm',
    of: 'wall_level_mm',
    title: say`Change of imbalance from the front`,
    about: say`How much larger the difference of inside and outside became, whichever is the higher: above 0 it grew.`,
    formula: 'abs(wall_level_end_mm) - abs(wall_level_start_mm)',
    unit: 'mm',
  },
  {
    name: 'heel_imbalance_change_mm',
    of: 'heel_level_mm',
    title: say`Change of imbalance from behind`,
    about: say`How much larger the difference of the heels became, whichever is the higher: above 0 it grew.`,
    formula: 'abs(heel_level_end_mm) - abs(heel_level_start_mm)',
    unit: 'mm',
  },
  {
    name: 'toe_growth_mm_per_day',
    of: 'toe_length_mm',
    title: say`Toe growth a day`,
    about: say`Only where no work lies between the two measurements: a farrier’s rasp is no growth. Grown horses are published to grow 6 to 10 mm a month.`,
    formula: `${undisturbed} ? toe_length_change_mm / days : missing()`,
    unit: 'mm/d',
  },
  {
    name: 'toe_angle_drift_deg_per_week',
    of: 'toe_angle_deg',
    title: say`Drift of the toe angle a week`,
    about: say`The change of the toe angle over the days of the interval, below 0 where the toe becomes flatter. Between like moments the work at the start is in it.`,
    formula: 'toe_angle_change_deg / days',
    unit: 'deg/wk',
  },
];

const titles = new Map([...measured, ...measures].map(({ name, title }) => [name, title]));

/**
 * The computed columns of an intervals table: the change of everything it has the start and end of, then growth,
 * drift and whether the imbalance became larger, as far as their columns are there.
 */
export function intervalMeasures(columns: Columns): IntervalMeasure[] {
  const has = (name: string): boolean => Object.hasOwn(columns, name);
  const changes = Object.keys(columns).flatMap((start) => {
    const [before, after] = start.split(/_start(?=_|$)/);
    const end = `${before}_end${after}`;
    if (after === undefined || !has(end)) return [];
    const title = say`${titles.get(before + after) ?? before.replaceAll('_', ' ')}, change`;
    const about = say`The end of the interval minus its start.`;
    return [{ name: `${before}_change${after}`, title, about, formula: `${end} - ${start}` }];
  });
  return [...changes, ...ofIntervals.filter(({ of }) => has(partName(of, 'start')) && has(partName(of, 'end')))];
}
