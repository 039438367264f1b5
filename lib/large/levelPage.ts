import type { Page } from '../page/page.ts';
import { Sheet } from '../sheet/sheet.ts';
import { type LevelGroup, type LevelSummary, levelChart } from '../views/levelDistribution.ts';
import { say } from '../words/say.ts';

/** The summaries that the page shows, by column. */
export type LargeLevel = Readonly<Record<string, LevelSummary>>;

/** The page *Level* of a table that no page could hold: the same chart, from what the engine counted. */
export const largeLevelPage: Page<LargeLevel> = {
  name: 'level',
  title: say`Level`,
  question: say`Is each foot as high inside as outside, beyond what measuring can tell?`,
  blocks: ({ herd, units }) =>
    Object.entries(herd).flatMap(([column, summary]) => [
      { kind: 'chart', ...levelChart(summary, column, units) },
      {
        kind: 'sheet',
        name: column,
        title: say`Limb by limb`,
        sheet: groupSheet(summary.groups, summary.unit),
      },
    ]),
};

function groupSheet(groups: readonly LevelGroup[], unit: string): Sheet {
  const numbers = (of: (group: LevelGroup) => number) => Float64Array.from(groups, of);
  return Sheet.from({
    limb: { title: say`Limb`, values: groups.map(({ limb }) => limb) },
    moment: { title: say`Moment`, values: groups.map(({ moment }) => moment) },
    count: { title: say`Readings`, values: numbers(({ count }) => count) },
    beyond: { title: say`Beyond the error`, values: numbers(({ beyond }) => beyond) },
    low: { title: say`A quarter lie below`, unit, values: numbers(({ low }) => low) },
    middle: { title: say`Median`, unit, values: numbers(({ middle }) => middle) },
    high: { title: say`A quarter lie above`, unit, values: numbers(({ high }) => high) },
  });
}
