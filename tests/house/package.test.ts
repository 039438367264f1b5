import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { checkPackage, createPackageFromTarballData } from '@arethetypeswrong/core';
import { publint } from 'publint';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { root } from './sources.ts';

/** Someone else's project, with this package installed and nothing else. */
let elsewhere = '';
beforeAll(() => {
  if (
    !['dist/index.js', 'dist/report.js', 'dist/large.js', 'dist/cli.js', 'dist/types/lib/index.d.ts'].every((file) =>
      existsSync(join(root, file)),
    )
  )
    execFileSync('node', ['scripts/build.mjs', 'library', 'types'], { cwd: root, stdio: 'inherit' });
  elsewhere = mkdtempSync(join(tmpdir(), 'evenhoof-elsewhere-'));
  mkdirSync(join(elsewhere, 'node_modules'));
  symlinkSync(root, join(elsewhere, 'node_modules/evenhoof'), 'dir');
  symlinkSync(join(root, 'node_modules/arquero'), join(elsewhere, 'node_modules/arquero'), 'dir');
  writeFileSync(join(elsewhere, 'package.json'), '{ "type": "module" }');
});
afterAll(() => rmSync(elsewhere, { recursive: true, force: true }));

function run(command: string, ...args: string[]) {
  const { status, stdout, stderr } = spawnSync(command, args, { cwd: elsewhere, encoding: 'utf8' });
  return { status, output: `${stdout}${stderr}`.trim() };
}

test('the package is imported by its name in plain Node, and answers', () => {
  writeFileSync(
    join(elsewhere, 'use.js'),
    `import { herd, measures, readTable, Sheet } from 'evenhoof';
const { columns } = readTable('horse,date,limb,toe angle,heel angle\\nBella,2026-03-09,near fore,52°,45°');
const yard = herd({ feet: columns });
yard.feet.add({ name: 'twice', formula: 'toe_angle_deg * 2' });
const { feet, horses, visits, intervals } = yard;
console.log([feet, horses, visits, intervals].every((sheet) => sheet instanceof Sheet), feet.column('twice').values[0], feet.column('twice').unit, measures.length > 10);`,
  );
  expect(run('node', 'use.js')).toEqual({ status: 0, output: 'true 104 deg true' });
});

test('two threads read a large file, and give what one gives', () => {
  writeFileSync(
    join(elsewhere, 'read.js'),
    `import { readFileSync, writeFileSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import { readTable } from 'evenhoof';
import { readTableFile } from 'evenhoof/large';
const lines = Array.from({ length: 350_000 }, (_, row) => 'H' + (row >> 2) + ',2026-03-09,' + ['LF', 'RF', 'LH', 'RH'][row & 3] + ',' + (45 + (row % 100) / 10));
writeFileSync('feet.csv', 'horse,date,limb,toe angle\\n' + lines.join('\\n'));
await readTableFile('feet.csv');
// By now the second thread has come.
await setTimeout(1000);
const { columns: two } = await readTableFile('feet.csv');
const { columns: one } = readTable(readFileSync('feet.csv'));
const shared = two.toe_angle_deg.values.buffer instanceof SharedArrayBuffer;
const same = Object.keys(one).every((name) => one[name].values.every((value, row) => value === two[name].values[row]));
console.log(shared, same, one.toe_angle_deg.values.length);`,
  );
  expect(run('node', 'read.js')).toEqual({ status: 0, output: 'true true 350000' });
});

/** Compiles a program strictly, as someone who resolves modules in this way. */
function compile(name: string, moduleResolution: string, options: object = {}) {
  const compilerOptions = {
    ...{ noEmit: true, strict: true, target: 'es2023', types: [], moduleResolution, ...options },
    module: moduleResolution === 'bundler' ? 'esnext' : 'nodenext',
  };
  writeFileSync(join(elsewhere, 'tsconfig.json'), JSON.stringify({ compilerOptions, files: [name] }));
  return run(join(root, 'node_modules/.bin/tsc'), '--project', '.');
}

test.each(['bundler', 'nodenext'])(
  'its types hold for a stranger who resolves modules as %s does, and those that they rest on too',
  (moduleResolution) => {
    writeFileSync(
      join(elsewhere, 'use.ts'),
      `import { type Block, type Column, herd, type Herd, type HerdPage, type Problem, readTable, Sheet, type TableRead } from 'evenhoof';
import { computeLarge, type LevelSummary } from 'evenhoof/large';
import { htmlPage } from 'evenhoof/report';
const { columns, problems }: TableRead = readTable('horse,date,limb');
export const found: readonly Problem[] = problems;
const yard: Herd = herd({ feet: columns });
const rows = (sheet: Sheet): number => sheet.rows;
export const sizes = [yard.feet, yard.occasions, yard.horses, yard.visits, yard.intervals].map(rows);
export function numbers(sheet: Sheet, name: string): Float64Array {
  const column: Column = sheet.column(name);
  if (column.kind === 'text') throw new TypeError(name);
  return column.values;
}
const blocks: Block[] = [{ kind: 'sheet', name: 'feet', title: 'Feet', sheet: yard.feet }];
const page: HerdPage = { name: 'own', title: 'Own', question: 'Is it mine?', blocks: () => blocks };
export const html: Promise<string> = htmlPage(page, { herd: yard });
const sheet = Sheet.from({ toe: { unit: 'mm', values: Float64Array.of(80) } });
export const values: Float64Array = sheet.column('toe').values;
const { unit, error } = yard.feet.add({ name: 'twice', formula: 'toe_angle_deg * 2' }).column('twice');
export const own: readonly [string, Float64Array | undefined] = [unit, error];
// @ts-expect-error there is no such column
sheet.column('heel');
export const later: [typeof computeLarge, LevelSummary?] = [computeLarge];`,
    );
    expect(compile('use.ts', moduleResolution, { skipLibCheck: false })).toEqual({ status: 0, output: '' });
  },
);

test.each(['bundler', 'nodenext'])('its sheets go to Arquero and come back, typed, as %s resolves it', (way) => {
  writeFileSync(
    join(elsewhere, 'arquero.ts'),
    `import type { ColumnTable } from 'arquero';
import { Sheet } from 'evenhoof';
const sheet = Sheet.from({ toe: { unit: 'mm', values: Float64Array.of(80) } });
const table = sheet.toArquero() as ColumnTable;
export const doubled: Sheet = Sheet.fromArquero(table.derive({ twice: 'd => d.toe * 2' }), ['twice']);`,
  );
  // Arquero's own types don't hold in themselves.
  expect(compile('arquero.ts', way, { skipLibCheck: true })).toEqual({ status: 0, output: '' });
});

test('every address in package.json leads to a file, and the command can be run', () => {
  const { bin, exports } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const files = [
    ...Object.values<string>(bin),
    ...Object.values<string>(exports['.']),
    ...Object.values<string>(exports['./report']),
    ...Object.values<string>(exports['./large']),
  ];
  for (const file of files) expect(existsSync(join(root, file)), file).toBe(true);
  expect(readFileSync(join(root, bin.evenhoof), 'utf8')).toMatch(/^#!\/usr\/bin\/env node\n/);
  expect(run(join(root, bin.evenhoof), '--help').status).toBe(0);
});

test('the entry for browsers needs nothing of Node, nor a document that a browser has', () => {
  const needed = new Set<string>();
  const follow = (file: string): void => {
    if (needed.has(file)) return;
    needed.add(file);
    for (const [, from] of readFileSync(file, 'utf8').matchAll(/(?:from|import)\s*\(?\s*['"]([^'"]+)['"]/g)) {
      if (from.startsWith('.')) follow(join(file, '..', from));
      else needed.add(from);
    }
  };
  follow(join(root, 'dist/index.js'));
  expect([...needed].filter((name) => /^node:|^linkedom|^@duckdb/.test(name))).toEqual([]);
  expect(needed).toContain('arquero');
});

test('what is packed reads well to those who publish and to every way of resolving types', {
  timeout: 120_000,
}, async () => {
  const { messages } = await publint({ pkgDir: root, pack: 'npm', strict: true });
  expect(messages).toEqual([]);
  const [{ filename }] = JSON.parse(run('npm', 'pack', root, '--json', '--ignore-scripts').output);
  const checked = await checkPackage(createPackageFromTarballData(readFileSync(join(elsewhere, filename))));
  if (checked.types === false) throw new Error('the package has no types');
  // It is ESM alone, and resolvers of before 2019 know no second entry.
  const known = ({ kind, resolutionKind }: { kind: string; resolutionKind?: string }) =>
    kind === 'CJSResolvesToESM' || resolutionKind === 'node10';
  expect(checked.problems.filter((problem) => !known(problem as never))).toEqual([]);
});

test('what depends on the package’s own place does not: no path of this machine stands in what is built', () => {
  for (const file of ['dist/index.js', 'dist/cli.js'])
    expect(readFileSync(join(root, file), 'utf8')).not.toContain(root);
});
