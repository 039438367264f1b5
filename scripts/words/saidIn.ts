import ts from 'typescript';
import { sourceFile } from './sourceFile.ts';

/** Words marked by `say` in a source text. */
export interface Said {
  /** The English with `{name}` for what is filled in. */
  readonly key: string;
  readonly start: number;
  readonly end: number;
  /** What is filled in, in the order of the source, and under which name it stands in the key. */
  readonly filled: readonly { readonly name: string; readonly start: number; readonly end: number }[];
}

/** The outermost words that a file marks, in order; those inside what is filled in are found by looking there again. */
export function saidIn(source: string, tsx = false): Said[] {
  const file = sourceFile(source, tsx);
  const found: Said[] = [];
  const visit = (node: ts.Node) => {
    if (ts.isTaggedTemplateExpression(node) && ts.isIdentifier(node.tag) && node.tag.text === 'say')
      found.push(saidBy(node, file));
    else ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

function saidBy(node: ts.TaggedTemplateExpression, file: ts.SourceFile): Said {
  const { template } = node;
  const place = { start: node.getStart(file), end: node.end };
  if (ts.isNoSubstitutionTemplateLiteral(template)) return { ...place, key: template.text, filled: [] };
  const names = new Map<string, string>();
  const filled = template.templateSpans.map(({ expression }, i) => {
    const name = nameFor(nameOf(expression) ?? String(i + 1), expression.getText(file), names);
    return { name, start: expression.getStart(file), end: expression.end };
  });
  const key = template.templateSpans.reduce(
    (text, { literal }, i) => `${text}{${filled[i].name}}${literal.text}`,
    template.head.text,
  );
  return { ...place, key, filled };
}

/** What a translator would call it: `count` for `count`, `title` for `measure.title`, `footName` for `footName(foot)`. */
function nameOf(expression: ts.Expression): string | undefined {
  if (ts.isIdentifier(expression)) return expression.text;
  if (ts.isPropertyAccessExpression(expression)) return expression.name.text;
  if (ts.isCallExpression(expression) || ts.isNonNullExpression(expression)) return nameOf(expression.expression);
  return undefined;
}

/** The same name only for the same thing. */
function nameFor(wanted: string, text: string, names: Map<string, string>): string {
  for (let number = 1; ; number++) {
    const name = number === 1 ? wanted : `${wanted}${number}`;
    const other = names.get(name);
    if (other === undefined || other === text) {
      names.set(name, text);
      return name;
    }
  }
}
