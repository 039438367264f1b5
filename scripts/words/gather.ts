// Gathers every word that a reader sees into lib/words/en.json and says what each language lacks: `npm run words`.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { languages, wordsOf } from './languages.ts';
import { saidIn } from './saidIn.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** A wording of the interface as the sources say it. */
export interface Wording {
  /** The files that say it. */
  readonly files: readonly string[];
  /** Of words that change with a number: the English for one. */
  readonly one?: string;
  /** And under which names that number is filled in. */
  readonly counts?: readonly string[];
}

/**
 * All words of the interface by their English, in the order of the sources.
 * @throws Error where the same words change with a number in one place and don't in another, or have two forms for one
 */
export function gathered(): Map<string, Wording> {
  const found = new Map<string, Wording>();
  const gather = (source: string, file: string) => {
    for (const { key, one, filled } of saidIn(source, file.endsWith('x'))) {
      const known = found.get(key);
      if (known && known.one !== one)
        throw new Error(
          `“${key}” is said with one form for one here and with another elsewhere (${[file, ...(known.files ?? [])].join(', ')})`,
        );
      const files = [...new Set([...(known?.files ?? []), file])];
      const counts = filled.filter(({ counts }) => counts).map(({ name }) => name);
      found.set(key, one === undefined ? { files } : { files, one, counts: [...new Set(counts)] });
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

/** The list as it is kept: where each is said helps whoever translates it, and so do the words for one. */
export function listText(words: ReadonlyMap<string, Wording>): string {
  const listed = [...words].map(([key, { files, one }]) => [key, one === undefined ? files : { one, files }]);
  return `${JSON.stringify(Object.fromEntries(listed), null, 2)}\n`;
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
