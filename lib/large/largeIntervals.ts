import type { TooLittle } from '../hoof/intervalModel.ts';
import { IntervalSums, type IntervalSumsFit, type IntervalSumsOptions } from '../hoof/intervalSums.ts';
import { measured } from '../hoof/measured.ts';
import { measures } from '../hoof/measures/index.ts';
import { partName } from '../hoof/partName.ts';
import { Engine, type EngineOptions } from './engine.ts';
import { LargeTableError } from './largeTableError.ts';
import { sourceOf } from './source.ts';
import { StoredColumns, together } from './storedColumns.ts';

const alwaysRead = ['horse_id', 'limb', 'start_date', 'end_date', 'compared', 'shod', 'farrier', 'therapeutic'];
/** The engine gives some thousand rows at a time; sums take more at once more quickly. */
const rowsAtOnce = 50_000;

/**
 * Does a longer interval cost balance, asked of a table of intervals larger than memory: read piece by piece into `IntervalSums`.
 * @param intervals  as `computeLarge` writes them
 * @returns the answer of all rows together, or in words why there is too little
 * @throws LargeTableError where the file can't be read, or has no start and end of that outcome
 * @example await largeIntervals('tidy/intervals.parquet', { outcome: 'wall_level_mm', size: true })
 */
export async function largeIntervals(
  intervals: string,
  question: IntervalSumsOptions,
  options: EngineOptions = {},
): Promise<IntervalSumsFit | TooLittle> {
  const engine = await Engine.open({ memory: '1GB', ...options });
  try {
    const { outcome } = question;
    const source = await sourceOf(engine, intervals);
    const ends = [partName(outcome, 'start'), partName(outcome, 'end')];
    if (!ends.every((name) => source.columns.some((column) => column.name === name)))
      throw new LargeTableError(`${intervals} has no columns ${ends.join(' and ')}; ask about an outcome that it has`);
    const wanted = new Set([...alwaysRead, ...ends]);
    const columns = source.columns.filter(({ name }) => wanted.has(name));
    const read = await StoredColumns.of(engine, 'intervals', { ...source, columns });
    const sums = new IntervalSums(question);
    const unit = [...measured, ...measures].find(({ name }) => name === outcome)?.unit ?? '1';
    const add = (blocks: readonly (readonly Float64Array[])[]) => {
      const columns = read.columns(together(blocks));
      for (const name of ends) columns[name] = { ...columns[name], unit };
      sums.add(columns);
    };
    let waiting: (readonly Float64Array[])[] = [];
    for await (const block of engine.doubles(read.statement)) {
      waiting.push(block);
      if (waiting.length * block[0].length < rowsAtOnce) continue;
      add(waiting);
      waiting = [];
    }
    if (waiting.length > 0) add(waiting);
    return sums.answer();
  } finally {
    await engine.close();
  }
}
