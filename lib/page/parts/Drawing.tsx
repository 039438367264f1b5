import type { SvgNode } from '../../views/svg.ts';
import { svgText } from '../../views/svgText.ts';

/**
 * A drawing from `lib/views`, as one picture.
 * @param label what it is of, where the drawing itself doesn't say; `''` where the words beside it say it all
 */
export function Drawing({ node, label }: { node: SvgNode; label: string }) {
  const said: SvgNode['attributes'] = label === '' ? { 'aria-hidden': 'true' } : { role: 'img', 'aria-label': label };
  const picture = { ...node, attributes: { ...said, ...node.attributes } };
  return <span class="drawing" dangerouslySetInnerHTML={{ __html: svgText(picture) }} />;
}
