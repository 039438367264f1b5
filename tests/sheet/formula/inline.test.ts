import { describe, expect, it } from 'vitest';
import { inline } from '../../../lib/sheet/formula/inline.ts';
import { parse } from '../../../lib/sheet/formula/parse.ts';
import { print } from '../../../lib/sheet/formula/print.ts';

const formulas = new Map([
  ['gap', 'a - b'],
  ['share', 'gap / sum(gap, side)'],
  ['side', 'limb == "LF" ? "left" : "right"'],
  ['__proto__', 'a * 2'],
]);

function formulaOf(name: string) {
  const text = formulas.get(name);
  return text === undefined ? undefined : parse(text);
}

describe('inline', () => {
  it.each([
    ['gap * 2', '(a - b) * 2'],
    ['opposite(gap) + a', 'opposite(a - b) + a'],
    ['side == "left" ? -gap : !shod', '(limb == "LF" ? "left" : "right") == "left" ? -(a - b) : !shod'],
    ['column("__proto__") + constructor', 'a * 2 + constructor'],
    ['a + b', 'a + b'],
  ])('replaces computed columns in %s by their formulas', (formula, whole) => {
    expect(print(inline(parse(formula), formulaOf))).toBe(whole);
  });

  it('leaves the keys of summaries, because groups go by the column', () => {
    expect(print(inline(parse('mean(share, side)'), formulaOf))).toBe('mean((a - b) / sum(a - b, side), side)');
    expect(print(inline(parse('quantile(gap, 0.5, gap)'), formulaOf))).toBe('quantile(a - b, 0.5, gap)');
  });

  it('uses one object for every use of a column, and the node itself where nothing is replaced', () => {
    const node = inline(parse('gap + gap'), formulaOf);
    expect(node).toMatchObject({ kind: 'binary' });
    if (node.kind === 'binary') expect(node.left).toBe(node.right);
    const plain = parse('sqrt(a) + b');
    expect(inline(plain, formulaOf)).toBe(plain);
  });
});
