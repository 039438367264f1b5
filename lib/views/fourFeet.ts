import { endOf, type Limb, limbName, limbs, sideOf } from '../hoof/limbs.ts';
import { say } from '../words/say.ts';
import { type DrawingOptions, settled } from './drawingOptions.ts';
import { print, printBox } from './footBelow.ts';
import type { FootShape } from './footShape.ts';
import { footWords } from './footWords.ts';
import { type Pen, pen, picture, words } from './pen.ts';
import { type State, stateSign, stateWords } from './stateSign.ts';
import { type SvgNode, svg } from './svg.ts';
import { dashes, drawingScales, inks, strokes } from './theme.ts';

export interface FourFeetOptions extends DrawingOptions {
  /** Whose feet, for the description. */
  readonly horse?: string;
  /** What is to be said of a foot; its sign stands beside the foot's code. */
  readonly states?: Partial<Readonly<Record<Limb, State>>>;
}

/**
 * A horse's four feet as one looks down on it, front feet above, each the print of its own numbers at one scale.
 * @param feet     one shape a limb; a limb that is left out is drawn dashed as not measured
 * @param options  scale (left out: `drawingScales.small`), the horse's name, the state of each foot
 * @returns an `svg` whose name and description hold everything that is drawn
 * @example fourFeet([shape], { horse: 'Juniper' })
 */
export function fourFeet(feet: readonly FootShape[], options: FourFeetOptions = {}): SvgNode {
  const { mmPerPx, units, small } = settled({ mmPerPx: drawingScales.small, ...options });
  const four = limbs.map((limb) => feet.find((foot) => foot.limb === limb) ?? { limb });
  const boxes = four.map(printBox);
  const across = Math.max(...boxes.map((box) => box.across)) / mmPerPx;
  const above = Math.max(...boxes.map((box) => box.above)) / mmPerPx;
  const under = boxes[0].under / mmPerPx + 16;
  const size = [2 * across + 12, 2 * (above + under) + 4] as const;
  const middle = size[0] / 2;
  const parts = ['width', 'length', 'heelWidth', 'frogWidth', 'frogLength'] as const;
  const described = four.map((foot) => {
    const state = options.states?.[foot.limb];
    const about = footWords(foot, '', parts, units);
    return `${limbName(foot.limb)}${state === undefined ? '' : ` (${stateWords[state]})`}: ${about.description}`;
  });
  return picture(
    size,
    {
      kind: 'four-feet',
      name:
        options.horse === undefined
          ? say`Four feet, as prints seen from above`
          : say`The four feet of ${options.horse}, as prints seen from above`,
      description: described.join('. '),
    },
    svg('line', {
      x1: middle,
      x2: middle,
      y1: 2,
      y2: size[1] - 2,
      stroke: inks.rule,
      'stroke-width': strokes.thin,
      'stroke-dasharray': dashes.level,
    }),
    ...four.map((foot) => {
      const x = middle + (sideOf(foot.limb) === 'left' ? -1 : 1) * (across / 2 + 6);
      const y = above + (endOf(foot.limb) === 'front' ? 0 : above + under + 4);
      return foreground(foot, pen(mmPerPx, [x, y]), small, y + under - 3, x, options.states?.[foot.limb]);
    }),
  );
}

function foreground(
  foot: FootShape,
  draw: Pen,
  small: boolean,
  y: number,
  x: number,
  state: State | undefined,
): SvgNode {
  const code = words(foot.limb, [x, y], 'middle', { fill: inks.ink, 'font-weight': 600 });
  const sign = state === undefined ? [] : [stateSign(state, [x + 18, y - 4])];
  return svg('g', { class: `foot ${foot.limb}` }, ...print(foot, draw, small), code, ...sign);
}
