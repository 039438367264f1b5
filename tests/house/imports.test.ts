import { expect, test } from 'vitest';
import { sources } from './sources.ts';

const lib = sources('lib');
const notebooks = sources('notebooks');

/** Which folders of lib a folder may import, besides itself. */
const allowed: Readonly<Record<string, readonly string[]>> = {
  words: [],
  geometry: [],
  stats: [],
  sheet: ['stats', 'words'],
  hoof: ['geometry', 'sheet', 'stats', 'words'],
  files: ['sheet', 'hoof', 'words'],
  views: ['sheet', 'hoof', 'stats', 'words'],
  page: ['sheet', 'views', 'words'],
  store: ['sheet', 'files', 'words'],
  large: ['sheet', 'hoof', 'files', 'views', 'page', 'words'],
};

const folderOf = (path: string) => /^lib\/([^/]+)\//.exec(path)?.[1] ?? path;

test('every folder of lib has its rule', () => {
  const folders = new Set(lib.map(({ path }) => folderOf(path)).filter((folder) => !folder.endsWith('.ts')));
  expect([...folders].filter((folder) => !Object.hasOwn(allowed, folder))).toEqual([]);
});

test('imports between the folders of lib run one way', () => {
  const wrong = lib.flatMap(({ path, imports }) => {
    const rule = allowed[folderOf(path)];
    if (!rule) return [];
    return imports
      .filter((other) => /^(lib|notebooks|tests|scripts|data)\//.test(other))
      .filter((other) => folderOf(other) !== folderOf(path) && !rule.includes(folderOf(other)))
      .map((other) => `${path} imports ${other}`);
  });
  expect(wrong).toEqual([]);
});

test('only the command line looks at the notebooks, and nothing imports the list of public names but they', () => {
  const wrong = lib.flatMap(({ path, imports }) =>
    imports
      .filter((other) => (other.startsWith('notebooks/') || other === 'lib/index.ts') && path !== 'lib/cli.ts')
      .map((other) => `${path} imports ${other}`),
  );
  expect(wrong).toEqual([]);
});

test('notebooks import nothing of lib but its public names', () => {
  const wrong = notebooks.flatMap(({ path, imports }) =>
    imports
      .filter((other) => /^(lib|tests|scripts|data)\//.test(other) && other !== 'lib/index.ts')
      .map((other) => `${path} imports ${other}`),
  );
  expect(wrong).toEqual([]);
});

test('every import of our own names a file that is there', () => {
  const known = new Set([...lib, ...notebooks].map(({ path }) => path));
  const wrong = [...lib, ...notebooks].flatMap(({ path, imports }) =>
    imports
      .filter((other) => /^(lib|notebooks)\//.test(other) && !known.has(other))
      .map((other) => `${path} imports ${other}`),
  );
  expect(wrong).toEqual([]);
});

test('no file imports itself by a roundabout way, types included', () => {
  const imports = new Map([...lib, ...notebooks].map((source) => [source.path, source.imports]));
  const done = new Set<string>();
  const trail: string[] = [];
  const cycles: string[] = [];
  const visit = (path: string) => {
    const before = trail.indexOf(path);
    if (before >= 0) cycles.push([...trail.slice(before), path].join(' → '));
    if (before >= 0 || done.has(path)) return;
    trail.push(path);
    for (const other of imports.get(path) ?? []) if (imports.has(other)) visit(other);
    trail.pop();
    done.add(path);
  };
  for (const path of imports.keys()) visit(path);
  expect(cycles).toEqual([]);
});

test.each([
  ['arquero', 'lib/sheet/arquero.ts'],
  ['idb', 'lib/store/database.ts'],
  ['vega', 'lib/page/render/vega.ts'],
  ['vega-lite', 'lib/page/render/vega.ts'],
  ['vega-interpreter', 'lib/page/render/vega.ts'],
  ['@duckdb/node-api', 'lib/large/engine.ts'],
])('%s enters through %s alone', (name, door) => {
  const users = [...lib, ...notebooks].filter(({ imports }) =>
    imports.some((other) => other === name || other.startsWith(`${name}/`)),
  );
  expect(users.map(({ path }) => path)).toEqual([door]);
});

test('the engine of linked charts is fetched only when it is needed', () => {
  const door = /(?:from|import)\s*['"][^'"]*render\/vega\.ts['"]/;
  expect([...lib, ...notebooks].filter(({ text }) => door.test(text)).map(({ path }) => path)).toEqual([]);
});
