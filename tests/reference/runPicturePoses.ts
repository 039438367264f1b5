// How exactly pictures measure, over as many invented feet as asked for: `npx tsx tests/reference/runPicturePoses.ts 10000`.
import { type PoseOptions, picturePoses } from './picturePoses.ts';

const count = Number(process.argv[2] ?? 10_000);
const runs: readonly (readonly [string, PoseOptions])[] = [
  ['flat foot, board, 1 px', {}],
  ['landmarks off the plane, board, 4 px', { depth: true, placing_px: 4 }],
  ['landmarks off the plane, bar, 4 px', { depth: true, placing_px: 4, scale: 'bar' }],
];
for (const [title, options] of runs) {
  console.log(`\n${title}: ${count} poses\n\n| measure | pictures | RMS | covered |\n| --- | --- | --- | --- |`);
  for (const { name, unit, n, rms, covered } of picturePoses(count, 20_261_125, options)) {
    const size = unit === 'deg' ? `${rms.toFixed(3)}°` : `${(100 * rms).toFixed(2)}%`;
    console.log(`| ${name} | ${n} | ${size} | ${(100 * covered).toFixed(1)}% |`);
  }
}
