import { useContext, useEffect, useId, useState } from 'preact/hooks';
import type { PictureBlock } from '../blocks.ts';
import { FailureLine, useFailure } from '../parts/FailureLine.tsx';
import { SurroundingsContext } from '../surroundings.ts';
import type { PictureDesk } from './PictureDesk.tsx';
import type { PictureWork } from './work.ts';

/** A picture to measure from. All that works on it is fetched here; in a file nothing can be placed. */
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
  useEffect(() => {
    attempt(async () => {
      const [{ PictureDesk: Desk }, work] = await Promise.all([import('./PictureDesk.tsx'), block.work()]);
      setFetched({ Desk, work });
    });
  }, []);
  if (fetched) return <fetched.Desk block={block} work={fetched.work} />;
  return failure ? <FailureLine failure={failure} /> : <p class="waiting">Getting ready …</p>;
}
