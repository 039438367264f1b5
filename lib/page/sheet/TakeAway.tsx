import { useContext } from 'preact/hooks';
import type { SheetBlock } from '../blocks.ts';
import { DownloadPart } from '../parts/DownloadPart.tsx';
import { SurroundingsContext } from '../surroundings.ts';

/** The files that go with a table. */
export function TakeAway({ block }: { block: SheetBlock }) {
  const { files } = useContext(SurroundingsContext);
  return (
    <p class="takeaway">
      {files(block).map((file) => (
        <DownloadPart key={file.filename} block={file} />
      ))}
    </p>
  );
}
