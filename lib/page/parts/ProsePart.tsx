import { say } from '../../words/say.ts';
import type { Prose } from '../blocks.ts';
import { readProse, type Span } from '../prose.ts';

export function ProsePart({ block }: { block: Prose }) {
  const paragraphs = readProse(block.text).map((spans, index) => (
    <p key={index}>
      <Spans spans={spans} />
    </p>
  ));
  const tone = block.tone ?? 'plain';
  if (tone === 'plain') return <div class="prose">{paragraphs}</div>;
  if (tone === 'aside') return <div class="prose aside">{paragraphs}</div>;
  return (
    <div class="prose caution" role="note" aria-label={say`Caution`}>
      <p class="caution-word">{say`Take care`}</p>
      {paragraphs}
    </div>
  );
}

export function Spans({ spans }: { spans: readonly Span[] }) {
  return (
    <>
      {spans.map((span, index) => {
        if (span.kind === 'link')
          return (
            <a key={index} href={span.address}>
              {span.text}
            </a>
          );
        return span.kind === 'strong' ? <strong key={index}>{span.text}</strong> : span.text;
      })}
    </>
  );
}
