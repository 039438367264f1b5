import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limbs } from '../../lib/hoof/limbs.ts';
import type { DrawingOptions } from '../../lib/views/drawingOptions.ts';
import { footBelow } from '../../lib/views/footBelow.ts';
import { footFront } from '../../lib/views/footFront.ts';
import { footRear } from '../../lib/views/footRear.ts';
import { type FootShape, shapeColumns } from '../../lib/views/footShape.ts';
import { footSide } from '../../lib/views/footSide.ts';
import type { SvgNode } from '../../lib/views/svg.ts';
import { svgText } from '../../lib/views/svgText.ts';
import { box, drawn, extent, numbers, slope, texts, whole } from './shapes.ts';

const drawings: Record<string, (foot: FootShape, options?: DrawingOptions) => SvgNode> = {
  footBelow,
  footSide,
  footFront,
  footRear,
};

/** Feet as life has them: any limb, sizes from pony to heavy horse, any number missing. */
const anyFoot: fc.Arbitrary<FootShape> = fc.record({
  limb: fc.constantFrom(...limbs),
  ...Object.fromEntries(
    Object.keys(shapeColumns).map((part) => {
      const some = part.endsWith('Angle') ? { min: 30, max: 80 } : { min: 20, max: 200 };
      return [part, fc.option(fc.double({ ...some, noNaN: true }), { nil: Number.NaN })];
    }),
  ),
}) as fc.Arbitrary<FootShape>;

describe.each(Object.entries(drawings))('%s', (_name, draw) => {
  it('draws any foot, however much of it is missing, without an empty or endless number and without style', () => {
    fc.assert(
      fc.property(anyFoot, fc.constantFrom(0.5, 0.8, 2.2), (foot, mmPerPx) => {
        const text = svgText(draw(foot, { mmPerPx }));
        expect(text).not.toMatch(/NaN|Infinity|undefined|=""| style=/);
        for (const path of drawn(draw(foot, { mmPerPx })).querySelectorAll('path'))
          expect(path.getAttribute('d')).toMatch(/^M[-\d. LMCZ]+$/);
      }),
      { numRuns: 60, seed: 7 },
    );
  });

  it('keeps its words and lines inside its frame for any whole foot', () => {
    const size = { min: 0.7, max: 1.4, noNaN: true };
    fc.assert(
      fc.property(fc.constantFrom(...limbs), fc.double(size), (limb, by) => {
        const grown = Object.fromEntries(
          Object.entries(whole).map(([part, value]) => [
            part,
            part.endsWith('Angle') || part === 'limb' ? value : Number(value) * by,
          ]),
        );
        const picture = drawn(draw({ ...grown, limb } as FootShape));
        const [width, height] = numbers(picture, 'width', 'height');
        for (const path of picture.querySelectorAll('path')) {
          const { left, right, top, bottom } = box(path);
          expect(Math.min(left, top)).toBeGreaterThanOrEqual(0);
          expect(right).toBeLessThanOrEqual(width);
          expect(bottom).toBeLessThanOrEqual(height);
        }
        for (const line of picture.querySelectorAll('line')) {
          const [x1, y1, x2, y2] = numbers(line, 'x1', 'y1', 'x2', 'y2');
          expect(Math.min(x1, y1, x2, y2)).toBeGreaterThanOrEqual(0);
          expect(Math.max(x1, x2)).toBeLessThanOrEqual(width);
          expect(Math.max(y1, y2)).toBeLessThanOrEqual(height);
        }
        for (const word of picture.querySelectorAll('text')) {
          const [x, y] = numbers(word, 'x', 'y');
          const room = (word.textContent ?? '').length * 6.2;
          const share = { start: 0, middle: 0.5, end: 1 }[word.getAttribute('text-anchor') ?? 'start']!;
          expect(x - room * share, word.textContent!).toBeGreaterThanOrEqual(-1);
          expect(x + room * (1 - share), word.textContent!).toBeLessThanOrEqual(width + 1);
          expect(y).toBeLessThanOrEqual(height);
        }
      }),
      { numRuns: 40, seed: 11 },
    );
  });

  it('has the size of the foot over the scale, whatever the scale', () => {
    const [fine] = numbers(drawn(draw(whole, { mmPerPx: 1.3 })), 'width');
    const [coarse] = numbers(drawn(draw(whole, { mmPerPx: 2.6 })), 'width');
    expect(Math.abs(fine / coarse - 2)).toBeLessThan(0.05);
  });

  it('says in words what it shows and what was not measured', () => {
    const picture = drawn(draw({ limb: 'RH', toeAngle: 50.5, width: 118.25 }));
    expect(picture.getAttribute('role')).toBe('img');
    expect(picture.querySelector('title')?.textContent).toMatch(/^right hind /);
    expect(picture.querySelector('desc')?.textContent).toMatch(/not measured: /);
    expect(texts(picture).join()).toContain('not measured');
  });

  it('leaves words out where there is no room for them, and keeps them in the description', () => {
    const picture = drawn(draw(whole, { mmPerPx: 2.2 }));
    expect(texts(picture)).toEqual([]);
    expect(picture.querySelector('desc')?.textContent).not.toBe('');
  });

  it('gives its numbers in the reader’s units', () => {
    const inches = drawn(draw(whole, { units: { length: 'in', mass: 'lb' } }));
    expect(inches.querySelector('desc')?.textContent).toContain(' in');
    expect(inches.querySelector('desc')?.textContent).not.toContain('mm');
  });

  it('refuses a scale that is none', () => {
    expect(() => draw(whole, { mmPerPx: 0 })).toThrow('The scale is 0 mm to a px; it must be above zero');
  });
});

describe('footBelow', () => {
  it('draws width and length to scale', () => {
    const wall = box(drawn(footBelow(whole, { mmPerPx: 0.8 })).querySelector('.wall'));
    expect(wall.right - wall.left).toBeCloseTo(130 / 0.8, 1);
    expect(wall.bottom - wall.top).toBeCloseTo(128 / 0.8, 1);
  });

  it('draws the frog to scale', () => {
    const frog = box(drawn(footBelow(whole, { mmPerPx: 0.5 })).querySelector('.frog'));
    expect(frog.right - frog.left).toBeCloseTo(54 / 0.5, 1);
    expect(frog.bottom - frog.top).toBeCloseTo(88 / 0.5, 1);
  });

  it('draws the heels as wide as they were measured, outer edge to outer edge', () => {
    const wall = drawn(footBelow(whole, { mmPerPx: 1 })).querySelector('.wall');
    const data = wall?.getAttribute('d') ?? '';
    const ends = [...data.matchAll(/C(?:[-\d.]+ ){4}([-\d.]+) ([-\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
    const behind = ends.filter(([, y]) => y > box(wall).bottom - 0.06 * 128).map(([x]) => x);
    expect(Math.max(...behind) - Math.min(...behind)).toBeCloseTo(88, 1);
  });

  it('draws a front foot rounder at the toe than a hind foot of the same width and length', () => {
    // How wide the outline is a tenth of the length behind the toe.
    const nearToe = (foot: FootShape) => {
      const data =
        drawn(footBelow(foot, { mmPerPx: 1 }))
          .querySelector('.wall')
          ?.getAttribute('d') ?? '';
      const [x0, x1] = [/^M([\d.]+)/.exec(data)![1], /^M[\d.]+ [\d.]+C([\d.]+)/.exec(data)![1]].map(Number);
      return x1 - x0;
    };
    expect(nearToe(whole)).toBeGreaterThan(nearToe({ ...whole, limb: 'LH' }));
  });

  it('names the inside towards the horse’s midline: to the right of a left foot, to the left of a right foot', () => {
    const inside = (limb: FootShape['limb']) => {
      const picture = drawn(footBelow({ ...whole, limb }));
      const word = [...picture.querySelectorAll('text')].find((text) => text.textContent === 'inside') ?? null;
      return numbers(word, 'x')[0] / numbers(picture, 'width')[0];
    };
    for (const limb of ['LF', 'LH'] as const) expect(inside(limb)).toBeGreaterThan(0.5);
    for (const limb of ['RF', 'RH'] as const) expect(inside(limb)).toBeLessThan(0.5);
  });

  it('leaves out a frog that was not measured and dashes heels that were not', () => {
    const picture = drawn(footBelow({ ...whole, frogWidth: Number.NaN, heelWidth: undefined }));
    expect(picture.querySelector('.frog')).toBeNull();
    expect(picture.querySelector('.bulbs')).toBeNull();
    expect(picture.querySelector('.missing')?.getAttribute('stroke-dasharray')).toBe('2 3');
    expect(texts(picture)).toEqual(expect.arrayContaining(['frog not measured', 'heels not measured']));
  });

  it('draws a lone width as a line of that width inside a dashed outline', () => {
    const picture = drawn(footBelow({ limb: 'LF', width: 120 }, { mmPerPx: 0.5 }));
    expect(extent(picture.querySelector('.width'))).toBeCloseTo(240, 1);
    expect(picture.querySelector('.sole')).toBeNull();
    expect(texts(picture)).toContain('length not measured');
  });
});

describe('footSide', () => {
  it('draws toe, heel and pastern at their angles, toe and heel at their lengths, the toe of a left foot to the left', () => {
    const picture = drawn(footSide(whole, { mmPerPx: 0.8 }));
    expect(slope(picture.querySelector('.toe'))).toBeCloseTo(51, 1);
    expect(slope(picture.querySelector('.heel'))).toBeCloseTo(46, 1);
    expect(slope(picture.querySelector('.pastern'))).toBeCloseTo(54, 1);
    expect(extent(picture.querySelector('.toe'))).toBeCloseTo(88 / 0.8, 1);
    expect(extent(picture.querySelector('.heel'))).toBeCloseTo(42 / 0.8, 1);
    expect(numbers(picture.querySelector('.toe'), 'x1')[0]).toBeLessThan(
      numbers(picture.querySelector('.heel'), 'x1')[0],
    );
  });

  it('draws a right foot as the mirror image', () => {
    const picture = drawn(footSide({ ...whole, limb: 'RH' }));
    expect(slope(picture.querySelector('.toe'))).toBeCloseTo(180 - 51, 1);
    expect(slope(picture.querySelector('.heel'))).toBeCloseTo(180 - 46, 1);
    expect(numbers(picture.querySelector('.toe'), 'x1')[0]).toBeGreaterThan(
      numbers(picture.querySelector('.heel'), 'x1')[0],
    );
  });

  it('keeps every angle within a tenth of a degree at the smallest scale', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 35, max: 75, noNaN: true }),
        fc.double({ min: 25, max: 75, noNaN: true }),
        (toe, heel) => {
          const picture = drawn(footSide({ ...whole, toeAngle: toe, heelAngle: heel }, { mmPerPx: 2.2 }));
          expect(Math.abs(slope(picture.querySelector('.toe')) - toe)).toBeLessThan(0.1);
          expect(Math.abs(slope(picture.querySelector('.heel')) - heel)).toBeLessThan(0.1);
        },
      ),
      { numRuns: 50, seed: 3 },
    );
  });

  it('runs a line from the toe parallel to the pastern, and lays it on the toe where the axis is straight', () => {
    const broken = drawn(footSide(whole));
    expect(slope(broken.querySelector('.parallel'))).toBeCloseTo(54, 1);
    expect(numbers(broken.querySelector('.parallel'), 'x1', 'y1')).toEqual(
      numbers(broken.querySelector('.toe'), 'x1', 'y1'),
    );
    const straight = drawn(footSide({ ...whole, pasternAngle: 51 }));
    expect(slope(straight.querySelector('.parallel'))).toBeCloseTo(slope(straight.querySelector('.toe')), 2);
  });

  it('sets heel and toe as far apart as the foot is long, on the ground', () => {
    const picture = drawn(footSide(whole, { mmPerPx: 1 }));
    const [toe, toeGround] = numbers(picture.querySelector('.toe'), 'x1', 'y1');
    const [heel, heelGround] = numbers(picture.querySelector('.heel'), 'x1', 'y1');
    expect(heel - toe).toBeCloseTo(128, 1);
    expect([toeGround, heelGround]).toEqual(numbers(picture.querySelector('.ground'), 'y1', 'y2'));
  });

  it('draws no pastern, no parallel, no heel line and no filled horn that was not measured', () => {
    const picture = drawn(footSide({ ...whole, pasternAngle: Number.NaN, heelAngle: Number.NaN }));
    for (const part of ['.pastern', '.parallel', '.heel', '.horn', '.skin'])
      expect(picture.querySelector(part), part).toBeNull();
    expect(texts(picture)).toEqual(expect.arrayContaining(['pastern not measured', 'heel not measured', '51.0°']));
  });

  it('draws only the ground where the toe angle is missing', () => {
    const picture = drawn(footSide({ ...whole, toeAngle: undefined }));
    expect(picture.querySelectorAll('line')).toHaveLength(1);
    expect(texts(picture)).toEqual(['toe angle not measured']);
  });
});

describe.each([
  ['footFront', footFront, 'medialWall', 'lateralWall', -1],
  ['footRear', footRear, 'medialHeel', 'lateralHeel', 1],
] as const)('%s', (_name, draw, medial, lateral, insideOfLeft) => {
  const tilted = (limb: FootShape['limb'], inside: number, outside: number) =>
    drawn(draw({ ...whole, limb, [medial]: inside, [lateral]: outside }, { mmPerPx: 0.8 }));
  const wordAt = (picture: Element, word: string) =>
    numbers([...picture.querySelectorAll('text')].find((text) => text.textContent === word) ?? null, 'x')[0];

  it('tilts the hairline by what was measured, at true scale, up on the higher side', () => {
    for (const limb of limbs)
      for (const [inside, outside] of [
        [50, 40],
        [38, 45],
        [41, 41],
      ]) {
        const [x1, y1, x2, y2] = numbers(
          tilted(limb, inside, outside).querySelector('.hairline'),
          'x1',
          'y1',
          'x2',
          'y2',
        );
        expect(y2 - y1).toBeCloseTo((inside - outside) / 0.8, 1);
        expect(Math.sign(x1 - x2)).toBe(limb.startsWith('L') ? insideOfLeft : -insideOfLeft);
      }
  });

  it('names inside and outside on the sides where they are drawn, the inside towards the horse’s midline', () => {
    for (const limb of limbs) {
      const picture = tilted(limb, 50, 40);
      const side = Math.sign(wordAt(picture, 'inside') - wordAt(picture, 'outside'));
      expect(side).toBe(limb.startsWith('L') ? insideOfLeft : -insideOfLeft);
      const [x1, , x2] = numbers(picture.querySelector('.hairline'), 'x1', 'y1', 'x2');
      expect(Math.sign(x1 - x2)).toBe(side);
    }
  });

  it('puts the number beside the higher side, enlarges a tiny tick fivefold and says so', () => {
    const tiny = tilted('LF', 44, 42);
    expect(extent(tiny.querySelector('.tick.enlarged'))).toBeCloseTo((5 * 2) / 0.8, 1);
    expect(texts(tiny)).toEqual(expect.arrayContaining(['2.0 mm', 'drawn', '×5']));
    const plain = tilted('LF', 42, 54);
    expect(plain.querySelector('.enlarged')).toBeNull();
    expect(extent(plain.querySelector('.tick'))).toBeCloseTo(12 / 0.8, 1);
    const middle = numbers(plain, 'width')[0] / 2;
    const outsideRight = wordAt(plain, 'outside') > middle;
    expect(wordAt(plain, '12.0 mm') > middle).toBe(outsideRight);
  });

  it('leaves a difference too small for any tick to its number', () => {
    const nearly = tilted('LF', 44.2, 44);
    expect(nearly.querySelector('.tick')).toBeNull();
    expect(texts(nearly)).toContain('0.2 mm');
    expect(texts(nearly)).not.toContain('drawn');
  });

  it('draws no tick where there is no difference', () => {
    const level = tilted('LF', 44, 44);
    expect(level.querySelector('.tick')).toBeNull();
    expect(slope(level.querySelector('.hairline'))).toBe(0);
  });

  it('draws no hairline from one height alone', () => {
    const picture = tilted('LF', 44, Number.NaN);
    expect(picture.querySelector('.hairline')).toBeNull();
    expect(picture.querySelector('.level')).toBeNull();
    expect(picture.querySelectorAll('.landmark')).toHaveLength(1);
    expect(picture.querySelector('.missing')).not.toBeNull();
  });
});

describe('footFront', () => {
  it('leans the walls by their own slopes where these were measured', () => {
    const picture = drawn(footFront({ ...whole, medialWallAngle: 90, lateralWallAngle: 60 }, { mmPerPx: 1 }));
    const [x1, y1, x2, y2] = numbers(picture.querySelector('.hairline'), 'x1', 'y1', 'x2', 'y2');
    const horn = box(picture.querySelector('.horn'));
    expect(x1).toBeCloseTo(horn.left, 1);
    expect((Math.atan2(horn.bottom - y2, horn.right - x2) * 180) / Math.PI).toBeCloseTo(60, 0);
    expect(y1).toBeLessThan(y2);
  });
});
