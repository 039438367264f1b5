import { describe, expect, it } from 'vitest';
import { limbs } from '../../lib/hoof/limbs.ts';
import { fourFeet } from '../../lib/views/fourFeet.ts';
import { type State, stateWords } from '../../lib/views/stateSign.ts';
import { svgText } from '../../lib/views/svgText.ts';
import { box, drawn, numbers, texts, whole } from './shapes.ts';

const four = limbs.map((limb) => ({ ...whole, limb }));

describe('fourFeet', () => {
  it('sets the feet as one looks down on a horse: front feet above, left feet to the left', () => {
    const picture = drawn(fourFeet(four));
    const at = Object.fromEntries(
      limbs.map((limb) => [limb, numbers(picture.querySelector(`.foot.${limb} text`), 'x', 'y')]),
    );
    expect(at.LF[0]).toBeLessThan(at.RF[0]);
    expect(at.LF[1]).toBeLessThan(at.LH[1]);
    expect(at.LF[1]).toBe(at.RF[1]);
    expect(at.RF[0]).toBe(at.RH[0]);
    expect(texts(picture)).toEqual(['LF', 'RF', 'LH', 'RH']);
  });

  it('draws all four at one scale and grows for large feet instead of shrinking them', () => {
    const usual = drawn(fourFeet(four, { mmPerPx: 2 }));
    const heavy = drawn(fourFeet([{ ...whole, width: 200, length: 190 }, ...four.slice(1)], { mmPerPx: 2 }));
    for (const picture of [usual, heavy]) {
      const { left, right } = box(picture.querySelector('.foot.RF .wall'));
      expect(right - left).toBeCloseTo(130 / 2, 1);
    }
    const { left, right } = box(heavy.querySelector('.foot.LF .wall'));
    expect(right - left).toBeCloseTo(100, 1);
    expect(numbers(heavy, 'width', 'height')[0]).toBeGreaterThan(numbers(usual, 'width', 'height')[0]);
  });

  it('dashes a foot that was not measured at all', () => {
    const picture = drawn(fourFeet(four.slice(0, 3)));
    expect(picture.querySelector('.foot.RH .missing')).not.toBeNull();
    expect(picture.querySelector('.foot.RH .wall')).toBeNull();
    expect(picture.querySelector('desc')?.textContent).toContain('right hind: not measured: width');
  });

  it('sets a sign and words to every state, no two alike', () => {
    const states = { LF: 'raise', RF: 'unsure', LH: 'steady', RH: 'on purpose' } as const satisfies Record<
      string,
      State
    >;
    const picture = drawn(fourFeet(four, { states }));
    const signs = limbs.map((limb) =>
      picture.querySelector(`.foot.${limb} .state`)?.innerHTML.replace(/-?\d+(\.\d+)?/g, '#'),
    );
    expect(new Set(signs.map((sign) => sign?.replace(/#[0-9a-f#]+/g, '')))).toHaveProperty('size', 4);
    const description = picture.querySelector('desc')?.textContent;
    for (const state of Object.values(states)) expect(description).toContain(`(${stateWords[state]})`);
  });

  it('names the horse in words, whatever it is called', () => {
    for (const horse of ['Juniper', '<img src=x onerror=alert(1)>', '__proto__', '"&\'']) {
      const text = svgText(fourFeet(four, { horse }));
      expect(text).not.toContain('<img');
      expect(drawn(fourFeet(four, { horse })).querySelector('title')?.textContent).toBe(
        `The four feet of ${horse}, as prints seen from above`,
      );
    }
  });
});
