// Tables larger than memory, on DuckDB in the same process: Node only. The package's third entry.
export { readTableFile } from './files/twoThreads/readTableFile.ts';
export { computeLarge, type LargeRun } from './large/computeLarge.ts';
export { computeLargeFeet, type LargeOptions } from './large/computeLargeFeet.ts';
export { computeLargeHorses, type LargeHorsesOptions } from './large/computeLargeHorses.ts';
export type { EngineOptions } from './large/engine.ts';
export { largeIntervals } from './large/largeIntervals.ts';
export { type LargeShare, LargeTable, type Spread } from './large/largeTable.ts';
export { LargeTableError } from './large/largeTableError.ts';
export { type LargeLevel, largeLevelPage } from './large/levelPage.ts';
export { largeIntervalsPage } from './large/longerIntervalsPage.ts';
export { type LargeRanges, largeRangesPage } from './large/rangesPage.ts';
export { shareColumns, spreadColumns } from './large/smallTables.ts';
export type { LevelGroup, LevelSummary } from './views/levelDistribution.ts';
