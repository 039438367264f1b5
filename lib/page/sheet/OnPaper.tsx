import { useEffect, useMemo, useState } from 'preact/hooks';
import type { SheetBlock } from '../blocks.ts';
import { StillTable } from './StillTable.tsx';

/** The table as it goes on paper, while the page is laid out for it. */
export function OnPaper({ block }: { block: SheetBlock }) {
  const paper = useMemo(() => matchMedia('print'), []);
  const [printing, setPrinting] = useState(paper.matches);
  useEffect(() => {
    const follow = () => setPrinting(paper.matches);
    paper.addEventListener('change', follow);
    return () => paper.removeEventListener('change', follow);
  }, []);
  return printing ? <StillTable block={block} /> : null;
}
