import type { Block } from './blocks.ts';

function nameOf(block: Block): string {
  switch (block.kind) {
    case 'control':
    case 'chart':
    case 'linked':
    case 'sheet':
    case 'form':
    case 'code':
    case 'deferred':
    case 'picture':
    case 'keep':
      return block.name;
    case 'finding':
      return block.id;
    case 'download':
      return block.filename;
    case 'heading':
      return block.id ?? block.text;
    default:
      return '';
  }
}

/**
 * A name for each block that stays with it when the page is computed afresh, so that focus and scrolling stay too.
 * @returns unique within the list; a second block of one name gets the next number
 */
export function blockKeys(blocks: readonly Block[]): string[] {
  const seen = new Map<string, number>();
  return blocks.map((block) => {
    const base = `${block.kind} ${nameOf(block)}`;
    const count = (seen.get(base) ?? 0) + 1;
    seen.set(base, count);
    return `${base} ${count}`;
  });
}
