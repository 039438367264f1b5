import { execFileSync, spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as sheets from '@e965/xlsx';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { root } from './sources.ts';

const documents = ['README.md', ...readdirSync(join(root, 'docs')).map((name) => `docs/${name}`)].filter(
  // Its examples are those of the docstrings.
  (name) => name.endsWith('.md') && name !== 'docs/reference.md',
);

/** The blocks of code in one document, in the languages asked for. */
function blocks(document: string, languages: readonly string[]): string[] {
  const text = readFileSync(join(root, document), 'utf8');
  return [...text.matchAll(/^```(\w*)\n(.*?)^```$/gms)]
    .filter(([, language]) => languages.includes(language))
    .map(([, , code]) => code);
}

/** A program of someone who has the package installed; what only shows a part of one does not import it. */
const programs = documents.flatMap((document) =>
  blocks(document, ['ts', 'js'])
    .filter((code) => /from 'evenhoof/.test(code))
    .map((code, nth) => ({ name: `${document}, the ${nth + 1}. program`, code })),
);
const commands = documents.flatMap((document) =>
  blocks(document, ['']).flatMap((code) => code.split('\n').filter((line) => line.startsWith('node dist/cli.js'))),
);

/** What programs take as given. */
const given: Readonly<Record<string, string>> = {
  sheet: `(await import('evenhoof')).herd({ feet: (await import('evenhoof')).readTable(read('feet.csv')).columns }).feet`,
  bytes: `read('feet.csv')`,
  yards: `['intervals.csv']`,
};

/** Where the examples run: beside the demo herd's tables, tidy and in each format. */
let place = '';
beforeAll(() => {
  if (!existsSync(join(root, 'dist/cli.js')))
    execFileSync('node', ['scripts/build.mjs', 'library'], { cwd: root, stdio: 'inherit' });
  place = join(mkdtempSync(join(tmpdir(), 'evenhoof-examples-')), 'yard');
  mkdirSync(join(place, 'node_modules'), { recursive: true });
  symlinkSync(root, join(place, 'node_modules/evenhoof'), 'dir');
  symlinkSync(join(root, 'node_modules/arquero'), join(place, 'node_modules/arquero'), 'dir');
  symlinkSync(join(root, 'dist'), join(place, 'dist'), 'dir');
  cpSync(join(root, 'data'), join(place, 'data'), { recursive: true });
  writeFileSync(join(place, 'package.json'), '{ "type": "module" }');
  const tables = ['data/feet.csv', '--horses', 'data/horses.csv', '--visits', 'data/visits.csv', '--out', '.'];
  for (const format of ['csv', 'parquet'])
    execFileSync('node', ['dist/cli.js', 'tidy', ...tables, '--format', format], { cwd: place });
  writeFileSync(
    join(place, 'visits.js'),
    `import { readFileSync, writeFileSync } from 'node:fs';
import { readTable, writeParquet } from 'evenhoof';
writeFileSync('visits.parquet', await writeParquet(readTable(readFileSync('data/visits.csv')).columns));`,
  );
  execFileSync('node', ['visits.js'], { cwd: place });
  const book = sheets.utils.book_new();
  sheets.utils.book_append_sheet(
    book,
    sheets.utils.aoa_to_sheet([
      ['Horse', 'Date', 'Limb', 'Toe angle'],
      ['Ada', '2026-03-09', 'LF', 52],
    ]),
    'Feet',
  );
  writeFileSync(join(place, 'yard.xlsx'), sheets.write(book, { type: 'buffer', bookType: 'xlsx' }));
});
afterAll(() => rmSync(join(place, '..'), { recursive: true, force: true }));

function run(command: string, args: readonly string[], shell = false) {
  const { status, stderr } = spawnSync(command, args, { cwd: place, encoding: 'utf8', shell });
  return { status, complaint: stderr.trim() };
}

describe('what the documents show', () => {
  it('is there', () => {
    expect(programs.length).toBeGreaterThan(5);
    expect(commands.length).toBeGreaterThan(5);
  });

  it.each(programs)('runs: $name', ({ code }) => {
    const missing = Object.keys(given).filter(
      (name) => new RegExp(`\\b${name}\\b`).test(code) && !new RegExp(`(const|let) ${name}\\b`).test(code),
    );
    const of = (name: string) => (name === 'bytes' && code.includes('.xlsx') ? `read('yard.xlsx')` : given[name]);
    const prelude = missing.map((name) => `const ${name} = ${of(name)};\n`).join('');
    const sent = code.includes("'south.sums'") ? code.replace("'south.sums'", "'north.sums'") : code;
    writeFileSync(
      join(place, 'program.js'),
      `import { readFileSync as whole } from 'node:fs';\nconst read = (name) => new Uint8Array(whole(name));\n${prelude}${sent}`,
    );
    expect(run('node', ['program.js'])).toEqual({ status: 0, complaint: '' });
  });

  it.each(commands)('is a command: %s', (command) => {
    expect(run(command, [], true)).toEqual({ status: 0, complaint: '' });
  });
});
