import { describe, expect, it } from 'vitest';
import { footOverTime } from '../../lib/views/footOverTime.ts';
import { drawn, whole } from './shapes.ts';

const times = [
  { shape: whole, when: '2026-10-05 before' },
  { shape: { ...whole, toeLength: 98 }, when: '2026-08-20 before' },
  { shape: { ...whole, toeAngle: Number.NaN }, when: '2025-10-01 before' },
];

describe('footOverTime', () => {
  it('draws the latest filled and the one before it dashed, both from the same toe', () => {
    const picture = drawn(footOverTime(times, 'side', { mmPerPx: 1 }));
    const [filled, dashed] = ['filled', 'dashed'].map((name) => picture.querySelector(`path.${name}`)!);
    expect(filled.getAttribute('fill')).not.toBeNull();
    expect(dashed.getAttribute('stroke-dasharray')).toBe('5 3');
    const toe = (path: Element) => /^M(\S+) (\S+)/.exec(path.getAttribute('d')!)!.slice(1);
    expect(toe(filled)).toEqual(toe(dashed));
    // The toe's hairline lies 88 mm and 98 mm away at 51 degrees: 10 mm cos 51 further back.
    const top = (path: Element) => Number(/L(\S+)/.exec(path.getAttribute('d')!)![1]);
    expect(top(dashed) - top(filled)).toBeCloseTo(10 * Math.cos((51 * Math.PI) / 180), 1);
  });

  it('leaves a time out that was not measured from that side, and says so', () => {
    const picture = drawn(footOverTime(times, 'side'));
    expect(picture.querySelector('path.dotted')).toBeNull();
    expect(picture.querySelector('desc')!.textContent).toBe(
      'filled: 2026-10-05 before; dashed: 2026-08-20 before; not measured: 2025-10-01 before.',
    );
    expect(drawn(footOverTime(times, 'below')).querySelector('path.dotted')).not.toBeNull();
  });

  it('has the inside of a left foot to the left from in front and to the right as its print', () => {
    const inside = (view: 'front' | 'below', limb: 'LF' | 'RF') => {
      const picture = drawn(footOverTime([{ shape: { ...whole, limb }, when: 'now' }], view));
      return [...picture.querySelectorAll('text')]
        .find((each) => each.textContent === 'inside')!
        .getAttribute('text-anchor');
    };
    expect([inside('front', 'LF'), inside('front', 'RF')]).toEqual(['start', 'end']);
    expect([inside('below', 'LF'), inside('below', 'RF')]).toEqual(['end', 'start']);
  });

  it('tilts the hairline by the heights inside and outside', () => {
    const path = drawn(footOverTime(times.slice(0, 1), 'front', { mmPerPx: 1 })).querySelector('path.filled')!;
    const [, inside, outside] = [...path.getAttribute('d')!.matchAll(/[ML](\S+) (\S+)/g)].map((found) =>
      Number(found[2]),
    );
    // 54 inside, 51 outside; down is larger.
    expect(outside - inside).toBeCloseTo(3, 1);
  });

  it('says that nothing was measured where no time has an outline', () => {
    const picture = drawn(footOverTime([{ shape: { limb: 'RH' }, when: 'now' }], 'below'));
    expect(picture.textContent).toContain('outline not measured');
  });
});
