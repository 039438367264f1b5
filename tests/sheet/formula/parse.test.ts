import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from '../../../lib/sheet/formula/parse.ts';
import { print, shortened } from '../../../lib/sheet/formula/print.ts';
import { FormulaError, type Node } from '../../../lib/sheet/formula/syntax.ts';

function error(text: string): FormulaError {
  try {
    parse(text);
  } catch (caught) {
    if (caught instanceof FormulaError) return caught;
    throw caught;
  }
  throw new Error(`${text.slice(0, 60)} was taken`);
}

/** The tree without its places. */
function bare(node: Node): unknown {
  return JSON.parse(JSON.stringify(node, (key, value) => (key === 'start' || key === 'end' ? undefined : value)));
}

describe('what a formula can hold', () => {
  test('numbers, texts, columns, operators, choices and calls, with their places', () => {
    expect(parse('frog_width_mm / 2')).toEqual({
      kind: 'binary',
      operator: '/',
      left: { kind: 'column', name: 'frog_width_mm', start: 0, end: 13 },
      right: { kind: 'number', value: 2, start: 16, end: 17 },
      start: 0,
      end: 17,
    });
    expect(parse("limb == 'LF' ? -x : mean(x, limb)").kind).toBe('conditional');
    expect(parse('!(a && b || c)')).toMatchObject({ kind: 'unary', operator: '!', operand: { operator: '||' } });
    expect(parse('1.5e-3')).toMatchObject({ kind: 'number', value: 0.0015 });
    expect(parse('hufbreite_mm + länge')).toMatchObject({ right: { kind: 'column', name: 'länge' } });
  });

  test('any column by its name in quotes', () => {
    expect(parse('column("toe length") + column(\'a.b\')')).toMatchObject({
      left: { kind: 'column', name: 'toe length', start: 0, end: 20 },
      right: { kind: 'column', name: 'a.b' },
    });
    expect(parse('column("__proto__")')).toMatchObject({ kind: 'column', name: '__proto__' });
  });

  test('what binds tighter is deeper', () => {
    expect(parse('a + b * c')).toMatchObject({ operator: '+', right: { operator: '*' } });
    expect(parse('a - b - c')).toMatchObject({ left: { operator: '-' }, right: { name: 'c' } });
    expect(parse('a ** b ** c')).toMatchObject({ left: { name: 'a' }, right: { operator: '**' } });
    expect(parse('a ? b : c ? d : e')).toMatchObject({ otherwise: { kind: 'conditional' } });
  });

  test('=== is == and a plus before a value is nothing', () => {
    expect(bare(parse('a === b'))).toEqual(bare(parse('a == b')));
    expect(bare(parse('a !== b'))).toEqual(bare(parse('a != b')));
    expect(bare(parse('+a'))).toEqual(bare(parse('a')));
  });

  test('names of everyday objects are just names', () => {
    expect(parse('constructor + toString')).toMatchObject({ left: { kind: 'column', name: 'constructor' } });
    expect(parse('hasOwnProperty(x)')).toMatchObject({ kind: 'call', name: 'hasOwnProperty' });
  });
});

describe('what it refuses, with the place and the way out', () => {
  test.each([
    ['a.b', '“.” (characters 1 to 2): a column stands for itself, and a name with a dot is written column("the.name")'],
    ['x.constructor.constructor("return 1")()', '“.” (characters 1 to 2)'],
    ['a["b"]', '“[” (characters 1 to 2): a formula gives one value a row'],
    ['a?.b', 'a name with a dot'],
    ['x = 1', '“=” (characters 2 to 3): two values are compared by =='],
    ['x += 1', 'two values are compared by =='],
    ['x++', '“++” (characters 1 to 3): write x + 1'],
    ['a--b', '“--” (characters 1 to 3): write x + 1, or put a blank between two signs'],
    ['`a`', "“`” (characters 0 to 1): text stands in '…'"],
    ['f`a`', "text stands in '…'"],
    ['limb == “LF”', "text stands in '…'"],
    ["'LF", 'closed by the quote that opens it'],
    ['x => x', '“=>” (characters 2 to 4): only the functions of the list can be called'],
    ['function () {}', 'only the functions of the list can be called'],
    ['new Date()', 'only the functions of the list can be called'],
    ['class {}', 'this word is kept for other uses, and a column of that name is written column("class")'],
    ['import("x")', 'column("import")'],
    ['this', 'column("this")'],
    ['[1, 2]', '“[” (characters 0 to 1): a formula gives one value a row'],
    ['({ a: 1 })', 'a formula gives one value a row'],
    ['f(...a)', '“.” (characters 2 to 3)'],
    ['1,5 + x', '“,” (characters 1 to 2): decimals take a point, as in 1.5'],
    ['null', '“null” (characters 0 to 4): write missing()'],
    ['true', 'a yes/no column stands for itself'],
    ['1n', '“1n” (characters 0 to 2): numbers are written as in 10, 0.5 or 1.5e3'],
    ['010', 'numbers are written as in 10'],
    ['1_000', 'numbers are written as in 10'],
    ['0x10', 'numbers are written as in 10'],
    ['1..5', 'numbers are written as in 10'],
    ['2nd + 1', 'column("2nd")'],
    ['a ?? b', 'write coalesce(x, y)'],
    ['a & b', '“&” (characters 2 to 3): write &&'],
    ['a and b', '“and” (characters 2 to 5): write &&'],
    ['a or b', 'write ||'],
    ['a <> b', 'write !='],
    ['a ≤ b', 'write <='],
    ['a ^ 2', 'write **'],
    ['a × b', 'write *'],
    ['a − b', 'write -'],
    ['-a ** 2', '“**” (characters 3 to 5): after a sign it is unclear what to raise; write (-x) ** 2 or -(x ** 2)'],
    ['2 ** -a ** 2', '“**” (characters 8 to 10): after a sign'],
    ["'\\x41'", 'in a text \\ stands before a quote or another \\'],
    ['typeof a', '“typeof”'],
    ['a in b', '“in”'],
    ['a instanceof b', '“instanceof”'],
    ['a // b', '“//” (characters 2 to 4): a formula has no comments, and a division takes one /'],
    ['a /* b */ + c', '“/*” (characters 2 to 4): a formula has no comments'],
  ])('%s', (text, words) => {
    const { message, start, end } = error(text);
    expect(message).toContain(words);
    expect(start).toBeGreaterThanOrEqual(0);
    expect(end).toBeLessThanOrEqual(text.length);
    expect(message.endsWith('.')).toBe(false);
  });

  test('what can’t be read at all, saying where', () => {
    expect(error('a +')).toMatchObject({ start: 3, end: 3 });
    expect(error('a +').message).toContain('it ends too early');
    expect(error('a b')).toMatchObject({ start: 2, end: 3 });
    expect(error('a b').message).toContain("can't be read at character 2: “b” can't stand here");
    expect(error('a toe')).toMatchObject({ start: 2, end: 5 });
    expect(error('a toe').message).toContain("“toe” can't stand here");
    expect(error('(a)) + b')).toMatchObject({ start: 3, end: 4 });
    expect(error(`)${'('.repeat(300)}`).message).toContain("“)” can't stand here");
    for (const text of [
      'a << 2',
      '/a/',
      'f?.(1)',
      '(0, eval)("1")',
      '(f)(1)',
      'f(1)(2)',
      '2(a)',
      'a; b',
      'f(a,)',
      '(a',
      'a ? b',
      '#',
      '~a',
      'not a',
    ])
      expect(() => parse(text)).toThrow(FormulaError);
    expect(error('(f)(1)')).toMatchObject({ start: 3, end: 4 });
    expect(error('f(a,)').message).toContain("“)” can't stand here");
    expect(error('a ? b').message).toContain('it ends too early');
    expect(error('delete a').start).toBe(0);
  });

  test('nothing at all', () => {
    expect(error('').message).toContain('The formula is empty');
    expect(error(' \n').message).toContain('The formula is empty');
  });

  test('numbers too large', () => {
    expect(error('1e999').message).toContain('“1e999” is larger than any number');
  });

  test('column() without exactly one name in quotes', () => {
    for (const text of ['column()', 'column(a)', 'column(5)', 'column("a", "b")', 'column("a" + "b")'])
      expect(error(text).message).toContain('column() takes one name in quotes');
  });
});

describe('hostile formulas', () => {
  const within = 2000;
  test.each([
    ['brackets', `${'('.repeat(1900)}a${')'.repeat(1900)}`],
    ['open brackets', '('.repeat(3999)],
    ['signs', `${'!'.repeat(3900)}a`],
    ['spaced signs', `${'- '.repeat(1900)}a`],
    ['calls', `${'f('.repeat(1300)}a${')'.repeat(1300)}`],
    ['choices', `${'a?b:'.repeat(900)}c`],
    ['a chain of sums', `${'a+'.repeat(1900)}a`],
    ['a chain of powers', `${'a**'.repeat(1300)}a`],
    ['members', `a${'.b'.repeat(1900)}`],
    ['lists', `${'['.repeat(1900)}`],
    ['functions', `${'x=>'.repeat(1300)}x`],
    ['texts', `"${'a'.repeat(10_000)}"`],
    ['10,000 characters', `${'toe_length_mm + '.repeat(625)}1`],
    ['a million characters', 'a'.repeat(1_000_000)],
  ])('%s end in an error and not in a hang', (_, text) => {
    const start = performance.now();
    const { message } = error(text);
    expect(performance.now() - start).toBeLessThan(within);
    expect(message.length).toBeLessThan(400);
  });

  test('long words are cut where an error quotes them', () => {
    expect(error(`a ${'b'.repeat(40)}`).message).toContain(`“${'b'.repeat(40)}”`);
    expect(error(`a ${'b'.repeat(41)}`).message).toContain(`“${'b'.repeat(39)}…”`);
  });

  test('4,000 characters are fine, and one more is not', () => {
    expect(parse('a'.padEnd(4000))).toMatchObject({ kind: 'column', name: 'a' });
    expect(error('a'.padEnd(4001)).message).toContain('at most 4000 characters and this one has 4001');
  });

  test('brackets that are not closed are too many from the 200th on', () => {
    expect(error('('.repeat(199)).message).toContain('it ends too early');
    expect(error('('.repeat(200)).message).toContain('more than 200 deep');
  });

  test('200 deep is fine', () => {
    expect(parse(`${'('.repeat(199)}a${')'.repeat(199)}`)).toMatchObject({ kind: 'column', name: 'a' });
    expect(error(`${'('.repeat(200)}a${')'.repeat(200)}`).message).toContain('more than 200 deep');
    expect(parse(`${'a + '.repeat(198)}a`).kind).toBe('binary');
  });

  test('any text gives a tree or a FormulaError', () => {
    const pieces = fc.constantFrom(
      ...[
        'a',
        '1',
        '.5',
        '(',
        ')',
        '+',
        '-',
        '*',
        '/',
        '**',
        '%',
        '<',
        '==',
        '&&',
        '?',
        ':',
        ',',
        "'",
        '"',
        '`',
        '\\',
        '.',
      ],
      ...[
        '[',
        ']',
        '{',
        '}',
        '=>',
        '=',
        ';',
        '//',
        '/*',
        '${',
        '#',
        '@',
        'new ',
        'this',
        'await ',
        '\n',
        '\u2028',
        '__proto__',
      ],
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          fc.array(pieces, { maxLength: 12 }).map((all) => all.join('')),
        ),
        (text) => {
          try {
            parse(text);
          } catch (caught) {
            expect(caught).toBeInstanceOf(FormulaError);
            const { start, end } = caught as FormulaError;
            expect(start).toBeGreaterThanOrEqual(0);
            expect(end).toBeGreaterThanOrEqual(start);
            expect(end).toBeLessThanOrEqual(text.length);
          }
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe('printing a formula', () => {
  const place = { start: 0, end: 0 };
  const name = fc.oneof(
    fc.constantFrom('a', 'toe_angle_deg', 'class', 'a b', 'a"b', '', 'längs', '2nd', 'undefined', 'let', '__proto__'),
    fc.string(),
  );
  const { node } = fc.letrec<{ node: Node }>((tie) => ({
    node: fc.oneof(
      { depthSize: 'medium', withCrossShrink: true },
      name.map((name): Node => ({ kind: 'column', name, ...place })),
      fc
        .double({ min: 0, noNaN: true, noDefaultInfinity: true })
        .map((value): Node => ({ kind: 'number', value: Object.is(value, -0) ? 0 : value, ...place })),
      fc.string().map((value): Node => ({ kind: 'text', value, ...place })),
      fc
        .record({ operator: fc.constantFrom('-' as const, '!' as const), operand: tie('node') })
        .map((parts): Node => ({ kind: 'unary', ...parts, ...place })),
      fc
        .record({
          operator: fc.constantFrom(
            ...(['+', '-', '*', '/', '%', '**', '<', '<=', '>', '>=', '==', '!=', '&&', '||'] as const),
          ),
          left: tie('node'),
          right: tie('node'),
        })
        .map((parts): Node => ({ kind: 'binary', ...parts, ...place })),
      fc
        .tuple(tie('node'), tie('node'), tie('node'))
        .map(
          ([test, then, otherwise]): Node =>
            Object.assign({ kind: 'conditional' as const, test, otherwise, ...place }, { then }),
        ),
      fc
        .tuple(fc.constantFrom('mean', 'f', 'toString'), fc.array(tie('node'), { maxLength: 3 }))
        .map(([name, args]): Node => ({ kind: 'call', name, args, ...place })),
    ),
  }));

  test('gives a text that reads back as the same tree', () => {
    fc.assert(
      fc.property(node, (tree) => {
        fc.pre(print(tree).length < 4000);
        expect(bare(parse(print(tree)))).toEqual(bare(tree));
      }),
      { numRuns: 500 },
    );
  });

  test('brackets a number below 0 before a power, which could not be read without', () => {
    const number = (value: number): Node => ({ kind: 'number', value, ...place });
    const square = (value: number): Node => ({
      kind: 'binary',
      operator: '**',
      left: number(value),
      right: number(2),
      ...place,
    });
    expect(print(square(-2))).toBe('(-2) ** 2');
    expect(print(square(0))).toBe('0 ** 2');
    expect(print(number(-2))).toBe('-2');
  });

  test('is cut for an error after 80 letters', () => {
    expect(shortened('a'.repeat(80))).toBe('a'.repeat(80));
    expect(shortened('a'.repeat(81))).toBe(`${'a'.repeat(79)}…`);
  });

  test('needs no bracket that isn’t needed', () => {
    for (const text of [
      'a + b * c',
      '(a + b) * c',
      'a - (b - c)',
      '-(a + b)',
      '!a && b',
      'a ** -b',
      '(-a) ** b',
      'f(a ? b : c)',
    ])
      expect(print(parse(text))).toBe(text);
  });
});
