import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Plugin, type Rolldown, runnerImport } from 'vite';
import type { HerdPage } from '../lib/index.ts';
import { leftOut } from './leftOut.ts';
import type { Pages } from './siteConfig.ts';
import { languages, saying } from './words/languages.ts';

const ENTRY = 'virtual:page/';
const STYLE = 'virtual:parts.css';
const LEFT_OUT = '\0left-out:';

const root = fileURLToPath(new URL('..', import.meta.url));
const dataFiles = () => readdirSync(join(root, 'data')).filter((file) => file.endsWith('.csv'));
const policyOf = ({ policy = 'strict' }: HerdPage) => policy;

/** Writes a document a page, each under its own policy; the first page is the index too. Serves the same in development. */
export function documents({ list, folder, policy, words }: Required<Pages>): Plugin {
  /** Loads our own TypeScript as it is built, JSX and all. */
  const load = async <Module>(file: string) =>
    (await runnerImport<Module>(file, { configFile: false, plugins: [saying(words)] })).module;
  let pages: readonly HerdPage[] = [];
  let shell: typeof import('../notebooks/shell/document.ts');
  let manifest: typeof import('../notebooks/shell/manifest.ts').manifest;
  let style = '';
  const built = () => pages.filter((page) => policyOf(page) === policy);
  /** The file of a page: its name, the words joined. `front-and-hind` stands in `frontAndHind.ts`. */
  const fileOf = ({ name }: HerdPage) =>
    join(folder, `${name.replace(/-(\w)/g, (_, letter) => letter.toUpperCase())}.ts`);

  return {
    name: 'evenhoof-documents',
    enforce: 'pre',
    async config(_, { isPreview, command }) {
      if (isPreview) return undefined;
      ({ pages } = await load<{ pages: readonly HerdPage[] }>(list));
      shell = await load(join(root, 'notebooks/shell/document.ts'));
      ({ manifest } = await load<typeof import('../notebooks/shell/manifest.ts')>(
        join(root, 'notebooks/shell/manifest.ts'),
      ));
      ({ style } = await load<{ style: string }>(join(root, 'lib/page/style.ts')));
      // One entry a page, so that each document loads its own page's code and what all share.
      const input = Object.fromEntries(built().map(({ name }) => [name, ENTRY + name]));
      if (policy === 'strict') input['service-worker'] = join(root, 'notebooks/shell/worker.ts');
      return command === 'build' ? { build: { rolldownOptions: { input } } } : undefined;
    },
    resolveId(id, importer = '') {
      if (id.startsWith(ENTRY) || id === STYLE) return `\0${id}`;
      if (policy !== 'strict' || this.environment.mode !== 'build') return undefined;
      const without = leftOut.findIndex(({ name, importer: from }) => name === id && from.test(importer));
      return without < 0 ? undefined : LEFT_OUT + without;
    },
    load(id) {
      if (id === `\0${STYLE}`) return style;
      if (id.startsWith(LEFT_OUT)) return leftOut[Number(id.slice(LEFT_OUT.length))].instead;
      const page = pages.find(({ name }) => id === `\0${ENTRY}${name}`);
      if (!page) return undefined;
      if (!existsSync(fileOf(page))) this.error(`The page ${page.name} should stand in ${fileOf(page)}`);
      return [
        `import '${STYLE}';`,
        `import '/notebooks/shell/style.css';`,
        `import { start } from '/notebooks/shell/start.tsx';`,
        `import { page } from ${JSON.stringify(fileOf(page))};`,
        'start(page);',
      ].join('\n');
    },
    generateBundle: {
      // After Vite has written the style sheet.
      order: 'post',
      handler(_, bundle) {
        const emit = (fileName: string, source: string | Buffer) => this.emitFile({ type: 'asset', fileName, source });
        const styles = Object.keys(bundle).filter((file) => file.endsWith('.css'));
        const chunks = Object.values(bundle).filter((file) => file.type === 'chunk');
        for (const page of built()) {
          const entry = chunks.find(({ isEntry, name }) => isEntry && name === page.name)!;
          const files = { script: entry.fileName, preloads: imported(entry, bundle), styles, languages: languages() };
          const html = shell.pageDocument(page, pages, files, shell.policyOf(page));
          emit(`${page.name}.html`, html);
          if (page === pages[0]) emit('index.html', html);
        }
        for (const file of dataFiles()) emit(`data/${file}`, readFileSync(join(root, 'data', file)));
        emit('manifest.webmanifest', `${JSON.stringify(manifest, null, 2)}\n`);
        for (const { src } of manifest.icons) emit(src, readFileSync(join(root, 'notebooks/shell', src)));
      },
    },
    configureServer(server) {
      server.middlewares.use(async (request, response, next) => {
        const path = new URL(request.url ?? '/', 'http://here').pathname;
        const page =
          path === '/' || path === '/index.html' ? pages[0] : pages.find(({ name }) => path === `/${name}.html`);
        if (manifest.icons.some(({ src }) => path === `/${src}`)) request.url = `/notebooks/shell${path}`;
        if (path === '/manifest.webmanifest') {
          response.setHeader('Content-Type', 'application/manifest+json');
          return response.end(JSON.stringify(manifest));
        }
        if (!page) return next();
        const files = { script: `/@id/__x00__${ENTRY}${page.name}`, preloads: [], styles: [], languages: [] };
        response.setHeader('Content-Type', 'text/html');
        response.end(await server.transformIndexHtml(path, shell.pageDocument(page, pages, files)));
      });
    },
  };
}

/** Every file that a chunk needs before it can run. */
function imported(entry: Rolldown.OutputChunk, bundle: Rolldown.OutputBundle): string[] {
  const found = new Set<string>();
  const visit = (file: string) => {
    const chunk = bundle[file];
    if (found.has(file) || chunk?.type !== 'chunk') return;
    found.add(file);
    chunk.imports.forEach(visit);
  };
  entry.imports.forEach(visit);
  return [...found];
}
