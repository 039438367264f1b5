import { chosen, type HerdPage, leftAgainstRight, levelDistribution, linkedHerd, say } from '../lib/index.ts';

const views = [
  { value: 'wall_level_mm', label: say`seen from the front (wall)` },
  { value: 'heel_level_mm', label: say`seen from behind (heel)` },
];

export const page: HerdPage = {
  name: 'level',
  title: say`Level`,
  question: say`Is each foot as high inside as outside, beyond what measuring can tell?`,
  blocks: ({ herd, controls, units }) => {
    const wanted = chosen(controls, 'view', views[0].value);
    const column = views.some(({ value }) => value === wanted) ? wanted : views[0].value;
    return [
      {
        kind: 'prose',
        text: say`The difference is **inside minus outside**: above zero the inside (medial) is the higher. Height is measured from the ground, or the shoe, to the hairline. Seen in a photograph a wall grows taller as it stands up, even where horn was taken off; where the slope of the wall was measured, the length along it stands in columns of its own.`,
      },
      { kind: 'control', name: 'view', label: say`Which view`, input: 'choice', options: views, value: column },
      { kind: 'chart', ...levelDistribution(herd.occasions, { column, units }) },
      { kind: 'chart', ...leftAgainstRight(herd.occasions, { column, units }) },
      { kind: 'linked', ...linkedHerd(herd.occasions, { column, units }) },
      {
        kind: 'sheet',
        name: 'level',
        title: say`Inside and outside of every foot`,
        sheet: herd.occasions,
        columns: [
          ...['horse_id', 'date', 'limb', 'moment', 'readings'],
          ...['medial_wall_mm', 'lateral_wall_mm', 'wall_level_mm', 'wall_level_percent'],
          ...['wall_level_along_mm', 'wall_level_along_percent'],
          ...['medial_heel_mm', 'lateral_heel_mm', 'heel_level_mm', 'heel_level_percent', 'heel_level_along_mm'],
        ].filter((name) => herd.occasions.names.includes(name)),
      },
    ];
  },
};
