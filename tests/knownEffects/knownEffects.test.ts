import { expect, it } from 'vitest';
import { coveredIn, shares } from './knownEffects.ts';

const seeds = Array.from({ length: 24 }, (_, i) => i + 1);

it('the 95% intervals of known effects hold them in about 95 of 100 herds (24 herds, seeds 1 to 24)', () => {
  const list = shares(seeds.flatMap(coveredIn));
  const covered = list.reduce((sum, each) => sum + each.covered, 0);
  const all = list.reduce((sum, { herds }) => sum + herds, 0);
  expect(all).toBe(24 * 7);
  // By chance a share of 95 of 100 lies between these 99 times in 100.
  expect(covered / all).toBeGreaterThan(0.9);
  expect(covered / all).toBeLessThan(0.995);
  for (const { effect, covered: own, bias, biasError } of list) {
    expect(own, effect).toBeGreaterThanOrEqual(19);
    expect(Math.abs(bias), effect).toBeLessThan(4 * biasError);
  }
}, 240_000);
