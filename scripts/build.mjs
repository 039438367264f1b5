// Builds all of `dist`, or the parts that are named: `node scripts/build.mjs library types notebook`.
import { spawnSync } from 'node:child_process';
import { chmodSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, runnerImport } from 'vite';

const root = fileURLToPath(new URL('..', import.meta.url));
const dist = join(root, 'dist');

/** `dist/index.js`, `dist/report.js`, `dist/large.js` and `dist/cli.js`; what they depend on is left to the installer. */
async function library() {
  await build({
    root,
    configFile: false,
    publicDir: false,
    logLevel: 'warn',
    build: {
      outDir: dist,
      emptyOutDir: false,
      target: 'node20',
      minify: false,
      lib: {
        entry: {
          ...{ index: 'lib/index.ts', report: 'lib/report.ts', large: 'lib/large.ts', cli: 'lib/cli.ts' },
          // A thread of its own begins with it.
          readingHelper: 'lib/files/twoThreads/readingHelper.ts',
        },
        formats: ['es'],
      },
      rolldownOptions: {
        external: (id) => !/^[./]|^[A-Za-z]:|^\0/.test(id),
        output: {
          chunkFileNames: 'parts/[name]-[hash].js',
          banner: ({ name }) => (name === 'cli' ? '#!/usr/bin/env node' : ''),
        },
      },
    },
  });
  chmodSync(join(dist, 'cli.js'), 0o755);
}

/** `dist/types`: declarations whose imports resolve for every way of resolving. */
function types() {
  const out = join(dist, 'types');
  const { status } = spawnSync('npx', ['--no-install', 'tsc', '--project', join(root, 'scripts/types.json')], {
    cwd: root,
    stdio: 'inherit',
  });
  if (status !== 0) throw new Error('The types do not hold; run npm run types');
  for (const file of filesIn(out)) {
    const text = readFileSync(file, 'utf8');
    writeFileSync(file, text.replace(/((?:from|import)\s*\(?\s*['"]\.{1,2}\/[^'"]*)\.tsx?(['"])/g, '$1.js$2'));
  }
}

/** `dist/notebook`: a document a page, and the service worker that keeps them; other languages in folders of it. */
async function notebook() {
  const { module } = await runnerImport(join(root, 'scripts/buildSite.ts'));
  await module.buildNotebook(join(dist, 'notebook'));
}

function filesIn(folder) {
  return readdirSync(folder, { recursive: true })
    .map((name) => join(folder, name))
    .filter((file) => statSync(file).isFile())
    .sort();
}

const parts = { library, types, notebook };
const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !Object.hasOwn(parts, name));
if (unknown.length > 0) {
  console.error(`There is no part ${unknown.join(', ')}; the parts are ${Object.keys(parts).join(', ')}`);
  process.exit(2);
}
if (wanted.length === 0) rmSync(dist, { recursive: true, force: true });
for (const [name, make] of Object.entries(parts)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  const started = performance.now();
  try {
    await make();
  } catch (error) {
    console.error(`The ${name} could not be built: ${error.message}`);
    process.exit(1);
  }
  console.log(`${name} built in ${((performance.now() - started) / 1000).toFixed(1)} s`);
}
