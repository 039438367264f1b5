import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { accents, cssVariables, grounds, inks, roles, tissues } from '../../lib/views/theme.ts';

type Triple = readonly [number, number, number];
type Matrix = readonly [Triple, Triple, Triple];

/**
 * Full-strength simulation of the three kinds of colour blindness in linear RGB:
 * Machado, Oliveira & Fernandes 2009, IEEE Transactions on Visualization and Computer Graphics 15(6):1291-1298,
 * doi:10.1109/TVCG.2009.113, severity 1.0.
 */
const sights: Record<string, Matrix> = {
  'full colour vision': [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

/** IEC 61966-2-1: `#rrggbb` to linear RGB in 0..1. */
function linear(colour: string): Triple {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return [r, g, b];
}

/** WCAG 2.2, contrast ratio. */
function contrast(a: string, b: string): number {
  const [light, dark] = [a, b]
    .map((colour) => linear(colour).reduce((sum, c, i) => sum + c * [0.2126, 0.7152, 0.0722][i], 0))
    .sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

/** CIE 1976 L*a*b* under D65, from linear RGB. */
function lab(rgb: readonly number[]): Triple {
  const [r, g, b] = rgb.map((c) => Math.min(1, Math.max(0, c)));
  const f = (t: number) => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const x = f((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047);
  const y = f(0.2126729 * r + 0.7151522 * g + 0.072175 * b);
  const z = f((0.0193339 * r + 0.119192 * g + 0.9503041 * b) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

function seen(colour: string, sight: Matrix): Triple {
  const rgb = linear(colour);
  return lab(sight.map((row) => row.reduce((sum, weight, i) => sum + weight * rgb[i], 0)));
}

function difference(a: string, b: string, sight: Matrix): number {
  const [p, q] = [seen(a, sight), seen(b, sight)];
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}

describe('the theme', () => {
  it('has the known contrast of black on white and of a colour with itself, so the measure is right', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
    expect(contrast('#8c2d24', '#8c2d24')).toBe(1);
  });

  it('has the known L*a*b* of sRGB red, so the difference is right', () => {
    const [l, a, b] = lab(linear('#ff0000'));
    expect(l).toBeCloseTo(53.24, 1);
    expect(a).toBeCloseTo(80.09, 1);
    expect(b).toBeCloseTo(67.2, 1);
  });

  for (const [ground, colour] of Object.entries(grounds)) {
    it(`writes every word at 4.5 to 1 or more on ${ground}`, () => {
      for (const word of [inks.ink, inks.soft, roles.link]) expect(contrast(word, colour)).toBeGreaterThanOrEqual(4.5);
    });
  }

  for (const tissue of ['horn', 'sole', 'skin', 'frog'] as const) {
    it(`writes words that stand on ${tissue} at 4.5 to 1 or more`, () => {
      expect(contrast(inks.ink, tissues[tissue])).toBeGreaterThanOrEqual(4.5);
    });
  }

  it('draws every mark, meaningful border and outline of a foot at 3 to 1 or more on page and card', () => {
    for (const mark of [...Object.values(accents), ...Object.values(roles), inks.edge, tissues.line])
      for (const ground of [grounds.paper, grounds.card]) expect(contrast(mark, ground)).toBeGreaterThanOrEqual(3);
  });

  it('draws the measured line at 3 to 1 or more on the horn it crosses', () => {
    expect(contrast(roles.measured, tissues.horn)).toBeGreaterThanOrEqual(3);
    expect(contrast(roles.beyond, tissues.horn)).toBeGreaterThanOrEqual(3);
  });

  for (const [sight, matrix] of Object.entries(sights)) {
    it(`keeps every two accents apart in ${sight}`, () => {
      const colours = Object.entries(accents);
      for (const [i, [a, first]] of colours.entries())
        for (const [b, second] of colours.slice(i + 1))
          expect(difference(first, second, matrix), `${a} and ${b}`).toBeGreaterThanOrEqual(15);
    });
  }

  it('is the only file of the views that names a colour', () => {
    const folder = new URL('../../lib/views/', import.meta.url);
    for (const file of readdirSync(folder).filter((name) => name !== 'theme.ts')) {
      const text = readFileSync(new URL(file, folder), 'utf8');
      expect(
        text.match(/['"`](#[0-9a-f]{3,8}|rgba?\(.*|hsla?\(.*|black|white|red|green|blue|gr[ae]y)['"`]/gi),
        file,
      ).toBeNull();
    }
  });

  it('has the colours that docs/look.md names, and no others', () => {
    const text = readFileSync(new URL('../../docs/look.md', import.meta.url), 'utf8');
    const told = new Set(text.match(/#[0-9a-f]{6}\b/g));
    expect(told).toEqual(new Set([grounds, inks, accents, tissues].flatMap((group) => Object.values(group))));
  });

  it('hands every value to the style sheet once, as a custom property', () => {
    const lines = cssVariables().trimEnd().split('\n');
    for (const line of lines) expect(line).toMatch(/^--[a-z][a-z-]*: [^;]+;$/);
    const names = lines.map((line) => line.split(':')[0]);
    expect(new Set(names).size).toBe(names.length);
    expect(lines).toContain(`--on-purpose: ${accents.heather};`);
    expect(lines).toContain('--size-body: 1.0625rem;');
    expect(lines).toContain('--space-near: 12px;');
  });
});
