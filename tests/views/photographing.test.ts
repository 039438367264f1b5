import { describe, expect, it } from 'vitest';
import { photographBelow, photographRear } from '../../lib/views/photographing.ts';
import { drawn } from './shapes.ts';

const numbers = (element: Element | null, ...names: string[]) =>
  names.map((name) => Number(element!.getAttribute(name)));

describe('how a foot is photographed', () => {
  const rear = photographRear();
  const below = photographBelow();

  it('shows a board with four corners beside the foot, clear of it', () => {
    for (const sees of [rear.sees, below.sees]) {
      const picture = drawn(sees);
      expect(picture.querySelectorAll('.board')).toHaveLength(1);
      const corners = [...picture.querySelectorAll('.corner')].map((corner) => numbers(corner, 'cx', 'cy'));
      expect(corners).toHaveLength(4);
      // The foot is 128 mm wide, 1 mm a px, its middle at 78.
      for (const [x] of corners) expect(x).toBeGreaterThan(78 + 64);
    }
  });

  it('looks level from behind and straight down from below, the camera at the end of the line of sight', () => {
    const [x1, y1, x2, y2] = numbers(drawn(rear.stands).querySelector('.sight'), 'x1', 'y1', 'x2', 'y2');
    expect(y1).toBe(y2);
    expect(x1).toBeGreaterThan(x2);
    const level = drawn(below.stands);
    const down = numbers(level.querySelector('.sight'), 'x1', 'y1', 'x2', 'y2');
    expect(down[0]).toBe(down[2]);
    expect(down[1]).toBeLessThan(down[3]);
    const [x, width] = numbers(level.querySelector('.camera'), 'x', 'width');
    expect(x + width / 2).toBeCloseTo(down[0], 6);
  });

  it('says for those who don’t see it what is drawn', () => {
    for (const node of [rear.sees, rear.stands, below.sees, below.stands]) {
      const picture = drawn(node);
      expect(picture.querySelector('title')?.textContent).toMatch(/camera/);
      expect(picture.querySelector('desc')?.textContent?.length).toBeGreaterThan(40);
    }
  });
});
