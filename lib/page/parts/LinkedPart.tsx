import { useContext, useEffect, useRef } from 'preact/hooks';
import type { LinkedCharts } from '../blocks.ts';
import { SurroundingsContext } from '../surroundings.ts';
import { FailureLine, useFailure } from './FailureLine.tsx';

/** Charts that select each other. Their engine is fetched when the first of them comes near the screen. */
export function LinkedPart({ block }: { block: LinkedCharts }) {
  const { still, linked } = useContext(SurroundingsContext);
  const drawn = linked?.get(block);
  return (
    <figure class="chart linked">
      <p class="figure-title">{block.title}</p>
      <p class="summary">{block.summary}</p>
      {!still && <LivePicture block={block} />}
      {drawn && <div class="picture" role="img" aria-label={block.title} dangerouslySetInnerHTML={{ __html: drawn }} />}
      {block.caption && <figcaption>{block.caption}</figcaption>}
    </figure>
  );
}

function LivePicture({ block }: { block: LinkedCharts }) {
  const place = useRef<HTMLDivElement>(null);
  const [failure, attempt] = useFailure();
  useEffect(() => {
    const element = place.current!;
    let finish = () => {};
    let gone = false;
    const draw = async () => {
      const { drawLinked } = await import('../render/vega.ts');
      if (gone) return;
      finish = await drawLinked(element, block);
      if (gone) finish();
    };
    const nearness = new IntersectionObserver(
      (entries) => {
        if (!entries.some((entry) => entry.isIntersecting)) return;
        nearness.disconnect();
        attempt(draw);
      },
      { rootMargin: '300px' },
    );
    nearness.observe(element);
    return () => {
      gone = true;
      nearness.disconnect();
      finish();
    };
  }, [block]);
  return (
    <>
      <div class="picture" ref={place} />
      <FailureLine failure={failure} />
    </>
  );
}
