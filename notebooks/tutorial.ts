import { type Block, chosenChart, formatQuantity, type HerdPage, herd, median, readTable, say } from '../lib/index.ts';

/** Two invented horses, front feet, three visits of the farrier six and seven weeks apart. */
export const table = say`horse,date,limb,moment,toe angle,toe length,inside wall,outside wall
Bella,2026-01-05,near fore,after,52°,80,50,49
Bella,2026-02-16,near fore,before,50.5,89,56,51
Bella,2026-02-16,near fore,after,52,80,50,49.5
Bella,2026-04-06,near fore,before,50,91,57,51
Bella,2026-01-05,off fore,after,53,79,49,49
Bella,2026-02-16,off fore,before,52,88,53,52
Bella,2026-02-16,off fore,after,53,79,49,49
Bella,2026-04-06,off fore,before,51.5,90,54,53
Rook,2026-01-05,near fore,after,49,8.8 cm,52,53
Rook,2026-02-16,near fore,before,48,96,57,58
Rook,2026-02-16,near fore,after,49.5,88,52,53
Rook,2026-04-06,near fore,before,48,about 98,58,59
`;

const units = { length: 'mm', mass: 'kg' } as const;

/** Each step: what it is for, its code, and the line that the code prints. Together the code is one program. */
export function steps(): {
  readonly title: string;
  readonly text: string;
  readonly code: string;
  readonly prints: string;
}[] {
  const { columns, problems, schema } = readTable(table, { file: 'feet.csv' });
  const made = herd({ feet: columns }, { problems });
  const level = made.occasions.column('wall_level_mm');
  made.occasions.add({ name: 'steeper', formula: 'toe_angle_deg - opposite(toe_angle_deg)' });
  const steeper = made.occasions.column('steeper');
  const { intervals } = made;
  const growth = intervals.column('toe_growth_mm_per_day').values as Float64Array;
  const pace = median([...growth].filter((value) => !Number.isNaN(value)));
  return [
    {
      title: say`Read the table`,
      text: say`Headings, units and limbs are understood as people write them. What can’t be used stays missing, and a row in “problems” says where it stands and why: here “about 98”.`,
      code: `import { formatQuantity, herd, median, readTable } from 'evenhoof';

const { columns, problems, schema } = readTable(table, { file: 'feet.csv' });
console.log(schema, columns.horse_id.values.length, problems.map(({ row, value }) => \`row \${row}: \${value}\`).join(', '));`,
      prints: `${schema} ${columns.horse_id.values.length} ${problems.map(({ row, value }) => `row ${row}: ${value}`).join(', ')}`,
    },
    {
      title: say`Make a herd of it`,
      text: say`The herd computes every built-in column it has the measurements for, each with its unit and its error. The level of a foot is inside minus outside.`,
      code: `const made = herd({ feet: columns }, { problems });
const level = made.occasions.column('wall_level_mm');
console.log(formatQuantity(level.values[1], level.unit, units, { error: level.error[1], signed: true }));`,
      prints: formatQuantity(level.values[1] as number, level.unit, units, {
        error: level.kind === 'text' ? undefined : level.error?.[1],
        signed: true,
      }),
    },
    {
      title: say`Add a column of your own`,
      text: say`A formula is text over column names. Its unit and its error follow from those of what it is made of; the other foot of the pair is “opposite”.`,
      code: `made.occasions.add({ name: 'steeper', formula: 'toe_angle_deg - opposite(toe_angle_deg)' });
const steeper = made.occasions.column('steeper');
console.log(steeper.values[0], steeper.unit, made.occasions.sentence('steeper'));`,
      prints: `${steeper.values[0]} ${steeper.unit} ${made.occasions.sentence('steeper')}`,
    },
    {
      title: say`Look between visits`,
      text: say`An interval runs from after one visit’s work to before the next. Growth is told only where no work lies between; the toe that could not be read has none.`,
      code: `const { intervals } = made;
const growth = intervals.column('toe_growth_mm_per_day').values;
const pace = median([...growth].filter((value) => !Number.isNaN(value)));
console.log(intervals.rows, formatQuantity(pace, 'mm/d', units));`,
      prints: `${intervals.rows} ${formatQuantity(pace, 'mm/d', units)}`,
    },
  ];
}

export const page: HerdPage = {
  name: 'tutorial',
  title: say`From a table to an answer`,
  short: say`Tutorial`,
  question: say`How does a small table become columns, intervals and a chart, in TypeScript?`,
  blocks: () => [
    {
      kind: 'prose',
      text: say`For those who write TypeScript. The horses are invented. Each piece of code goes on from the one before, and under it stands the line that it prints; a test runs all of it and compares.`,
    },
    { kind: 'code', name: 'table', title: say`The table, as text`, text: table },
    ...steps().flatMap(({ title, text, code, prints }, i): Block[] => [
      { kind: 'heading', level: 2, text: title, id: `step-${i + 1}` },
      { kind: 'prose', text },
      { kind: 'code', name: `code-${i + 1}`, title: say`Code`, text: code },
      { kind: 'code', name: `prints-${i + 1}`, title: say`It prints`, text: prints },
    ]),
    { kind: 'heading', level: 2, text: say`Draw it`, id: 'draw' },
    {
      kind: 'prose',
      text: say`A page is a function from a herd to blocks, and a chart is one of them. The page [A page of your own](own-page.html) writes such code for you.`,
    },
    {
      kind: 'chart',
      ...chosenChart(herd({ feet: readTable(table).columns }).occasions, {
        kind: 'spread',
        column: 'wall_level_mm',
        by: 'moment',
      }),
    },
  ],
};
