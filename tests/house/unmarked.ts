import ts from 'typescript';
import { sourceFile } from '../../scripts/words/sourceFile.ts';

/** Calls and constructions whose texts are for programmers, styles or the browser. */
const notShown = /^(TypeError|RangeError|matchMedia|DOMException|test|split|querySelector|querySelectorAll|has|warn)$/;
/** Attributes and properties whose texts nobody reads as words. */
const notWords =
  /^(class|className|d|viewBox|style|transform|accept|content|headings|sql|formula|value|kind|layout|id|key)$/;

/** Words that programs know: values of columns, options and kept settings, each shown by a wording of its own or as data. */
const codes = new Set([
  'after to before',
  'before to before',
  'after to after',
  'between to between',
  'not a number',
  'not in the model',
  'common practice, no source',
  'side by side',
  'small side by side',
  'sheet of paper',
  'input, select, textarea',
  'asked to stay',
  'order of dates',
  'evenhoof matched headings',
  'evenhoof left behind ',
  // What a cell takes, in an error for programmers.
  'a finite number',
  'a date as whole days since 1970-01-01',
  'a value of type …',
]);

/**
 * Words of a source text that a reader may see and that are not marked by `say`: every text between tags, and every
 * string of at least three words that stands where a reader could meet it.
 */
export function unmarked(source: string, tsx: boolean): string[] {
  const file = sourceFile(source, tsx);
  const found: string[] = [];
  const visit = (node: ts.Node) => {
    if (ts.isImportDeclaration(node) || ts.isTypeNode(node) || isForNobody(node)) return;
    if (ts.isTaggedTemplateExpression(node)) {
      if (ts.isTemplateExpression(node.template))
        for (const span of node.template.templateSpans) visit(span.expression);
      return;
    }
    if (ts.isJsxText(node) && /\p{L}{2}/u.test(node.text)) found.push(node.text.trim());
    if (ts.isStringLiteralLike(node) && isSentence(node.text)) found.push(node.text);
    if (ts.isTemplateExpression(node)) {
      const text = [node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)].join('…');
      if (isSentence(text)) found.push(text);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

/** At least three words in a row, and none of the signs of code. */
function isSentence(text: string): boolean {
  return !codes.has(text) && /\p{L}{2,}[,:]? \p{Ll}+[,:]? \p{Ll}{2,}/u.test(text) && !/[<{;=]|var\(|\dpx/.test(text);
}

function isForNobody(node: ts.Node): boolean {
  if (ts.isCallExpression(node) || ts.isNewExpression(node)) {
    const { expression } = node;
    return notShown.test(ts.isPropertyAccessExpression(expression) ? expression.name.text : expression.getText());
  }
  if (ts.isPropertyAssignment(node) || ts.isJsxAttribute(node)) return notWords.test(node.name.getText());
  return false;
}
