import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

export const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Source {
  /** From the project's folder, with `/`. */
  readonly path: string;
  readonly text: string;
  /** What it imports, types and `import()` included: paths of our own files, names of packages. */
  readonly imports: readonly string[];
}

/** Every file under a folder whose name ends so, from the project's folder. */
export function filesIn(folder: string, ending: RegExp): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && ending.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length).split(sep).join('/'))
    .sort();
}

/** Our own TypeScript in some folders, with what each file imports. */
export function sources(...folders: readonly string[]): Source[] {
  return folders
    .flatMap((folder) => filesIn(folder, /\.tsx?$/))
    .map((path) => {
      const text = readFileSync(join(root, path), 'utf8');
      const imports = ts.preProcessFile(text).importedFiles.map(({ fileName }) =>
        fileName.startsWith('.')
          ? normalize(join(dirname(path), fileName))
              .split(sep)
              .join('/')
          : fileName,
      );
      return { path, text, imports };
    });
}
