// Every bench file here, one after the other: `npm run bench`, or `npm run bench formula` for those with a name like it.
// Those that take minutes run only when they are named.
import { readdirSync } from 'node:fs';
import { basename } from 'node:path';
import type { BenchRow } from './interleaved.ts';

const wanted = process.argv.slice(2);
const files = readdirSync(import.meta.dirname)
  .filter((file) => file.endsWith('.ts') && file !== basename(import.meta.filename))
  .filter((file) => wanted.length === 0 || wanted.some((name) => file.includes(name)));

console.log('| what | ours, ms | against | ms | ours ÷ theirs | goal |');
console.log('| --- | --- | --- | --- | --- | --- |');
for (const file of files) {
  const { bench, onDemand } = (await import(`./${file}`)) as { bench?: () => Promise<BenchRow[]>; onDemand?: boolean };
  if (onDemand && wanted.length === 0) continue;
  for (const { what, peer, ours, theirs, goal } of (await bench?.()) ?? [])
    console.log(`| ${what} | ${ms(ours)} | ${peer} | ${ms(theirs)} | ${(ours / theirs).toFixed(2)} | ${goal ?? ''} |`);
}

function ms(time: number): string {
  return time.toFixed(time < 10 ? 2 : time < 100 ? 1 : 0);
}
