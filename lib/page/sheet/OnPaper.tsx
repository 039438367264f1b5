import type { SheetBlock } from '../blocks.ts';
import { usePrinting } from '../parts/usePrinting.ts';
import { StillTable } from './StillTable.tsx';

/** The table as it goes on paper, while the page is laid out for it. */
export function OnPaper({ block }: { block: SheetBlock }) {
  return usePrinting() ? <StillTable block={block} /> : null;
}
