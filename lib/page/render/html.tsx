import { parseHTML } from 'linkedom';
import { render } from 'preact-render-to-string';
import type { DisplayUnits } from '../../sheet/display.ts';
import { say } from '../../words/say.ts';
import type { Block, Chart, LinkedCharts } from '../blocks.ts';
import { cautions } from '../cautions.ts';
import { settled } from '../deferred.ts';
import { drawChart } from '../drawChart.ts';
import type { ControlValues, Page } from '../page.ts';
import { BlockList } from '../parts/BlockList.tsx';
import { style } from '../style.ts';
import { SurroundingsContext } from '../surroundings.ts';

export interface StillPage<Data> {
  readonly herd: Data;
  readonly controls?: ControlValues;
  readonly units?: DisplayUnits;
  /** Where the numbers come from, in words: `from feet.csv`. */
  readonly source?: string;
}

/**
 * A page as one self-contained HTML file: nothing is fetched, no script is needed to read it, charts are drawings in it.
 * @param input the herd, what the controls say, the reader's units; left out, millimetres and kilograms
 * @returns the text of the file, UTF-8
 */
export async function htmlPage<Data>(page: Page<Data>, input: StillPage<Data>): Promise<string> {
  const { herd, controls = {}, units = { length: 'mm', mass: 'kg' }, source } = input;
  const { document } = parseHTML('<html><body></body></html>');
  const blocks = await settled(page.blocks({ herd, controls, units }));
  const surroundings = {
    units,
    still: true,
    set: () => {},
    files: () => [],
    draw: (chart: Chart, width: number) => drawChart(chart, width, document as unknown as Document).outerHTML,
    linked: await drawnAhead(blocks),
  };
  const html = render(
    <html lang={say`en`}>
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta
          http-equiv="Content-Security-Policy"
          content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'"
        />
        <title>{page.title}</title>
        <style dangerouslySetInnerHTML={{ __html: style }} />
      </head>
      <body class="still">
        <main>
          <h1>{page.title}</h1>
          <p class="question">{page.question}</p>
          {source && <p class="note">{source}</p>}
          <SurroundingsContext.Provider value={surroundings}>
            <BlockList blocks={blocks} />
          </SurroundingsContext.Provider>
        </main>
        <footer>
          <ul class="cautions">
            {cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </footer>
      </body>
    </html>,
  );
  return `<!doctype html>\n${html}\n`;
}

/** The engine of linked charts is fetched only where a page has one. */
async function drawnAhead(blocks: readonly Block[]): Promise<ReadonlyMap<LinkedCharts, string>> {
  const charts = blocks.flatMap(linkedIn);
  if (charts.length === 0) return new Map();
  const { linkedToSvg } = await import('./vega.ts');
  return new Map(await Promise.all(charts.map(async (chart) => [chart, await linkedToSvg(chart)] as const)));
}

function linkedIn(block: Block): LinkedCharts[] {
  if (block.kind === 'linked') return [block];
  return block.kind === 'group' ? block.blocks.flatMap(linkedIn) : [];
}
