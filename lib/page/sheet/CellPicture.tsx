import { useEffect, useState } from 'preact/hooks';
import { say } from '../../words/say.ts';
import type { Editing, CellPicture as Found } from './editing.ts';

interface PictureProps {
  readonly editing: Editing;
  readonly column: string;
  readonly row: number;
  readonly revision: number;
}

/** The picture that the chosen cell was measured from, and the points it was worked from. */
export function CellPicture({ editing, column, row, revision }: PictureProps) {
  const [found, setFound] = useState<Found | undefined>();
  useEffect(() => {
    let wanted = true;
    setFound(undefined);
    const rested = setTimeout(async () => {
      const picture = await editing.picture?.(column, row).catch(() => undefined);
      if (wanted) setFound(picture);
    }, 120);
    return () => {
      wanted = false;
      clearTimeout(rested);
    };
  }, [editing, column, row, revision]);
  if (!found) return null;
  return (
    <section class="origin unprinted" aria-label={say`The picture the chosen cell was measured from`}>
      <div class="origin-words">
        <p>
          {say`Measured from the picture`} <a href={found.address}>{found.name}</a>
          {say`, ${found.words}. ${
            found.moved
              ? say`Its points were moved since, and now lie here`
              : say`It was worked from ${found.points.length} points`
          }, in px from the upper left corner:`}
        </p>
        <ul class="cell-history">
          {found.points.map(({ title, x, y }, index) => (
            <li key={index}>
              {title} <span class="number">{`${Math.round(x)}, ${Math.round(y)}`}</span>
            </li>
          ))}
        </ul>
      </div>
    </section>
  );
}
