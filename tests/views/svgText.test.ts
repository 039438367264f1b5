import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { svg } from '../../lib/views/svg.ts';
import { svgText } from '../../lib/views/svgText.ts';

describe('svgText', () => {
  it('writes numbers to a hundredth, zero without a sign and a number that is none as nothing', () => {
    expect(svgText(svg('path', { a: 1.23456, b: -0.001, c: Number.NaN, d: 1e-9, e: 12 }))).toBe(
      '<path a="1.23" b="0" c="" d="0" e="12"/>',
    );
  });

  it('escapes text and attributes, whatever a horse is called', () => {
    const name = '"><script>alert(1)</script>&amp;\u0000__proto__';
    const text = svgText(svg('svg', { class: name }, svg('title', {}, name)));
    expect(text).not.toContain('<script');
    const { document } = parseHTML(`<html><body>${text}</body></html>`);
    expect(document.querySelector('script')).toBeNull();
    expect(document.querySelector('title')?.textContent).toBe(name.replace('\u0000', ''));
    expect(document.querySelector('svg')?.getAttribute('class')).toBe(name.replace('\u0000', ''));
  });

  it('gives the root its namespace, and only the root', () => {
    expect(svgText(svg('svg', {}, svg('g')))).toBe('<svg xmlns="http://www.w3.org/2000/svg"><g/></svg>');
  });

  it('refuses style and event attributes and names that are no names', () => {
    expect(() => svgText(svg('g', { style: 'fill:red' }))).toThrow('A drawing has the attribute style');
    expect(() => svgText(svg('g', { onload: 'x' }))).toThrow('A drawing has the attribute onload');
    expect(() => svgText(svg('g><script'))).toThrow('A drawing has the name');
    expect(() => svgText(svg('g', { 'a b': 1 }))).toThrow('A drawing has the name');
  });
});
