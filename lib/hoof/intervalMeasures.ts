import type { Columns } from '../sheet/column.ts';
import { partName } from './partName.ts';

/** A computed column of the intervals. */
export interface IntervalMeasure {
  readonly name: string;
  readonly title: string;
  readonly formula: string;
  readonly unit?: string;
}

// Over an interval that holds a farrier's work a difference of lengths is not growth.
const undisturbed = "compared == 'after to before' || compared == 'between to between' && is_missing(work)";

const named: readonly IntervalMeasure[] = [
  {
    name: 'wall_imbalance_change_mm',
    title: 'Change of imbalance from the front',
    formula: 'abs(wall_level_end_mm) - abs(wall_level_start_mm)',
    unit: 'mm',
  },
  {
    name: 'heel_imbalance_change_mm',
    title: 'Change of imbalance from behind',
    formula: 'abs(heel_level_end_mm) - abs(heel_level_start_mm)',
    unit: 'mm',
  },
  {
    name: 'toe_growth_mm_per_day',
    title: 'Toe growth a day',
    formula: `${undisturbed} ? toe_length_change_mm / days : missing()`,
    unit: 'mm/d',
  },
  {
    name: 'toe_angle_drift_deg_per_week',
    title: 'Drift of the toe angle a week',
    formula: 'toe_angle_change_deg / days',
    unit: 'deg/wk',
  },
];

/**
 * The computed columns of an intervals table: the change of everything it has the start and end of, then growth,
 * drift and whether the imbalance became larger, as far as their columns are there.
 */
export function intervalMeasures(columns: Columns): IntervalMeasure[] {
  const changes = Object.keys(columns)
    .filter((name) => /_start(_|$)/.test(name) && Object.hasOwn(columns, name.replace(/_start(?=_|$)/, '_end')))
    .map((start) => ({
      name: start.replace(/_start(?=_|$)/, '_change'),
      title: `${start.replace(/_start(?=_|$)/, '').replaceAll('_', ' ')}, change`,
      formula: `${start.replace(/_start(?=_|$)/, '_end')} - ${start}`,
    }));
  const has = (column: string): boolean => Object.hasOwn(columns, partName(column, 'start'));
  return [
    ...changes,
    ...named.filter(({ formula }) =>
      ['wall_level_mm', 'heel_level_mm', 'toe_length_mm', 'toe_angle_deg'].some(
        (column) => has(column) && formula.includes(column.replace(/_(mm|deg)$/, '_')),
      ),
    ),
  ];
}
