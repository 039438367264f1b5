import { useContext } from 'preact/hooks';
import type { Download } from '../blocks.ts';
import { saveFile } from '../saveFile.ts';
import { SurroundingsContext } from '../surroundings.ts';

/** A file to take away; in a still page it travels inside the link. */
export function DownloadPart({ block }: { block: Download }) {
  const { still } = useContext(SurroundingsContext);
  if (still)
    return (
      <a class="download" download={block.filename} href={dataAddress(block)}>
        {block.label}
      </a>
    );
  return (
    <button type="button" class="download" onClick={() => saveFile(block.filename, block.type, block.contents())}>
      {block.label}
    </button>
  );
}

function dataAddress({ type, contents }: Download): string {
  const data = contents();
  if (typeof data === 'string') return `data:${type},${encodeURIComponent(data)}`;
  let bytes = '';
  for (const byte of data) bytes += String.fromCharCode(byte);
  return `data:${type};base64,${btoa(bytes)}`;
}
