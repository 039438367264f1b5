import { describe, expect, it } from 'vitest';
import { twoFeet } from '../../lib/views/twoFeet.ts';
import { drawn, whole } from './shapes.ts';

const flatter = { ...whole, limb: 'RF' as const, toeAngle: 44, width: 126 };

/** The points of an outline, in px. */
function points(picture: Element, word: string): number[][] {
  const d = picture.querySelector(`path.${word}`)!.getAttribute('d')!;
  return [...d.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
}

describe('twoFeet', () => {
  it('lays the right foot over the left from one toe, turned over, so that the angle stands out', () => {
    const picture = drawn(twoFeet(whole, flatter, 'toeAngle', { mmPerPx: 1 }));
    const [[toe, top], [otherToe, otherTop]] = ['filled', 'dashed'].map((word) => points(picture, word));
    expect(otherToe).toEqual(toe);
    const angle = ([x, y]: number[]) => (Math.atan2(toe[1] - y, x - toe[0]) * 180) / Math.PI;
    expect(angle(top)).toBeCloseTo(51, 1);
    expect(angle(otherTop)).toBeCloseTo(44, 1);
  });

  it('compares widths as prints', () => {
    const picture = drawn(twoFeet(whole, flatter, 'width', { mmPerPx: 1 }));
    const [width, other] = ['filled', 'dashed'].map((word) => {
      const across = points(picture, word).map(([x]) => x);
      return Math.max(...across) - Math.min(...across);
    });
    expect(width - other).toBeCloseTo(4, 0);
  });

  it('says under the drawing which foot is drawn how, with its number', () => {
    const words = (picture: Element) => [...picture.querySelectorAll('text')].map((text) => text.textContent);
    expect(words(drawn(twoFeet(whole, flatter, 'toeAngle')))).toEqual([
      'filled: left fore 51.0°',
      'dashed: right fore 44.0°',
    ]);
    expect(words(drawn(twoFeet(whole, { limb: 'RF' }, 'toeAngle')))).toContain('dashed: right fore not measured');
    const inches = drawn(twoFeet(whole, flatter, 'width', { units: { length: 'in', mass: 'kg' } }));
    expect(words(inches)).toContain('dashed: right fore 4.96 in');
  });

  it('names both feet for those who don’t see it', () => {
    const picture = drawn(twoFeet(whole, flatter, 'toeAngle'));
    expect(picture.querySelector('title')!.textContent).toBe('left fore and right fore');
    expect(picture.querySelector('desc')!.textContent).toBe('filled: left fore; dashed: right fore.');
  });
});
