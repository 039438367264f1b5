export type Span =
  | { readonly kind: 'text' | 'strong'; readonly text: string }
  | { readonly kind: 'link'; readonly text: string; readonly address: string };

const MARKS = /\\([\\*[\]])|\*\*((?:\\.|[^*\\])+)\*\*|\[((?:\\.|[^\]\\])+)\]\(([^()\s]+)\)/g;
const ADDRESS = /^(https:\/\/|mailto:|#|\.{1,2}\/|[\w-]+\.html(#|$))/;

const plain = (text: string) => text.replace(/\\([\\*[\]])/g, '$1');

/** One paragraph as spans. An address that is neither https, mailto nor a place in this notebook stays text. */
function spans(paragraph: string): Span[] {
  const found: Span[] = [];
  const push = (span: Span) => {
    const last = found.at(-1);
    if (span.kind === 'text' && last?.kind === 'text')
      found[found.length - 1] = { ...last, text: last.text + span.text };
    else if (span.text !== '') found.push(span);
  };
  let end = 0;
  for (const match of paragraph.matchAll(MARKS)) {
    const [whole, escaped, strong, words, address] = match;
    push({ kind: 'text', text: paragraph.slice(end, match.index) });
    end = match.index + whole.length;
    if (escaped !== undefined) push({ kind: 'text', text: escaped });
    else if (strong !== undefined) push({ kind: 'strong', text: plain(strong) });
    else if (ADDRESS.test(address)) push({ kind: 'link', text: plain(words), address });
    else push({ kind: 'text', text: whole });
  }
  push({ kind: 'text', text: paragraph.slice(end) });
  return found;
}

/**
 * The paragraphs of a text, each as spans: `**strong**`, `[words](address)` and a backslash before `* [ ] \` are
 * understood, nothing else; markup stays text.
 * @param text paragraphs parted by a blank line
 * @returns one list of spans a paragraph; none for an empty text
 * @example readProse('a **b**') // [[{ kind: 'text', text: 'a ' }, { kind: 'strong', text: 'b' }]]
 */
export function readProse(text: string): Span[][] {
  return text
    .split(/\n\s*\n/)
    .map((paragraph) => paragraph.replace(/\s+/g, ' ').trim())
    .filter((paragraph) => paragraph !== '')
    .map(spans);
}

/**
 * A user's own text made safe to stand inside prose: it comes out of `readProse` as typed, in one paragraph.
 * @example asProse('**Star** [x]') // '\\*\\*Star\\*\\* \\[x\\]'
 */
export function asProse(text: string): string {
  return text.replace(/\s+/g, ' ').replace(/[\\*[\]]/g, '\\$&');
}
