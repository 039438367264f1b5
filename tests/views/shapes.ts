import { parseHTML } from 'linkedom';
import type { FootShape } from '../../lib/views/footShape.ts';
import type { SvgNode } from '../../lib/views/svg.ts';
import { svgText } from '../../lib/views/svgText.ts';

/** An invented foot with every number. */
export const whole: FootShape = {
  limb: 'LF',
  toeAngle: 51,
  heelAngle: 46,
  pasternAngle: 54,
  toeLength: 88,
  heelLength: 42,
  medialWall: 54,
  lateralWall: 51,
  medialHeel: 38,
  lateralHeel: 44,
  width: 130,
  length: 128,
  frogWidth: 54,
  frogLength: 88,
  heelWidth: 88,
};

/** A drawing written out and read back by a parser, as a browser would. */
export function drawn(node: SvgNode): Element {
  const { document } = parseHTML(`<html><body>${svgText(node)}</body></html>`);
  return document.querySelector('svg') as unknown as Element;
}

/** The numbers of an element's attributes. */
export function numbers(element: Element | null, ...names: string[]): number[] {
  if (element === null) throw new Error('The element is not in the drawing');
  return names.map((name) => Number(element.getAttribute(name)));
}

/** Angle of a `line` above the horizontal in degrees, 0 to 180, as a line without direction; y runs down. */
export function slope(line: Element | null): number {
  const [x1, y1, x2, y2] = numbers(line, 'x1', 'y1', 'x2', 'y2');
  return ((Math.atan2(-(y2 - y1), x2 - x1) * 180) / Math.PI + 180) % 180;
}

export function extent(line: Element | null): number {
  const [x1, y1, x2, y2] = numbers(line, 'x1', 'y1', 'x2', 'y2');
  return Math.hypot(x2 - x1, y2 - y1);
}

/** The box of a path of M, L, C and Z commands, curves followed to a thousandth of their length. */
export function box(path: Element | null): { left: number; right: number; top: number; bottom: number } {
  const tokens = path?.getAttribute('d')?.match(/[MLCZ]|-?\d+(\.\d+)?/g) ?? [];
  let [x, y, at] = [0, 0, 0];
  const result = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };
  const visit = (px: number, py: number) => {
    result.left = Math.min(result.left, px);
    result.right = Math.max(result.right, px);
    result.top = Math.min(result.top, py);
    result.bottom = Math.max(result.bottom, py);
  };
  const next = () => Number(tokens[at++]);
  while (at < tokens.length) {
    const command = tokens[at++];
    if (command === 'Z') continue;
    if (command === 'C') {
      const [x1, y1, x2, y2, x3, y3] = [next(), next(), next(), next(), next(), next()];
      for (let step = 0; step <= 1000; step++) {
        const t = step / 1000;
        const weights = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
        visit(
          weights[0] * x + weights[1] * x1 + weights[2] * x2 + weights[3] * x3,
          weights[0] * y + weights[1] * y1 + weights[2] * y2 + weights[3] * y3,
        );
      }
      [x, y] = [x3, y3];
    } else {
      [x, y] = [next(), next()];
      visit(x, y);
    }
  }
  return result;
}

export function texts(element: Element): string[] {
  return [...element.querySelectorAll('text')].map((text) => text.textContent ?? '');
}
