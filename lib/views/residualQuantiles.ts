import * as Plot from '@observablehq/plot';
import type { IntervalFit } from '../hoof/intervalModel.ts';
import { fixed } from '../words/fixed.ts';
import { say } from '../words/say.ts';
import { axis, type ChartDescription, type ChartOptions, millimetres, reference, shownIn } from './chart.ts';
import { chartSizes, roles } from './theme.ts';

/**
 * What a model leaves over, in order, against where a normal distribution would have it: along the line where it is normal.
 * @param unit  of the residuals
 */
export function residualQuantiles(
  { residualSd, checks }: Pick<IntervalFit, 'residualSd' | 'checks'>,
  unit: string,
  { units = millimetres }: Pick<ChartOptions, 'units'> = {},
): ChartDescription {
  const { sorted, expected, straightness } = checks.residuals;
  const { times, label } = shownIn(unit, units);
  const step = Math.max(1, Math.floor(sorted.length / 400));
  const points = Array.from(sorted, (value, i) => ({ value, at: expected[i] })).filter(
    (_, i) => i % step === 0 || i < 20 || i >= sorted.length - 20,
  );
  const ends = expected.length === 0 ? [] : [expected[0], expected[expected.length - 1]];
  return {
    name: 'residuals',
    title:
      straightness > 0.99
        ? say`What is left over lies along the line of a normal distribution`
        : say`What is left over bends away from a normal distribution`,
    caption: say`Each point is one interval. Bends at the ends are changes that were further out than chance has them.`,
    summary: say`${sorted.length} residuals in order; their correlation with normal ones is ${fixed(straightness, 3)}.`,
    options: {
      width: chartSizes.width / 2,
      height: chartSizes.height * 0.8,
      marginLeft: 52,
      marginBottom: 40,
      marginTop: 26,
      x: { nice: true },
      y: { nice: true },
      marks: [
        axis.gridY(),
        axis.x(say`Expected (standard deviations)`),
        axis.y(label(say`Left over`)),
        Plot.line(ends, { x: (d) => d, y: (d) => d * residualSd * times, ...reference }),
        Plot.dot(points, { x: 'at', y: (d) => d.value * times, stroke: roles.measured, r: 2.5 }),
      ],
    },
  };
}
