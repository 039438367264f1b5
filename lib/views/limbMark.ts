import { endOf, type Limb, sideOf } from '../hoof/limbs.ts';
import { type SvgNode, svg } from './svg.ts';
import { dashes, grounds, roles, strokes } from './theme.ts';

/** What Plot and d3 call a symbol: draws its outline of the given area (px²) round the middle of a context. */
export interface MarkSymbol {
  draw(context: Pick<CanvasPath, 'moveTo' | 'lineTo' | 'closePath'>, area: number): void;
}

/**
 * The mark of a limb, told apart three ways: it points to its own side, a front foot is filled and a hind foot is
 * hollow, and the two ends have two colours. Lines of the right side are dashed.
 */
export interface LimbMark {
  readonly symbol: MarkSymbol;
  readonly stroke: string;
  readonly fill: string;
  readonly dash: string;
}

// A triangle of equal sides whose middle is its centre of gravity, so that the mark sits on its value.
function pointing(direction: 1 | -1): MarkSymbol {
  return {
    draw(context, area) {
      const height = Math.sqrt(area * Math.sqrt(3));
      const half = height / Math.sqrt(3);
      context.moveTo((direction * height * 2) / 3, 0);
      context.lineTo((-direction * height) / 3, half);
      context.lineTo((-direction * height) / 3, -half);
      context.closePath();
    },
  };
}

const symbols = { left: pointing(-1), right: pointing(1) } as const;

/**
 * How a limb is marked in charts and beside drawings.
 * @example limbMark('LH').fill === grounds.card // true: hollow
 */
export function limbMark(limb: Limb): LimbMark {
  const colour = roles[endOf(limb)];
  const side = sideOf(limb);
  return {
    symbol: symbols[side],
    stroke: colour,
    fill: endOf(limb) === 'front' ? colour : grounds.card,
    dash: dashes[side],
  };
}

/** The limb's mark as a small drawing of its own, for a key. */
export function limbSign(limb: Limb, at: readonly [number, number], area = 56): SvgNode {
  const { symbol, stroke, fill } = limbMark(limb);
  const parts: string[] = [];
  symbol.draw(
    {
      moveTo: (x, y) => parts.push(`M${(at[0] + x).toFixed(2)} ${(at[1] + y).toFixed(2)}`),
      lineTo: (x, y) => parts.push(`L${(at[0] + x).toFixed(2)} ${(at[1] + y).toFixed(2)}`),
      closePath: () => parts.push('Z'),
    },
    area,
  );
  return svg('path', {
    class: `limb ${limb}`,
    d: parts.join(''),
    fill,
    stroke,
    'stroke-width': strokes.line,
    'stroke-linejoin': 'round',
  });
}
