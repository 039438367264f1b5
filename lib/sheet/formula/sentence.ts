import { say } from '../../words/say.ts';
import { symbolOf } from '../display.ts';
import { listed } from '../listed.ts';
import type { Relation } from '../relation.ts';
import { keysOf } from './children.ts';
import { functions } from './functions.ts';
import { operators } from './operators.ts';
import type { Node } from './syntax.ts';

/** How firmly words hang together, and so where a bracket or a comma must part them from what stands around. */
interface Phrase {
  readonly text: string;
  readonly kind: 'name' | 'possessed' | 'phrase' | 'sum' | 'product' | 'quotient' | 'test' | 'and' | 'or' | 'if';
}

/**
 * A formula in plain words, to be read aloud: what binds tighter comes after a comma or stands in brackets.
 * @param node as `parse` gives it; of a resolved tree the conversion factors are read out too
 * @param titleOf what people call a column
 * @param relations of the table; another row's value is introduced by its relation's `words`
 * @example sentence(parse('(a - b) / ((a + b) / 2)'), (name) => name) // 'a minus b, divided by the mean of a and b'
 */
export function sentence(node: Node, titleOf: (name: string) => string, relations: readonly Relation[] = []): string {
  return phraseOf(node).text;

  function phraseOf(part: Node): Phrase {
    switch (part.kind) {
      case 'number':
        return number(part.value);
      case 'text':
        return { text: /^[^\s,()]+$/.test(part.value) ? part.value : `“${part.value}”`, kind: 'name' };
      case 'column':
        return { text: titleOf(part.name), kind: 'name' };
      case 'unary': {
        const operand = phraseOf(part.operand);
        return part.operator === '!'
          ? { text: say`not ${closed(operand)}`, kind: 'test' }
          : { text: say`minus ${closed(operand)}`, kind: 'sum' };
      }
      case 'binary':
        return binary(part);
      case 'conditional': {
        const otherwise = phraseOf(part.otherwise);
        const then = phraseOf(part.then);
        return {
          text: say`if ${phraseOf(part.test).text}, then ${then.kind === 'if' ? bracketed(then) : then.text}, otherwise ${otherwise.text}`,
          kind: 'if',
        };
      }
      case 'call':
        return call(part);
    }
  }

  function binary(part: Node & { kind: 'binary' }): Phrase {
    const terms = meanOf(part);
    if (terms) return { text: say`the mean of ${listed(terms.map((term) => closed(phraseOf(term))))}`, kind: 'phrase' };
    const left = phraseOf(part.left);
    const right = phraseOf(part.right);
    const { words } = operators[part.operator];
    switch (part.operator) {
      case '+':
      case '-':
        return joined(words, left, right, ['sum'], 'sum');
      case '*':
        return joined(words, left, right, ['product'], 'product');
      case '/':
        return joined(words, left, right, ['product'], 'quotient');
      case '**': {
        const power = part.right.kind === 'number' ? powers.get(part.right.value) : undefined;
        if (power !== undefined) return { text: `${closed(left)} ${power}`, kind: 'name' };
        return { text: words(closed(left), closed(right)), kind: 'phrase' };
      }
      case '%':
        return { text: words(closed(left), closed(right)), kind: 'phrase' };
      case '&&':
        return { text: words(within(left, 'and'), within(right, 'and')), kind: 'and' };
      case '||':
        return { text: words(within(left, 'or'), within(right, 'or')), kind: 'or' };
      default: {
        const first = compared(left);
        return { text: words(first.includes(',') ? `${first},` : first, compared(right)), kind: 'test' };
      }
    }
  }

  function call(part: Node & { kind: 'call' }): Phrase {
    const row = functions.get(part.name);
    if (row === undefined) {
      const words = relations.find(({ name }) => name === part.name)?.words ?? say`the ${part.name}`;
      const of = phraseOf(part.args[0]);
      return { text: `${words} ${of.kind === 'name' ? of.text : bracketed(of)}`, kind: 'possessed' };
    }
    if (row.sort === 'summary') {
      const [x, p] = part.args;
      const share = p?.kind === 'number' ? p.value : Number.NaN;
      return { text: row.words(closed(phraseOf(x)), keysOf(part).map(titleOf), share), kind: 'phrase' };
    }
    const inUnit = row.name === 'quantity' || row.name === 'in_unit';
    const args = part.args.map((arg) => (inUnit && arg.kind === 'text' ? symbolOf(arg.value) : closed(phraseOf(arg))));
    const text = row.words(...args).trim();
    if (row.sort === 'plain') return { text, kind: row.gives === 'boolean' ? 'test' : 'phrase' };
    return { text, kind: names.has(row.name) ? 'name' : 'phrase' };
  }
}

const powers: ReadonlyMap<number, string> = new Map([
  [2, say`squared`],
  [3, say`cubed`],
]);

/** Ways of writing that give one thing a name. */
const names: ReadonlySet<string> = new Set(['quantity', 'pi', 'missing', 'column']);

function number(value: number): Phrase {
  if (Number.isNaN(value)) return { text: say`no value`, kind: 'name' };
  const text = String(Number(Math.abs(value).toPrecision(6)));
  return value < 0 ? { text: say`minus ${text}`, kind: 'sum' } : { text, kind: 'name' };
}

/** The terms of `(a + b) / 2`: as many as they are divided by. */
function meanOf({ operator, left, right }: Node & { kind: 'binary' }): readonly Node[] | undefined {
  if (operator !== '/' || right.kind !== 'number') return undefined;
  const terms: Node[] = [];
  let rest = left;
  while (rest.kind === 'binary' && rest.operator === '+') {
    terms.unshift(rest.right);
    rest = rest.left;
  }
  terms.unshift(rest);
  return terms.length > 1 && terms.length === right.value ? terms : undefined;
}

function bracketed({ text }: Phrase): string {
  return `(${text})`;
}

/** Words that may stand inside others: a name, or a bracket. */
function closed(phrase: Phrase): string {
  return phrase.kind === 'name' || phrase.kind === 'possessed' ? phrase.text : bracketed(phrase);
}

/** `left plus right`: a comma ends what comes before, a bracket holds together what comes after. */
function joined(
  words: (left: string, right: string) => string,
  left: Phrase,
  right: Phrase,
  chain: readonly Phrase['kind'][],
  kind: Phrase['kind'],
): Phrase {
  const open = right.text.includes(',');
  const text = words(before(left, chain), right.kind === 'phrase' && !open ? right.text : closed(right));
  // What ends in a phrase or an aside would run on into the next word, so a comma must follow it.
  const runsOn = right.kind === 'phrase' ? !open : right.kind === 'name' && open;
  return { text, kind: runsOn ? 'quotient' : kind };
}

function before(left: Phrase, chain: readonly Phrase['kind'][]): string {
  if (left.kind === 'name') return left.text.includes(',') ? `${left.text},` : left.text;
  if (chain.includes(left.kind) || left.kind === 'possessed') return left.text;
  if (left.kind === 'if' || (left.kind === 'phrase' && left.text.includes(','))) return bracketed(left);
  return `${left.text},`;
}

function within(phrase: Phrase, chain: 'and' | 'or'): string {
  const other = chain === 'and' ? 'or' : 'and';
  return phrase.kind === other || phrase.kind === 'if' ? bracketed(phrase) : phrase.text;
}

function compared(phrase: Phrase): string {
  return ['test', 'and', 'or', 'if'].includes(phrase.kind) ? bracketed(phrase) : phrase.text;
}
