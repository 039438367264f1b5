import { useContext, useEffect, useRef } from 'preact/hooks';
import type { Chart } from '../blocks.ts';
import { pngFile, svgFile } from '../chartFile.ts';
import { drawChart } from '../drawChart.ts';
import { saveFile } from '../saveFile.ts';
import { SurroundingsContext } from '../surroundings.ts';
import { FailureLine, useFailure } from './FailureLine.tsx';
import { useWidth } from './useWidth.ts';

/** The width of a page's text on paper, in pixels of the screen. */
const STILL_WIDTH = 640;

export function ChartPart({ block }: { block: Chart }) {
  const { still, document } = useContext(SurroundingsContext);
  return (
    <figure class="chart">
      <p class="figure-title">{block.title}</p>
      {still ? (
        <>
          <div
            class="picture"
            dangerouslySetInnerHTML={{ __html: drawChart(block, STILL_WIDTH, document).outerHTML }}
          />
          <Caption block={block} />
        </>
      ) : (
        <LivePicture block={block} />
      )}
    </figure>
  );
}

const Caption = ({ block }: { block: Chart }) => (block.caption ? <figcaption>{block.caption}</figcaption> : null);

function LivePicture({ block }: { block: Chart }) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const [failure, attempt] = useFailure();
  useEffect(() => {
    if (width > 0) attempt(() => place.current!.replaceChildren(drawChart(block, width)));
  }, [block, width]);
  const picture = () => place.current!.querySelector<SVGSVGElement>('svg.plot')!;
  return (
    <>
      <div class="picture" ref={place} />
      <FailureLine failure={failure} />
      <Caption block={block} />
      <p class="takeaway">
        <button
          type="button"
          onClick={() => attempt(() => saveFile(`${block.name}.svg`, 'image/svg+xml', svgFile(picture())))}
          aria-label={`Save the chart “${block.title}” as SVG`}
        >
          Save as SVG
        </button>
        <button
          type="button"
          onClick={() => attempt(async () => saveFile(`${block.name}.png`, 'image/png', await pngFile(picture())))}
          aria-label={`Save the chart “${block.title}” as PNG`}
        >
          Save as PNG
        </button>
      </p>
    </>
  );
}
