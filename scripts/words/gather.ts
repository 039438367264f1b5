// Gathers every word that a reader sees into lib/words/en.json and says what each language lacks: `npm run words`.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { languages, wordsOf } from './languages.ts';
import { saidIn } from './saidIn.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** All words of the interface as they stand in the sources, each with the files that say it. */
export function gathered(): Map<string, string[]> {
  const found = new Map<string, string[]>();
  const gather = (source: string, file: string) => {
    for (const { key, filled } of saidIn(source, file.endsWith('x'))) {
      const files = found.get(key) ?? [];
      if (!files.includes(file)) files.push(file);
      found.set(key, files);
      for (const { start, end } of filled) gather(source.slice(start, end), file);
    }
  };
  for (const folder of ['lib', 'notebooks'])
    for (const name of readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).sort()) {
      const file = `${folder}/${name.replaceAll('\\', '/')}`;
      if (/\.tsx?$/.test(file)) gather(readFileSync(join(root, file), 'utf8'), file);
    }
  return found;
}

/** The list as it is kept: where each is said helps whoever translates it. */
export function listText(words: ReadonlyMap<string, readonly string[]>): string {
  return `${JSON.stringify(Object.fromEntries(words), null, 2)}\n`;
}

/** What a table of another language lacks, and what it has that nobody says any more. */
export function compared(language: string, words: ReadonlyMap<string, unknown>) {
  const table = wordsOf(language);
  return {
    lacking: [...words.keys()].filter((key) => !Object.hasOwn(table, key)),
    left: Object.keys(table).filter((key) => !words.has(key)),
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const words = gathered();
  writeFileSync(join(root, 'lib/words/en.json'), listText(words));
  console.log(`${words.size} wordings`);
  for (const language of languages()) {
    const { lacking, left } = compared(language, words);
    console.log(`${language}: ${lacking.length} lacking, ${left.length} no longer said`);
    for (const key of lacking.slice(0, 20)) console.log(`  lacks ${JSON.stringify(key)}`);
    for (const key of left.slice(0, 20)) console.log(`  no longer said ${JSON.stringify(key)}`);
  }
}
