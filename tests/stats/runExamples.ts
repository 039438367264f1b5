import { readFileSync } from 'node:fs';
import { runInNewContext } from 'node:vm';
import { expect, it } from 'vitest';
import { filesIn, root } from '../house/sources.ts';

/** An example of a docstring: an expression, and what the comment behind it says it gives. */
interface Example {
  readonly file: string;
  readonly expression: string;
  readonly result: string;
}

/** The examples in the docstrings of a folder, `@example expression // result`. */
function examplesIn(folder: string): Example[] {
  return filesIn(folder, /\.ts$/).flatMap((file) => {
    const text = readFileSync(`${root}/${file}`, 'utf8').replaceAll(/\n \*\s+/g, ' ');
    return [...text.matchAll(/@example (.+?) \/\/ (.+?)(?= @|\s*\*\/|$)/gm)].map(([, expression, result]) => ({
      file,
      expression,
      result: result.trim(),
    }));
  });
}

/** `0.0337…` stands for any number that begins so; what follows a semicolon is a remark. */
function agrees(found: unknown, written: string): void {
  const [stated] = written.split(';');
  const expected = runInNewContext(`(${stated.replace('…', '')})`);
  const digits = stated.match(/\.(\d+)…/)?.[1].length;
  if (typeof found !== 'number') expect(rounded(found)).toBe(rounded(expected));
  else if (digits !== undefined) expect(Math.trunc(found * 10 ** digits)).toBe(Math.round(expected * 10 ** digits));
  else expect(found).toBeCloseTo(expected, 12);
}

function rounded(value: unknown): string {
  return JSON.stringify(value, (_, part) => {
    if (ArrayBuffer.isView(part)) return Array.from(part as Float64Array);
    return typeof part === 'number' ? Number(part.toFixed(12)) : part;
  });
}

/**
 * One test for each example of a folder: the docstring's expression gives what the docstring says.
 * @param names what the examples may use besides the exports of their own file
 */
export function runExamples(folder: string, names: Record<string, unknown>): void {
  const examples = examplesIn(folder);
  it(`${folder} has examples`, () => expect(examples.length).toBeGreaterThan(20));
  it.each(examples)('$file: $expression // $result', async ({ file, expression, result }) => {
    const own = await import(`${root}/${file}`);
    agrees(runInNewContext(expression, { Float64Array, ...names, ...own }), result);
  });
}
