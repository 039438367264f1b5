import { useContext, useEffect, useState } from 'preact/hooks';
import { say } from '../../words/say.ts';
import type { Keep } from '../blocks.ts';
import { FailureLine, useFailure } from '../parts/FailureLine.tsx';
import { SurroundingsContext } from '../surroundings.ts';
import type { KeepDesk } from './KeepDesk.tsx';
import type { Keeper } from './keeper.ts';

/** A page to keep, and those that were kept; all of it is fetched when it is drawn. In a file nothing is kept. */
export function KeepPart({ block }: { block: Keep }) {
  const { still } = useContext(SurroundingsContext);
  const [fetched, setFetched] = useState<{ Desk: typeof KeepDesk; keeper: Keeper } | undefined>();
  const [failure, attempt] = useFailure();
  useEffect(() => {
    attempt(async () => {
      const [{ KeepDesk: Desk }, keeper] = await Promise.all([import('./KeepDesk.tsx'), block.keeper()]);
      setFetched({ Desk, keeper });
    });
  }, []);
  if (still) return null;
  if (fetched) return <fetched.Desk block={block} keeper={fetched.keeper} />;
  return failure ? <FailureLine failure={failure} /> : <p class="waiting">{say`Getting ready …`}</p>;
}
