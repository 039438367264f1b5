import { useContext, useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { say } from '../../words/say.ts';
import type { Chart } from '../blocks.ts';
import type { drawChart } from '../drawChart.ts';
import { saveFile } from '../saveFile.ts';
import { SurroundingsContext } from '../surroundings.ts';
import { FailureLine, useFailure } from './FailureLine.tsx';
import { usePrinting } from './usePrinting.ts';
import { useWidth } from './useWidth.ts';

/** The width of a page's text on paper, in pixels of the screen. */
const STILL_WIDTH = 640;

export function ChartPart({ block }: { block: Chart }) {
  const { still, draw } = useContext(SurroundingsContext);
  const { options, onPaper } = block;
  return (
    <figure class="chart">
      <p class="figure-title">{block.title}</p>
      {still ? (
        <>
          <div
            class={onPaper ? 'picture unprinted' : 'picture'}
            dangerouslySetInnerHTML={{ __html: draw!(block, (onPaper && options.width) ?? STILL_WIDTH) }}
          />
          {onPaper && (
            <div
              class="picture on-paper"
              dangerouslySetInnerHTML={{ __html: draw!({ ...block, options: onPaper }, onPaper.width) }}
            />
          )}
          <Caption block={block} />
        </>
      ) : (
        <LivePicture block={block} />
      )}
    </figure>
  );
}

const Caption = ({ block }: { block: Chart }) => (block.caption ? <figcaption>{block.caption}</figcaption> : null);

/** What draws charts is fetched by the pages that have some; from then on it is at hand, as paper doesn't wait. */
let atHand: typeof drawChart | undefined;

function LivePicture({ block }: { block: Chart }) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const [drawn, setDrawn] = useState(false);
  const [failure, attempt] = useFailure();
  const paper = usePrinting() ? block.onPaper : undefined;
  const put = () =>
    attempt(async () => {
      atHand ??= (await import('../drawChart.ts')).drawChart;
      place.current?.replaceChildren(paper ? atHand({ ...block, options: paper }, paper.width) : atHand(block, width));
    });
  useEffect(() => {
    if (width > 0) put().finally(() => setDrawn(true));
  }, [block, width]);
  // For paper and back from it, without waiting.
  useLayoutEffect(() => {
    if (paper || width > 0) put();
  }, [paper]);
  const picture = () => place.current!.querySelector<SVGSVGElement>('svg.plot')!;
  return (
    <>
      <div class={width > 0 && !drawn ? 'picture waiting' : 'picture'} ref={place} />
      <FailureLine failure={failure} />
      <Caption block={block} />
      <p class="takeaway">
        <button
          type="button"
          onClick={() =>
            attempt(async () => {
              const { svgFile } = await import('../chartFile.ts');
              saveFile(`${block.name}.svg`, 'image/svg+xml', svgFile(picture()));
            })
          }
          aria-label={say`Save the chart “${block.title}” as SVG`}
        >{say`Save as SVG`}</button>
        <button
          type="button"
          onClick={() =>
            attempt(async () => {
              const { pngFile } = await import('../chartFile.ts');
              saveFile(`${block.name}.png`, 'image/png', await pngFile(picture()));
            })
          }
          aria-label={say`Save the chart “${block.title}” as PNG`}
        >{say`Save as PNG`}</button>
      </p>
    </>
  );
}
