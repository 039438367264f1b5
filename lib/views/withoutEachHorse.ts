import * as Plot from '@observablehq/plot';
import type { IntervalData } from '../hoof/intervalData.ts';
import type { IntervalFit } from '../hoof/intervalModel.ts';
import { formatQuantity } from '../sheet/display.ts';
import { fixed } from '../words/fixed.ts';
import { say } from '../words/say.ts';
import {
  axis,
  type ChartDescription,
  type ChartOptions,
  millimetres,
  nameRoom,
  nothingToDraw,
  reference,
  shownIn,
} from './chart.ts';
import { chartSizes, roles, strokes } from './theme.ts';

/**
 * The effect of a week with each horse left out in turn, and the effect with all of them as a line to hold against.
 * @param fit  of the same intervals
 */
export function withoutEachHorse(
  data: IntervalData,
  { within, checks }: IntervalFit,
  { units = millimetres }: Pick<ChartOptions, 'units'> = {},
): ChartDescription {
  const name = `without-each-horse-${data.outcome.replaceAll('_', '-')}`;
  const rows = [...checks.without].sort((a, b) => a.estimate - b.estimate);
  if (rows.length < 2) return nothingToDraw(name, say`Too few horses to leave one out`);
  const { times, label } = shownIn(data.unit, units);
  const said = (value: number) =>
    formatQuantity(value, data.unit, units, { signed: true, error: within.se }).split(' ± ')[0];
  const furthest = rows.reduce((far, row) =>
    Math.abs(row.estimate - within.estimate) > Math.abs(far.estimate - within.estimate) ? row : far,
  );
  const moved = Math.abs(furthest.estimate - within.estimate) / within.se;
  return {
    name,
    title: say`No horse moves the effect by more than ${fixed(moved, 1)} of its standard error`,
    caption: say`Points: the effect of a week longer without that horse, with its 95% interval. Dashed: with all horses.`,
    summary: say`From ${said(rows[0].estimate)} without ${rows[0].horse} to ${said(rows[rows.length - 1].estimate)} without ${rows[rows.length - 1].horse}.`,
    options: {
      width: chartSizes.width / 2,
      height: 56 + rows.length * 16,
      marginLeft: nameRoom(rows.map(({ horse }) => horse)),
      marginBottom: 40,
      marginTop: 8,
      x: { nice: true },
      y: { domain: rows.map(({ horse }) => horse) },
      marks: [
        axis.gridX(),
        axis.x(label(say`Effect of a week`)),
        axis.names(),
        Plot.ruleX([within.estimate * times], reference),
        Plot.link(rows, {
          x1: (d) => (d.estimate - 1.96 * d.se) * times,
          x2: (d) => (d.estimate + 1.96 * d.se) * times,
          y1: 'horse',
          y2: 'horse',
          stroke: roles.measured,
          strokeWidth: strokes.thin,
        }),
        Plot.dot(rows, { x: (d) => d.estimate * times, y: 'horse', fill: roles.measured, r: 3 }),
      ],
    },
  };
}
