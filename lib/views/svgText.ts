import type { SvgNode } from './svg.ts';

/**
 * A drawing as SVG text, for a file or a page written ahead. Every text and every attribute is escaped.
 * @param node  any drawing; its root gets the SVG namespace when it is an `svg`
 * @returns markup without declaration or `style`; numbers rounded to a hundredth; empty where a number is not finite
 * @throws TypeError for a tag or attribute name that is no plain name, or for a `style` or an event attribute
 * @example svgText(svg('text', { x: 1.239 }, 'a < b')) // '<text x="1.24">a &lt; b</text>'
 */
export function svgText(node: SvgNode): string {
  const attributes = node.tag === 'svg' ? { xmlns: 'http://www.w3.org/2000/svg', ...node.attributes } : node.attributes;
  let text = `<${plainName(node.tag)}`;
  for (const [name, value] of Object.entries(attributes)) {
    if (name === 'style' || /^on/i.test(name))
      throw new TypeError(`A drawing has the attribute ${name}; use presentation attributes and a class`);
    text += ` ${plainName(name)}="${escaped(typeof value === 'number' ? hundredths(value) : value)}"`;
  }
  if (node.children.length === 0) return `${text}/>`;
  const inside = node.children.map((child) => (typeof child === 'string' ? escaped(child) : svgText(child)));
  return `${text}>${inside.join('')}</${node.tag}>`;
}

/** A number as it is written in a drawing: rounded to a hundredth, `-0` as `0`. */
export function hundredths(value: number): string {
  return Number.isFinite(value) ? String(Math.round(value * 100) / 100 + 0) : '';
}

function plainName(name: string): string {
  if (!/^[A-Za-z][\w:.-]*$/.test(name)) throw new TypeError(`A drawing has the name ${JSON.stringify(name)}`);
  return name;
}

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

// Control characters are no XML; a file holding one would not open.
function escaped(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
  return text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f]/g, '').replace(/[&<>"]/g, (sign) => entities[sign]);
}
