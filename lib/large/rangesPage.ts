import type { Page } from '../page/page.ts';
import { Sheet } from '../sheet/sheet.ts';
import { shareChart } from '../views/rangeShares.ts';
import { say } from '../words/say.ts';
import type { LargeShare, Spread } from './largeTable.ts';
import { spreadColumns } from './smallTables.ts';

/** What the page shows: how many readings lie outside each range, and how each column lies limb by limb. */
export interface LargeRanges {
  readonly shares: readonly LargeShare[];
  readonly spreads: readonly Spread[];
}

/** What of the page *The herd* holds for a registry: its readings beside the textbook's ranges and published herds. */
export const largeRangesPage: Page<LargeRanges> = {
  name: 'ranges',
  title: say`Beside the textbook`,
  question: say`How many readings lie outside each range, and how do the columns lie limb by limb?`,
  blocks: ({ herd }) => [
    { kind: 'chart', ...shareChart(herd.shares) },
    { kind: 'sheet', name: 'spread', title: say`Limb by limb`, sheet: Sheet.from(spreadColumns(herd.spreads)) },
  ],
};
