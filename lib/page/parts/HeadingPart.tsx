import type { Heading } from '../blocks.ts';

export function HeadingPart({ block }: { block: Heading }) {
  const Level = `h${block.level}` as const;
  return <Level id={block.id}>{block.text}</Level>;
}
