import { coveredIn, shares } from './knownEffects.ts';

/** `npm run coverage-of-intervals -- 1000`: how often the 95% intervals hold what is known of invented herds. */
const herds = Number(process.argv[2] ?? 1000);
if (!(herds >= 2)) {
  console.error(`A number of herds was expected, found ${process.argv[2]}`);
  process.exit(2);
}
const started = performance.now();
const results = [];
for (let seed = 1; seed <= herds; seed++) {
  results.push(...coveredIn(seed));
  if (seed % 50 === 0)
    console.error(`${seed} of ${herds} herds, ${((performance.now() - started) / 1000).toFixed(0)} s`);
}
const list = shares(results);
console.log('| effect of a week | covered | mean estimate less truth |\n| --- | --- | --- |');
for (const { effect, covered, herds: of, bias, biasError } of list)
  console.log(
    `| ${effect} | ${((100 * covered) / of).toFixed(1)} of 100 | ${bias.toFixed(4)} ± ${biasError.toFixed(4)} |`,
  );
const all = list.reduce((sum, { covered }) => sum + covered, 0) / list.reduce((sum, each) => sum + each.herds, 0);
console.log(`| all together | ${(100 * all).toFixed(1)} of 100 | |`);
console.log(`\n${herds} herds, seeds 1 to ${herds}, ${((performance.now() - started) / 1000).toFixed(0)} s`);
