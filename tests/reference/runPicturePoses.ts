// How exactly pictures measure, over as many invented feet as asked for; of all runs, or of those with a word in their
// title: `npx tsx tests/reference/runPicturePoses.ts 10000 flat`.
import { type PoseOptions, picturePoses } from './picturePoses.ts';

const count = Number(process.argv[2] ?? 10_000);
const runs: readonly (readonly [string, PoseOptions])[] = [
  ['flat foot, board, 1 px', {}],
  ['landmarks off the plane, board, 3 px', { depth: true, placing_px: 3, scalePlacing_px: 1.5 }],
  ['landmarks off the plane, bar, 3 px', { depth: true, placing_px: 3, scalePlacing_px: 1.5, scale: 'bar' }],
];
for (const [title, options] of runs.filter(([name]) => name.includes(process.argv[3] ?? ''))) {
  console.log(`\n${title}: ${count} poses\n\n| measure | pictures | RMS | covered |\n| --- | --- | --- | --- |`);
  for (const { name, unit, n, rms, covered } of picturePoses(count, 20_261_125, options)) {
    const size = unit === 'deg' ? `${rms.toFixed(3)}°` : `${(100 * rms).toFixed(2)}%`;
    console.log(`| ${name} | ${n} | ${size} | ${(100 * covered).toFixed(1)}% |`);
  }
}
