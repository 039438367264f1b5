import { describe, expect, it } from 'vitest';
import { blocks } from '../../../lib/stats/mixed/blocks.ts';
import { design, type RandomSpec } from '../../../lib/stats/mixed/design.ts';
import { criterion, factor } from '../../../lib/stats/mixed/factor.ts';
import { slopes } from '../../../lib/stats/mixed/optimise.ts';
import { random } from '../../../lib/stats/random.ts';
import { yard } from './data.ts';

const shapes: Record<string, readonly RandomSpec[]> = {
  'limbs within horses': [{ by: ['horse', 'limb'] }, { by: ['horse'] }],
  'limbs and visits that cross within horses': [
    { by: ['horse', 'visit'] },
    { by: ['horse', 'limb'] },
    { by: ['horse'] },
  ],
  'farriers across horses': [{ by: ['horse', 'limb'] }, { by: ['horse'] }, { by: ['farrier'] }],
  'farriers and visits across each other, without horses': [{ by: ['farrier'] }, { by: ['visit'] }],
  'correlated slopes of horses': [{ by: ['horse'], slopes: ['x'] }],
  'correlated slopes of farriers, crossed with feet': [{ by: ['farrier'], slopes: ['x'] }, { by: ['horse', 'limb'] }],
  'correlated slopes on two levels and across': [
    { by: ['horse', 'limb'], slopes: ['x'] },
    { by: ['horse'], slopes: ['x'] },
    { by: ['farrier'], slopes: ['x'] },
  ],
  'slopes without correlation': [{ by: ['horse'], slopes: ['x'], correlated: false }],
};

describe.each(Object.entries(shapes))('the slope and curvature of the criterion: %s', (name, groups) => {
  const model = blocks(design(yard(17, { horses: 7 }), { response: 'y', fixed: ['x', 'limb'], random: groups }));
  const { uniform } = random(name.length);
  const points = [0, 1, 2].map((turn) =>
    Float64Array.from({ length: model.parameters }, () => (turn === 0 ? 0.8 : 0.1) + uniform()),
  );
  it.each(['REML', 'ML'] as const)('%s agrees with differences', (method) => {
    for (const theta of points) {
      const at = (shift: (i: number) => number) => {
        const moved = theta.map((value, i) => value + shift(i));
        return criterion(model, factor(model, moved), method);
      };
      const { gradient, hessian } = slopes(model, theta, factor(model, theta), method);
      const step = 1e-4;
      const m = theta.length;
      for (let i = 0; i < m; i++) {
        const slope = (at((k) => (k === i ? step : 0)) - at((k) => (k === i ? -step : 0))) / (2 * step);
        expect(Math.abs(gradient[i] - slope)).toBeLessThan(1e-5 * Math.max(1, Math.abs(slope)));
        for (let j = 0; j < m; j++) {
          const both = (a: number, b: number) => at((k) => (k === i ? a * step : 0) + (k === j ? b * step : 0));
          const curve = (both(1, 1) - both(1, -1) - both(-1, 1) + both(-1, -1)) / (4 * step * step);
          expect(Math.abs(hessian[i * m + j] - curve)).toBeLessThan(2e-4 * Math.max(1, Math.abs(curve)));
        }
      }
    }
  });
});

describe('the criterion', () => {
  it('is the same whichever sign a standard deviation has', () => {
    const model = blocks(
      design(yard(2), { response: 'y', fixed: ['x'], random: [{ by: ['horse', 'limb'] }, { by: ['horse'] }] }),
    );
    const at = (...theta: number[]) => criterion(model, factor(model, Float64Array.from(theta)), 'REML');
    expect(at(-0.7, 0.3)).toBeCloseTo(at(0.7, 0.3), 10);
    expect(at(0.7, -0.3)).toBeCloseTo(at(0.7, 0.3), 10);
  });
});
