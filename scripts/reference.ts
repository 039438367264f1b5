// Writes docs/reference.md from the docstrings of everything that lib/index.ts, lib/report.ts and lib/large.ts export: `npm run docs`.
import { writeFileSync } from 'node:fs';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const root = fileURLToPath(new URL('..', import.meta.url));
const entries = ['lib/index.ts', 'lib/report.ts', 'lib/large.ts'];

/** One exported name: what it is, and what its docstring says. */
export interface Entry {
  readonly name: string;
  /** Where it is written, from the root. */
  readonly file: string;
  readonly kind: 'function' | 'type' | 'class' | 'value';
  readonly signature: string;
  readonly text: string;
  /** Parameters and the other tags of the docstring, in its order. */
  readonly tags: readonly { readonly name: string; readonly text: string }[];
  /** Of an interface or a class: its public members, each as it is written in code, with what is said of it. */
  readonly members: readonly { readonly code: string; readonly text: string }[];
}

/** Everything public, by file and then by name. */
export function publicNames(): Entry[] {
  const config = ts.readConfigFile(`${root}tsconfig.json`, ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config.config, ts.sys, root);
  const program = ts.createProgram(
    entries.map((path) => root + path),
    options,
  );
  const checker = program.getTypeChecker();
  const found = entries.flatMap((path) => {
    const module = checker.getSymbolAtLocation(program.getSourceFile(root + path)!)!;
    return checker.getExportsOfModule(module).map((symbol) => entryOf(symbol, checker));
  });
  return found.sort((a, b) => (a.file === b.file ? order(a.name, b.name) : order(a.file, b.file)));
}

function entryOf(exported: ts.Symbol, checker: ts.TypeChecker): Entry {
  const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
  const declaration = symbol.declarations![0];
  const type = symbol.flags & ts.SymbolFlags.Value ? checker.getTypeOfSymbolAtLocation(symbol, declaration) : undefined;
  const called = type?.getCallSignatures() ?? [];
  const kind =
    symbol.flags & ts.SymbolFlags.Class
      ? 'class'
      : called.length > 0
        ? 'function'
        : type === undefined
          ? 'type'
          : 'value';
  const { name } = exported;
  return {
    name,
    file: relative(root, declaration.getSourceFile().fileName),
    kind,
    signature: ts.isTypeAliasDeclaration(declaration)
      ? `type ${name} = ${declaration.type.getText()}`
      : called.map((each) => `${name}${checker.signatureToString(each, declaration, form)}`).join('\n'),
    text: ts.displayPartsToString(symbol.getDocumentationComment(checker)),
    members: [
      ...(kind === 'class' ? membersOf(type!, declaration, checker, `${name}.`) : []),
      ...(kind === 'class' || ts.isInterfaceDeclaration(declaration)
        ? membersOf(checker.getDeclaredTypeOfSymbol(symbol), declaration, checker)
        : []),
    ],
    tags: tagsOf(symbol, checker),
  };
}

function tagsOf(symbol: ts.Symbol, checker: ts.TypeChecker): Entry['tags'] {
  return symbol.getJsDocTags(checker).map((tag) => ({ name: tag.name, text: ts.displayPartsToString(tag.text) }));
}

/** What a type of ours lets others use: neither what is private nor what the language itself brings. */
function membersOf(type: ts.Type, at: ts.Node, checker: ts.TypeChecker, before = ''): Entry['members'] {
  const open = checker.getPropertiesOfType(type).filter((member) => {
    const [written] = member.declarations ?? [];
    const hidden = ts.ModifierFlags.Private | ts.ModifierFlags.Protected;
    return (
      written?.getSourceFile().fileName.startsWith(`${root}lib/`) &&
      !ts.isPrivateIdentifier(ts.getNameOfDeclaration(written) ?? written) &&
      !(ts.getCombinedModifierFlags(written) & hidden)
    );
  });
  return open.map((member) => {
    const its = checker.getTypeOfSymbolAtLocation(member, at);
    const called = member.flags & ts.SymbolFlags.Method ? checker.getNonNullableType(its).getCallSignatures() : [];
    const name = `${before}${member.name}${member.flags & ts.SymbolFlags.Optional ? '?' : ''}`;
    const signatures = called.map((each) => `${name}${checker.signatureToString(each, at, form)}`);
    const tags = tagsOf(member, checker).map((tag) => said(tag.name, tag.text));
    return {
      code: signatures.length > 0 ? signatures.join('; ') : `${name}: ${checker.typeToString(its, at, form)}`,
      text: [ts.displayPartsToString(member.getDocumentationComment(checker)), ...tags].filter(Boolean).join(' · '),
    };
  });
}

/** A tag of a docstring in a running text. */
function said(tag: string, text: string): string {
  const words = text.replace(/\s*\n\s*/g, ' ').trim();
  return tag === 'example' ? `example: \`${words}\`` : `${tag}: ${words}`;
}

const form = ts.TypeFormatFlags.NoTruncation | ts.TypeFormatFlags.UseAliasDefinedOutsideCurrentScope;
const order = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

/** The reference as Markdown, one section a folder. */
export function reference(): string {
  const names = publicNames();
  const folders = [...new Set(names.map(({ file }) => folderOf(file)))];
  const about: Readonly<Record<string, string>> = {
    geometry: 'Plane geometry of feet: points are rows of a `Float64Array`, x then y. Nothing here knows a horse.',
    stats: 'Statistics over plain arrays. Nothing here knows a horse.',
    sheet: 'Tables of typed columns, the formula language, and sheets that are typed in.',
    hoof: 'What is measured of a foot, what is computed from it, and what a herd makes of both.',
    files: 'Tables in and out.',
    views: 'Drawings and charts as plain data.',
    page: 'Pages of blocks, and what shows them.',
    store: 'What a browser keeps.',
    large: 'Tables larger than memory, in Node.',
  };
  return [
    '# Library reference',
    'Written by `npm run docs` from the docstrings; change those, not this page. Numbers are millimetres, degrees, kilograms and days unless a line says otherwise; missing is `NaN` for numbers and an empty text for texts.',
    ...folders.flatMap((folder) => [
      `## ${folder}`,
      ...(about[folder] === undefined ? [] : [about[folder]]),
      ...names.filter(({ file }) => folderOf(file) === folder).map(section),
    ]),
  ]
    .join('\n\n')
    .concat('\n');
}

const folderOf = (file: string) => file.split('/')[1].replace(/\.tsx?$/, '');

function section({ name, file, kind, signature, text, tags, members }: Entry): string {
  const lines = [`### \`${name}\``, `${kind}, \`${file}\``];
  if (signature !== '') lines.push(`\`\`\`ts\n${signature}\n\`\`\``);
  if (text !== '') lines.push(text.replace(/\s*\n\s*/g, ' '));
  const listed = tags.map((tag) => `- ${said(tag.name, tag.text)}`);
  listed.push(
    ...members.map((member) => {
      const about = member.text.replace(/\s*\n\s*/g, ' ').trim();
      return `- \`${member.code}\`${about === '' ? '' : `. ${about}`}`;
    }),
  );
  if (listed.length > 0) lines.push(listed.join('\n'));
  return lines.join('\n\n');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(`${root}docs/reference.md`, reference());
