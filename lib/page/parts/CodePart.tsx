import type { Code } from '../blocks.ts';

export function CodePart({ block }: { block: Code }) {
  return (
    <figure class="code">
      <figcaption>{block.title}</figcaption>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: long lines must be scrolled by keyboard too */}
      <pre tabIndex={0}>
        <code>{block.text}</code>
      </pre>
    </figure>
  );
}
