import * as Plot from '@observablehq/plot';
import type { Chart } from './blocks.ts';

/**
 * Draws a chart so that it stands under a strict policy and reads as one picture: without Plot's inline style sheet (the
 * notebook's own has the rules), named by its title and summary, its inner groups silent.
 * @param width in pixels of the screen
 * @param document where there is no window, the document to draw with
 * @returns an `svg`, or a `figure` where the options ask for a legend
 */
export function drawChart(chart: Chart, width: number, document?: Document): SVGSVGElement | HTMLElement {
  const drawn = Plot.plot({ ...chart.options, width, className: 'plot', ...(document && { document }) });
  for (const style of drawn.querySelectorAll('style')) style.remove();
  const picture = drawn.matches('svg') ? drawn : (drawn.querySelector('svg.plot') ?? drawn);
  picture.setAttribute('role', 'img');
  picture.setAttribute('aria-label', `${chart.title}. ${chart.summary}`);
  for (const inner of drawn.querySelectorAll('svg [aria-label], svg [aria-description]')) {
    inner.removeAttribute('aria-label');
    inner.removeAttribute('aria-description');
    inner.setAttribute('role', 'presentation');
  }
  return drawn as SVGSVGElement | HTMLElement;
}
