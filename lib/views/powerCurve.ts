import * as Plot from '@observablehq/plot';
import { type TrialDesign, trialPower } from '../hoof/trialPower.ts';
import { formatQuantity } from '../sheet/display.ts';
import { counted } from '../words/counted.ts';
import { say } from '../words/say.ts';
import { axis, type ChartDescription, type ChartOptions, label, millimetres, reference } from './chart.ts';
import { chartSizes, roles, strokes } from './theme.ts';

/** The power that studies are usually planned for: common practice, no source. */
const usualPower = 0.8;

/**
 * The chance that a trial tells its effect from none, against the number of horses, for fewer and more intervals each.
 * @param design  the trial that is thought of; its own place is marked
 * @param unit    of the outcome
 */
export function powerCurve(
  design: TrialDesign,
  unit: string,
  { units = millimetres }: Pick<ChartOptions, 'units'> = {},
): ChartDescription {
  const most = Math.max(24, Math.ceil(design.horses * 1.5));
  const lengths = [...new Set([4, 8, 12, design.intervals])].sort((a, b) => a - b);
  const points = lengths.flatMap((intervals) =>
    Array.from({ length: most - 1 }, (_, i) => {
      const horses = i + 2;
      return { intervals, horses, power: trialPower({ ...design, intervals, horses }).power };
    }),
  );
  // Where the lines are still apart.
  const named = Math.max(3, Math.round(most / 6));
  const own = { horses: design.horses, power: trialPower(design).power };
  const enough = points.find(({ intervals, power }) => intervals === design.intervals && power >= usualPower);
  const effect = formatQuantity(design.effect, unit, units);
  const share = (power: number) => say`${Math.round(100 * power)} of 100`;
  return {
    name: 'power',
    title:
      enough === undefined
        ? say`Even ${most} horses with ${design.intervals} intervals each would seldom show ${effect} a week`
        : say`${enough.horses} horses with ${design.intervals} intervals each would show ${effect} a week in 80 of 100 such trials`,
    caption: say`Lines: intervals of each horse, half of ${design.shorter} and half of ${design.longer} weeks. Round: the trial above. Dashed: 80 of 100. In closed form, for horses that are alike in what a week does.`,
    summary: say`With ${own.horses} horses ${share(own.power)} such trials would show it. ${lengths.map((intervals) => say`${intervals} intervals, ${most} horses: ${share(points.filter((point) => point.intervals === intervals).at(-1)!.power)}`).join('; ')}.`,
    options: {
      width: chartSizes.width,
      height: chartSizes.height,
      marginLeft: 52,
      marginRight: 16,
      marginTop: 26,
      marginBottom: 40,
      x: { domain: [2, most] },
      y: { domain: [0, 100] },
      marks: [
        axis.gridY(),
        axis.x(say`Horses`),
        axis.y(say`Trials of 100 that would show it`),
        Plot.ruleY([100 * usualPower], reference),
        Plot.line(points, {
          x: 'horses',
          y: (d) => 100 * d.power,
          z: 'intervals',
          stroke: (d) => (d.intervals === design.intervals ? roles.beyond : roles.measured),
          strokeWidth: (d) => (d.intervals === design.intervals ? strokes.strong : strokes.line),
        }),
        Plot.text(
          points.filter(({ horses }) => horses === named),
          {
            x: 'horses',
            y: (d) => 100 * d.power,
            text: (d) =>
              counted(d.intervals, { one: say`${d.intervals} interval`, other: say`${d.intervals} intervals` }),
            textAnchor: 'middle',
            rotate: -35,
            dy: -7,
            dx: -4,
            ...label,
          },
        ),
        Plot.dot([own], { x: 'horses', y: (d) => 100 * d.power, fill: roles.beyond, r: 6 }),
      ],
    },
  };
}
