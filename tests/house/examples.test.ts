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
import ts from 'typescript';
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

/** A program of someone who has the package installed; what only shows a part of one imports nothing. */
const programs = documents.flatMap((document) =>
  blocks(document, ['ts', 'js'])
    .filter((code) => /^import /m.test(code))
    .map((code, nth) => ({
      name: `${document}, the ${nth + 1}. program`,
      code,
      file: `${document.replace(/\W/g, '-')}-${nth}`,
    })),
);
const commands = documents.flatMap((document) =>
  blocks(document, ['']).flatMap((code) => code.split('\n').filter((line) => line.startsWith('node dist/cli.js'))),
);

/** `toe.unit; // 'deg'`: an expression and what it gives, where that is said as code and not in words. */
const stated = /^(\S.*); \/\/ ([{['"\d-].*)$/gm;

/** A document's program, whose results are held to what it states of them; where it makes a page, the page is drawn. */
const complete = (code: string) =>
  [
    `import { demo, holds } from './given.js';`,
    code.replace(`'../lib/index.ts'`, `'evenhoof'`).replace(stated, 'holds($1, $2);'),
    ...(/^export const page\b/m.test(code)
      ? [`import { htmlPage } from 'evenhoof/report';`, 'await htmlPage(page, { herd: demo });']
      : []),
  ].join('\n');

/** What stands beside the programs: the demo herd in more files than `tidy` writes, and how a result is held. */
const beside = `import { deepStrictEqual, ok } from 'node:assert';
import { readFileSync, writeFileSync } from 'node:fs';
import { herd, IntervalSums, readTable, writeParquet } from 'evenhoof';
const [feet, visits, intervals] = ['data/feet.csv', 'data/visits.csv', 'intervals.csv'].map((file) => readTable(readFileSync(file)).columns);
writeFileSync('visits.parquet', await writeParquet(visits));
writeFileSync('south.sums', new IntervalSums({ outcome: 'wall_level_mm', size: true }).add(intervals).save());
export const demo = herd({ feet, visits });
/** A text that ends in … stands for all that begin so, a class for what is made of it, an object for what has as much. */
export function holds(found: any, said: unknown): void {
  if (typeof said === 'function') ok(found instanceof said);
  else if (typeof said === 'string' && said.endsWith('…')) ok(found.startsWith(said.slice(0, -1)));
  else if (typeof said === 'object' && said) for (const [name, part] of Object.entries(said)) holds(found[name], part);
  else deepStrictEqual(found, said);
}`;

/** Where the examples run: beside the demo herd's tables, tidy and in each format. */
let place = '';
beforeAll(() => {
  if (!['dist/cli.js', 'dist/types/lib/index.d.ts'].every((file) => existsSync(join(root, file))))
    execFileSync('node', ['scripts/build.mjs', 'library', 'types'], { cwd: root, stdio: 'inherit' });
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
  for (const { file, code } of [{ file: 'given', code: beside }, ...programs]) {
    const typed = file === 'given' ? code : complete(code);
    writeFileSync(join(place, `${file}.ts`), typed);
    const { outputText } = ts.transpileModule(typed, { compilerOptions: { target: ts.ScriptTarget.ES2023 } });
    writeFileSync(join(place, `${file}.js`), outputText);
  }
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

  it('states results that can be held to what comes out', () => {
    expect(programs.flatMap(({ code }) => code.match(stated) ?? []).length).toBeGreaterThan(2);
  });

  it('has the types that it needs', () => {
    const files = programs.map(({ file }) => join(place, `${file}.ts`));
    const program = ts.createProgram(files, {
      ...{ noEmit: true, strict: true, skipLibCheck: true, target: ts.ScriptTarget.ES2023 },
      ...{ module: ts.ModuleKind.NodeNext, types: ['node'], typeRoots: [join(root, 'node_modules/@types')] },
    });
    const complaints = ts.getPreEmitDiagnostics(program).map(({ file, messageText }) => ({
      file: file?.fileName,
      text: ts.flattenDiagnosticMessageText(messageText, ' '),
    }));
    expect(complaints).toEqual([]);
  });

  it.each(programs)('runs: $name', ({ file }) => {
    expect(run('node', [`${file}.js`])).toEqual({ status: 0, complaint: '' });
  });

  it.each(commands)('is a command: %s', (command) => {
    expect(run(command, [], true)).toEqual({ status: 0, complaint: '' });
  });
});
