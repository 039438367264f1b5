import ts from 'typescript';
import { sourceFile } from './sourceFile.ts';

/** Words marked by `say` in a source text. */
export interface Said {
  /** The English with `{name}` for what is filled in; of words that change with a number, the English for several. */
  readonly key: string;
  readonly start: number;
  readonly end: number;
  /** What is filled in, in the order of the source, and under which name it stands in the key. */
  readonly filled: readonly Filled[];
  /** Of words that change with a number, as `counted` says them: the English for one. */
  readonly one?: string;
}

export interface Filled {
  readonly name: string;
  readonly start: number;
  readonly end: number;
  /** Whether it is the number that the words change with. */
  readonly counts: boolean;
}

/** The outermost words that a file marks, in order; those inside what is filled in are found by looking there again. */
export function saidIn(source: string, tsx = false): Said[] {
  const file = sourceFile(source, tsx);
  const found: Said[] = [];
  const visit = (node: ts.Node) => {
    if (isSaid(node)) found.push(saidBy(node, file));
    else if (ts.isCallExpression(node) && isNamed(node.expression, 'counted')) {
      visit(node.arguments[0]);
      found.push(countedBy(node, file));
    } else ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

const isNamed = (node: ts.Node, name: string) => ts.isIdentifier(node) && node.text === name;

const isSaid = (node: ts.Node): node is ts.TaggedTemplateExpression =>
  ts.isTaggedTemplateExpression(node) && isNamed(node.tag, 'say');

function saidBy(
  node: ts.TaggedTemplateExpression,
  file: ts.SourceFile,
  names = new Map<string, string>(),
  count?: string,
): Said {
  const { template } = node;
  const place = { start: node.getStart(file), end: node.end };
  if (ts.isNoSubstitutionTemplateLiteral(template)) return { ...place, key: template.text, filled: [] };
  const filled = template.templateSpans.map(({ expression }, i) => {
    const text = expression.getText(file);
    const name = nameFor(nameOf(expression) ?? String(i + 1), text, names);
    return {
      name,
      start: expression.getStart(file),
      end: expression.end,
      counts: text === count || writes(text, count),
    };
  });
  const key = template.templateSpans.reduce(
    (text, { literal }, i) => `${text}{${filled[i].name}}${literal.text}`,
    template.head.text,
  );
  return { ...place, key, filled };
}

/** Whether an expression is a number written by a function such as `wholeNumber`. */
const writes = (text: string, count = '') => text.includes(`(${count}`);

/** `counted(count, { one: say`…`, other: say`…` })`: both forms as one wording, standing where its object stands. */
function countedBy({ arguments: [count, forms] }: ts.CallExpression, file: ts.SourceFile): Said {
  const names = new Map<string, string>();
  const form = (name: string) => {
    const property =
      ts.isObjectLiteralExpression(forms) && forms.properties.find((own) => own.name?.getText() === name);
    if (property && ts.isPropertyAssignment(property) && isSaid(property.initializer))
      return saidBy(property.initializer, file, names, count.getText(file));
    throw new Error(`counted needs one and other, each marked by say, in ${forms?.getText(file) ?? 'nothing'}`);
  };
  const { key, filled } = form('other');
  const known = names.size;
  const one = form('one').key;
  if (names.size > known) throw new Error(`What “${one}” fills in must be filled in for several too: “${key}”`);
  return { key, one, filled, start: forms.getStart(file), end: forms.end };
}

/**
 * What a translator would call it: `count` for `count`, `title` for `measure.title`, `feet` for `feet.length` and
 * `wholeNumber(feet)`, `footName` for `footName(foot)`.
 */
function nameOf(expression: ts.Expression): string | undefined {
  if (ts.isIdentifier(expression)) return expression.text;
  if (ts.isPropertyAccessExpression(expression))
    return /^(length|size)$/.test(expression.name.text) ? nameOf(expression.expression) : expression.name.text;
  if (ts.isCallExpression(expression))
    return nameOf(isNamed(expression.expression, 'wholeNumber') ? expression.arguments[0] : expression.expression);
  if (ts.isNonNullExpression(expression)) return nameOf(expression.expression);
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
