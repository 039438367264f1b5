import type { SvgNode } from '../../views/svg.ts';
import { svgText } from '../../views/svgText.ts';

/**
 * A drawing from `lib/views`, as one picture.
 * @param label what it is of, where the drawing itself doesn't say
 */
export function Drawing({ node, label }: { node: SvgNode; label: string }) {
  const picture = { ...node, attributes: { role: 'img', 'aria-label': label, ...node.attributes } };
  return <div class="drawing" dangerouslySetInnerHTML={{ __html: svgText(picture) }} />;
}
