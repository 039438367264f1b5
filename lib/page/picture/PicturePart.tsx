import { useContext, useEffect, useId, useRef, useState } from 'preact/hooks';
import type { PictureBlock } from '../blocks.ts';
import { FailureLine, useFailure } from '../parts/FailureLine.tsx';
import { SurroundingsContext } from '../surroundings.ts';
import type { PictureDesk } from './PictureDesk.tsx';
import type { PictureWork } from './work.ts';

/** A picture to measure from. All that works on it is fetched when it comes near the screen; in a file nothing can be placed. */
export function PicturePart({ block }: { block: PictureBlock }) {
  const { still } = useContext(SurroundingsContext);
  const id = useId();
  return (
    <section class="picture-part" aria-labelledby={id}>
      <h2 id={id}>{block.title}</h2>
      {still ? <p class="note">{block.inAFile}</p> : <Fetched block={block} />}
    </section>
  );
}

function Fetched({ block }: { block: PictureBlock }) {
  const [fetched, setFetched] = useState<{ Desk: typeof PictureDesk; work: PictureWork } | undefined>();
  const [failure, attempt] = useFailure();
  const place = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    const fetchAll = async () => {
      const [{ PictureDesk: Desk }, work] = await Promise.all([import('./PictureDesk.tsx'), block.work()]);
      setFetched({ Desk, work });
    };
    const nearness = new IntersectionObserver(
      (entries) => {
        if (!entries.some((entry) => entry.isIntersecting)) return;
        nearness.disconnect();
        attempt(fetchAll);
      },
      { rootMargin: '300px' },
    );
    nearness.observe(place.current!);
    return () => nearness.disconnect();
  }, []);
  if (fetched) return <fetched.Desk block={block} work={fetched.work} />;
  return failure ? (
    <FailureLine failure={failure} />
  ) : (
    <p class="note" ref={place}>
      Getting ready …
    </p>
  );
}
