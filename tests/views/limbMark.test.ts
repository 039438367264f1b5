import { describe, expect, it } from 'vitest';
import { limbs } from '../../lib/hoof/limbs.ts';
import { limbMark, limbSign } from '../../lib/views/limbMark.ts';
import { svg } from '../../lib/views/svg.ts';
import { grounds } from '../../lib/views/theme.ts';
import { box, drawn } from './shapes.ts';

const corners = (limb: (typeof limbs)[number], area = 60): [number, number][] => {
  const points: [number, number][] = [];
  const context = {
    moveTo: (x: number, y: number) => void points.push([x, y]),
    lineTo: (x: number, y: number) => void points.push([x, y]),
    closePath: () => {},
  };
  limbMark(limb).symbol.draw(context, area);
  return points;
};

describe('limbMark', () => {
  it('points to the limb’s own side', () => {
    for (const limb of limbs) {
      const tip = corners(limb).toSorted((a, b) => Math.abs(b[0]) - Math.abs(a[0]))[0];
      expect(Math.sign(tip[0])).toBe(limb.startsWith('L') ? -1 : 1);
      expect(tip[1]).toBe(0);
    }
  });

  it('has the area that is asked for and its middle on the value', () => {
    const [[x0, y0], [x1, y1], [x2, y2]] = corners('RF', 60);
    expect(Math.abs((x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0)) / 2).toBeCloseTo(60, 10);
    expect((x0 + x1 + x2) / 3).toBeCloseTo(0, 10);
    expect((y0 + y1 + y2) / 3).toBeCloseTo(0, 10);
  });

  it('tells the four limbs apart without colour', () => {
    const looks = limbs.map((limb) =>
      JSON.stringify([corners(limb), limbMark(limb).fill === grounds.card, limbMark(limb).dash]),
    );
    expect(new Set(looks).size).toBe(4);
  });

  it('stands as a small drawing where it is asked to', () => {
    const picture = drawn(svg('svg', {}, limbSign('LF', [20, 30])));
    const { left, right, top, bottom } = box(picture.querySelector('.limb.LF'));
    expect((top + bottom) / 2).toBeCloseTo(30, 1);
    expect(20 - left).toBeGreaterThan(right - 20);
  });
});
