import { type HerdPage, say, shapeDistributions, shapeRatios } from '../lib/index.ts';

const shapes = ['width_to_length', 'frog_ratio', 'heel_width_to_foot_width'];

export const page: HerdPage = {
  name: 'front-and-hind',
  title: say`Front and hind`,
  question: say`Are front feet rounder than hind feet, horse by horse, and how wide are the heels?`,
  blocks: ({ herd, units }) => [
    {
      kind: 'prose',
      text: say`Front feet are rounder, hind feet longer for their width: that much is agreed. Whether hind feet stand steeper is **not settled**; herds have been published both ways. So every horse is compared with itself first.`,
    },
    ...shapes.flatMap((column) => [
      { kind: 'chart' as const, ...shapeRatios(herd.occasions, { column, units }) },
      { kind: 'chart' as const, ...shapeDistributions(herd.occasions, { column, units, ranges: herd.ranges }) },
    ]),
    {
      kind: 'sheet',
      name: 'front-and-hind',
      title: say`Front and hind of every horse`,
      caption: say`Means over all that was measured, and the left foot minus the right one.`,
      sheet: herd.horses,
      columns: herd.horses.names.filter((name) => name === 'horse_id' || /_(front|hind)(_|$)/.test(name)),
    },
  ],
};
