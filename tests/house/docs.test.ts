import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { expect, test } from 'vitest';
import { filesIn, root } from './sources.ts';

const documents = ['README.md', 'DEVELOPERS.md', 'CHANGELOG.md']
  .filter((file) => existsSync(join(root, file)))
  .concat(filesIn('docs', /\.md$/));
const text = (file: string) => readFileSync(join(root, file), 'utf8');

/** The anchors of a document's headings, as code hosts make them. */
function anchors(file: string): Set<string> {
  const headings =
    text(file)
      .replace(/```[\s\S]*?```/g, '')
      .match(/^#{1,6} .*$/gm) ?? [];
  return new Set(
    headings.map((heading) =>
      heading
        .replace(/^#+ /, '')
        .toLowerCase()
        .replace(/[^\p{L}\p{N}\s_-]/gu, '')
        .trim()
        .replace(/\s/g, '-'),
    ),
  );
}

test('there are documents to check', () => {
  expect(documents).toContain('DEVELOPERS.md');
});

test.each(documents)('%s links to files and headings that are there', (file) => {
  const links = [
    ...text(file)
      .replace(/```[\s\S]*?```|`[^`\n]*`/g, '')
      .matchAll(/\]\(([^()\s]+)\)/g),
  ].map(([, link]) => link);
  const broken = links.filter((link) => {
    if (/^(https?|mailto):/.test(link)) return false;
    const [path, anchor] = link.split('#');
    const target = path === '' ? file : normalize(join(dirname(file), path));
    if (!existsSync(join(root, target))) return true;
    return anchor !== undefined && target.endsWith('.md') && !anchors(target).has(anchor);
  });
  expect(broken).toEqual([]);
});

test.each(documents)('%s names scripts of package.json and files that are there', (file) => {
  const { scripts } = JSON.parse(text('package.json'));
  const named = [...text(file).matchAll(/npm run ([\w:-]+)/g)].map(([, name]) => name);
  expect(named.filter((name) => !Object.hasOwn(scripts, name))).toEqual([]);
  const paths = [...text(file).matchAll(/`((?:lib|notebooks|docs|data|tests|scripts)\/[\w./-]+\.\w+)`/g)].map(
    ([, path]) => path,
  );
  expect(paths.filter((path) => !/NAME/.test(path) && !existsSync(join(root, path)))).toEqual([]);
});

test.each(documents)('%s names commands of evenhoof and options that its help shows', (file) => {
  const [, help] = text('lib/cli.ts').match(/const help = `(.*?)`;/s)!;
  const named = [...text(file).matchAll(/`(evenhoof [^`]*|--[^`]*)`/g)].flatMap(
    ([, code]) => code.match(/^evenhoof \w+|--[a-z][\w-]*/g) ?? [],
  );
  expect(named.filter((name) => !new RegExp(`${name}\\b(?!-)`).test(help))).toEqual([]);
});
