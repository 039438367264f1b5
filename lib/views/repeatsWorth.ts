import * as Plot from '@observablehq/plot';
import { type ColumnRepeatability, smallestChange } from '../hoof/repeatAgreement.ts';
import { formatQuantity } from '../sheet/display.ts';
import { counted } from '../words/counted.ts';
import { say } from '../words/say.ts';
import { axis, type ChartDescription, type ChartOptions, columnTitle, label, millimetres, shownIn } from './chart.ts';
import { chartSizes, roles, strokes } from './theme.ts';

const counts = [1, 2, 3, 4, 5, 6] as const;

/**
 * The smallest change between two days that is more than error, by how many readings are averaged on each day.
 * @param row  of one column
 */
export function repeatsWorth(
  { column, unit, withinSd }: ColumnRepeatability,
  { units = millimetres }: Pick<ChartOptions, 'units'> = {},
): ChartDescription {
  const { times, label: labelled } = shownIn(unit, units);
  const steps = counts.map((readings) => ({ readings, change: smallestChange(withinSd, readings) }));
  const said = (value: number) => formatQuantity(value, unit, units);
  return {
    name: `repeats-${column.replaceAll('_', '-')}`,
    title: say`${columnTitle(column)}: one reading a day shows a change of ${said(steps[0].change)}, two ${said(steps[1].change)}, four ${said(steps[3].change)}`,
    caption: say`Anything smaller is within the error of measuring, 95 times in 100. Four readings halve the error of one.`,
    summary: `${steps.map(({ readings, change }) => counted(readings, { one: say`${readings} reading: ${said(change)}`, other: say`${readings} readings: ${said(change)}` })).join(', ')}.`,
    options: {
      width: chartSizes.width,
      height: chartSizes.height * 0.6,
      marginLeft: 52,
      marginTop: 26,
      marginBottom: 40,
      x: { domain: [...counts], type: 'point' },
      y: { zero: true, nice: true },
      marks: [
        axis.gridY(),
        axis.x(say`Readings averaged each day`),
        axis.y(labelled(say`Smallest change`)),
        Plot.line(steps, {
          x: 'readings',
          y: (d) => d.change * times,
          stroke: roles.measured,
          strokeWidth: strokes.strong,
        }),
        Plot.dot(steps, { x: 'readings', y: (d) => d.change * times, fill: roles.measured, r: 4 }),
        Plot.text(steps, { x: 'readings', y: (d) => d.change * times, text: (d) => said(d.change), dy: -12, ...label }),
      ],
    },
  };
}
