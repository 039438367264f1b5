import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin, Rolldown } from 'vite';
import type { HerdPage } from '../lib/index.ts';
import { style } from '../lib/page/style.ts';
import { pages } from '../notebooks/index.ts';
import { pageDocument, policyOf } from '../notebooks/shell/document.ts';

const ENTRY = 'virtual:page/';
const STYLE = 'virtual:parts.css';

/** The file of a page: its name, the words joined. `front-and-hind` is `notebooks/frontAndHind.ts`. */
const fileOf = ({ name }: HerdPage) => `/notebooks/${name.replace(/-(\w)/g, (_, letter) => letter.toUpperCase())}.ts`;

const dataFiles = (root: string) => readdirSync(join(root, 'data')).filter((file) => file.endsWith('.csv'));

/** One entry a page, so that each document loads its own page's code and what all share. */
export const entries: Record<string, string> = Object.fromEntries(pages.map((page) => [page.name, ENTRY + page.name]));

/** Writes a document a page, each under its own policy; the first page is the index too. Serves the same in development. */
export function documents(): Plugin {
  let root = process.cwd();
  return {
    name: 'evenhoof-documents',
    configResolved(config) {
      root = config.root;
    },
    resolveId: (id) => (id.startsWith(ENTRY) || id === STYLE ? `\0${id}` : undefined),
    load(id) {
      if (id === `\0${STYLE}`) return style;
      const page = pages.find(({ name }) => id === `\0${ENTRY}${name}`);
      if (!page) return undefined;
      if (!existsSync(join(root, fileOf(page)))) this.error(`The page ${page.name} should stand in ${fileOf(page)}`);
      return [
        `import '${STYLE}';`,
        `import '/notebooks/shell/style.css';`,
        `import { start } from '/notebooks/shell/start.tsx';`,
        `import { page } from '${fileOf(page)}';`,
        'start(page);',
      ].join('\n');
    },
    generateBundle: {
      // After Vite has written the style sheet.
      order: 'post',
      handler(_, bundle) {
        const styles = Object.keys(bundle).filter((file) => file.endsWith('.css'));
        for (const [index, page] of pages.entries()) {
          const entry = Object.values(bundle).find(
            (chunk) => chunk.type === 'chunk' && chunk.isEntry && chunk.name === page.name,
          );
          if (entry?.type !== 'chunk') this.error(`The page ${page.name} was not built`);
          const files = { script: entry.fileName, preloads: imported(entry, bundle), styles };
          const source = pageDocument(page, pages, files, policyOf(page));
          this.emitFile({ type: 'asset', fileName: `${page.name}.html`, source });
          if (index === 0) this.emitFile({ type: 'asset', fileName: 'index.html', source });
        }
        for (const file of dataFiles(root))
          this.emitFile({ type: 'asset', fileName: `data/${file}`, source: readFileSync(join(root, 'data', file)) });
        this.emitFile({
          type: 'asset',
          fileName: 'icon.svg',
          source: readFileSync(join(root, 'notebooks/shell/icon.svg')),
        });
      },
    },
    configureServer(server) {
      server.middlewares.use(async (request, response, next) => {
        const path = new URL(request.url ?? '/', 'http://here').pathname;
        const page =
          path === '/' || path === '/index.html' ? pages[0] : pages.find(({ name }) => path === `/${name}.html`);
        if (!page) {
          if (path === '/icon.svg') request.url = '/notebooks/shell/icon.svg';
          return next();
        }
        const files = { script: `/@id/__x00__${ENTRY}${page.name}`, preloads: [], styles: [] };
        response.setHeader('Content-Type', 'text/html');
        response.end(await server.transformIndexHtml(path, pageDocument(page, pages, files)));
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
