import { describe, expect, it } from 'vitest';
import { decode } from '../../lib/files/decode.ts';
import { findLayout } from '../../lib/files/layout.ts';

function layout(text: string): string {
  const { bytes, start } = decode(text);
  const { delimiter, mark } = findLayout(bytes, start);
  return `${delimiter === '\t' ? 'tab' : delimiter} ${mark}`;
}

describe('findLayout', () => {
  it.each([
    ['a,b\n1.5,2\n', ', .'],
    ['a;b\n1,5;2\n', '; ,'],
    ['a;b\n1.5;2\n', '; .'],
    ['a\tb\n1,5\t2\n', 'tab ,'],
    ['a\n1\n', ', .'],
    ['a\n1,5\n2,5\n', ', .'],
    ['', ', .'],
  ])('finds delimiter and decimal mark of %j', (text, expected) => {
    expect(layout(text)).toBe(expected);
  });

  it('is not misled by delimiters in quotes or in the decimals', () => {
    expect(layout('"a;b",c\n"1;2",3\n')).toBe(', .');
    expect(layout('x, cm;y, cm\n1,5;2,5\n3,5;4,5\n')).toBe('; ,');
    expect(layout('a,"b;c",d\n1,2,3\n')).toBe(', .');
    expect(layout('horse,note\nBella,"sound; shod"\nMax,"lame; rested"\n')).toBe(', .');
  });

  it('takes the mark that more cells have', () => {
    expect(layout('a;b\n1,5;2,5\n3,5;4.5\n')).toBe('; ,');
    expect(layout('a;b\n1.5;2.5\n3.5;4,5\n')).toBe('; .');
    expect(layout('a;b\n03.04.2026;2,5\n')).toBe('; ,');
  });
});
