import { useContext, useId, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { say } from '../../words/say.ts';
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

/** How far below the screen is near, in px. */
const MARGIN = 300;

function Fetched({ block }: { block: PictureBlock }) {
  const [fetched, setFetched] = useState<{ Desk: typeof PictureDesk; work: PictureWork } | undefined>();
  const [failure, attempt] = useFailure();
  const [near, setNear] = useState(true);
  const place = useRef<HTMLParagraphElement>(null);
  useLayoutEffect(() => {
    const element = place.current!;
    setNear(element.getBoundingClientRect().top < innerHeight + MARGIN);
    const nearness = new IntersectionObserver(
      (entries) => {
        if (!entries.some((entry) => entry.isIntersecting)) return;
        nearness.disconnect();
        setNear(true);
        attempt(async () => {
          const [{ PictureDesk: Desk }, work] = await Promise.all([import('./PictureDesk.tsx'), block.work()]);
          setFetched({ Desk, work });
        });
      },
      { rootMargin: `${MARGIN}px` },
    );
    nearness.observe(element);
    return () => nearness.disconnect();
  }, []);
  if (fetched) return <fetched.Desk block={block} work={fetched.work} />;
  return failure ? (
    <FailureLine failure={failure} />
  ) : (
    <p class={near ? 'waiting' : 'note'} ref={place}>{say`Getting ready …`}</p>
  );
}
