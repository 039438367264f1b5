import { expect, test } from 'vitest';
import { filesIn, sources } from './sources.ts';

const wrong: readonly [string, RegExp][] = [
  ['eval', /\beval\s*\(/],
  ['Function', /\bnew\s+Function\b|(?<![\w.])Function\s*\(/],
  ['a timer on text', /\bset(Timeout|Interval)\s*\(\s*['"`]/],
];

test.each(wrong)('lib and notebooks never run generated code: %s', (_, pattern) => {
  expect(
    sources('lib', 'notebooks')
      .filter(({ text }) => pattern.test(text))
      .map(({ path }) => path),
  ).toEqual([]);
});

test('the pattern for each way of running generated code finds it', () => {
  const samples = ['eval ("1")', 'new Function("return 1")', 'setTimeout("x()", 1)'];
  expect(wrong.map(([, pattern], index) => pattern.test(samples[index]))).toEqual([true, true, true]);
});

test('no script or style stands inside a document of the notebook', () => {
  expect(filesIn('notebooks', /\.html$/)).toEqual([]);
  const template = sources('notebooks').find(({ path }) => path === 'notebooks/shell/document.ts')!;
  expect(template.text).not.toMatch(/<style|<script(?![^>]*\bsrc=)|\son\w+="/);
});
