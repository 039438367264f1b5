import { say } from '../words/say.ts';
import { type SvgNode, svg } from './svg.ts';
import { grounds, roles, strokes } from './theme.ts';

/** What is to be said of a foot or a value; each has its own words, sign and colour, and the colour is never alone. */
export type State = 'raise' | 'unsure' | 'steady' | 'on purpose';

/** Each state in words, as they stand beside its sign. */
export const stateWords: Readonly<Record<State, string>> = {
  raise: say`worth raising`,
  unsure: say`can’t tell from these measurements`,
  steady: say`nothing beyond the error`,
  'on purpose': say`set so on purpose`,
};

/**
 * The sign of a state: a pennant on its pole, a half-filled disc, an open ring, a pinned square.
 * @param at  its middle in px
 * @param r   half its size in px
 */
export function stateSign(state: State, [x, y]: readonly [number, number], r = 5): SvgNode {
  const group = (...children: SvgNode[]) => svg('g', { class: `state ${state.replace(' ', '-')}` }, ...children);
  const line = { fill: 'none', 'stroke-width': strokes.line, 'stroke-linejoin': 'round', 'stroke-linecap': 'round' };
  switch (state) {
    case 'raise': {
      const d = `M${x - 0.6 * r} ${y + r}V${y - r}L${x + r} ${y - 0.35 * r}L${x - 0.6 * r} ${y + 0.3 * r}`;
      return group(svg('path', { d, ...line, fill: roles.raise, stroke: roles.raise }));
    }
    case 'unsure': {
      const d = `M${x} ${y - 0.85 * r}A${0.85 * r} ${0.85 * r} 0 0 0 ${x} ${y + 0.85 * r}Z`;
      return group(
        svg('circle', { cx: x, cy: y, r: 0.85 * r, ...line, fill: grounds.card, stroke: roles.unsure }),
        svg('path', { d, fill: roles.unsure }),
      );
    }
    case 'steady':
      return group(svg('circle', { cx: x, cy: y, r: 0.7 * r, ...line, stroke: roles.steady }));
    case 'on purpose':
      return group(
        svg('rect', {
          x: x - 0.8 * r,
          y: y - 0.8 * r,
          width: 1.6 * r,
          height: 1.6 * r,
          ...line,
          stroke: roles.onPurpose,
        }),
        svg('circle', { cx: x, cy: y, r: 0.25 * r, fill: roles.onPurpose }),
      );
  }
}
