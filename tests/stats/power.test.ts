import { describe, expect, it } from 'vitest';
import { detectableEffect, powerOfEstimate } from '../../lib/stats/powerOfEstimate.ts';
import { pairsNeeded, powerOfMeans } from '../../lib/stats/powerOfMeans.ts';
import { slopeDesign } from '../../lib/stats/slopeDesign.ts';

describe('power', () => {
  it('is the level where there is no effect, whichever tails count', () => {
    expect(powerOfEstimate(0, 1, 20)).toBeCloseTo(0.05, 10);
    expect(powerOfEstimate(0, 1, 20, { bothTails: false })).toBeCloseTo(0.025, 10);
    expect(powerOfEstimate(0, 1, 20, { sides: 1 })).toBeCloseTo(0.05, 10);
    expect(powerOfEstimate(0, 1, 20, { level: 0.01 })).toBeCloseTo(0.01, 10);
  });

  it('does not care for the sign of an effect that is looked for on both sides, and does on one', () => {
    expect(powerOfEstimate(-2, 1, 20)).toBeCloseTo(powerOfEstimate(2, 1, 20), 12);
    expect(powerOfEstimate(-2, 1, 20, { sides: 1 })).toBeLessThan(0.001);
  });

  it('rises with the effect and with the pairs, and the two solutions undo it', () => {
    expect(powerOfMeans(20, 1, 2)).toBeGreaterThan(powerOfMeans(19, 1, 2));
    expect(powerOfMeans(20, 1.1, 2)).toBeGreaterThan(powerOfMeans(20, 1, 2));
    expect(powerOfMeans(pairsNeeded(1, 2, 0.9), 1, 2)).toBeCloseTo(0.9, 9);
    expect(powerOfEstimate(detectableEffect(0.3, 14, 0.85), 0.3, 14)).toBeCloseTo(0.85, 9);
  });

  it('has none of one pair, and no number of pairs shows a difference of zero', () => {
    expect(powerOfMeans(1, 1, 1)).toBeNaN();
    expect(pairsNeeded(0, 1, 0.8)).toBeNaN();
  });

  it('measures places from their mean, wherever they lie', () => {
    const plan = { groups: 6, units: 4, residualSd: 1.2 };
    expect(slopeDesign({ ...plan, places: [4, 6, 9] }).se).toBeCloseTo(
      slopeDesign({ ...plan, places: [-2, 0, 3] }).se,
      12,
    );
    const { se, df } = slopeDesign({ groups: 6, places: [0, 1], residualSd: 1 });
    expect(se).toBeCloseTo(Math.sqrt(1 / 3), 12);
    expect(df).toBe(5);
  });
});
