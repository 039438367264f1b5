import type { Block, HerdPage } from '../lib/index.ts';
import { svgText } from '../lib/views/svgText.ts';

const units = { length: 'mm', mass: 'kg' } as const;

/**
 * A page of words and drawings as Markdown: other blocks have no place in a text. Links between pages stay words.
 * @param page  one that reads nothing of its herd
 * @param drawingsAt  the beginning of each drawing's path
 * @returns the text, and the drawings by their path
 */
export function pageAsMarkdown(page: HerdPage, drawingsAt: string): { text: string; drawings: Record<string, string> } {
  const drawings: Record<string, string> = {};
  const blocks = page.blocks({ herd: {} as never, controls: {}, units });
  const told = blocks.flatMap((block) => inMarkdown(block, drawings, drawingsAt));
  return { text: `${[`# ${page.title}`, `*${page.question}*`, ...told].join('\n\n')}\n`, drawings };
}

function inMarkdown(block: Block, drawings: Record<string, string>, at: string): string[] {
  if (block.kind === 'heading') return [`${'#'.repeat(block.level)} ${block.text}`];
  if (block.kind === 'group') return block.blocks.flatMap((each) => inMarkdown(each, drawings, at));
  if (block.kind === 'prose') {
    const words = block.text.replace(/\[([^\]]+)\]\([^)]+\.html\)/g, '“$1”');
    return [block.tone === 'caution' ? words.replace(/^/gm, '> ') : words];
  }
  if (block.kind === 'download') return [`${block.label}:`, `\`\`\`\n${block.contents()}\`\`\``];
  if (block.kind !== 'drawings') throw new TypeError(`A ${block.kind} has no place in a text`);
  return block.items.flatMap(({ title, drawing }) =>
    [drawing].flat().map((one) => {
      const path = `${at}-${Object.keys(drawings).length + 1}.svg`;
      drawings[path] = `${svgText(one)}\n`;
      return `![${title}](${path})`;
    }),
  );
}
