import { describe, expect, it } from 'vitest';
import { blocks } from '../../../lib/stats/mixed/blocks.ts';
import { design } from '../../../lib/stats/mixed/design.ts';
import { mixedModel } from '../../../lib/stats/mixed/mixedModel.ts';
import { momentEquations, startingTheta } from '../../../lib/stats/mixed/moments.ts';

const start = (y: number[], columns: Record<string, string[]>, random: { by: string[] }[]) => {
  const model = blocks(design({ ...columns, y: Float64Array.from(y) }, { response: 'y', fixed: [], random }));
  return startingTheta(model, momentEquations(model));
};

describe('the theta that a fit starts from', () => {
  const horse = ['a', 'a', 'b', 'b', 'c', 'c'];
  it('is that of the analysis of variance in a balanced design', () => {
    // Means 2, 6 and 10 about 6: between, 2 · 32 over 2 is 32; within, 3 · 2 over 3 is 2. So 15 over 2 between horses.
    const y = [1, 3, 5, 7, 9, 11];
    expect(start(y, { horse }, [{ by: ['horse'] }])[0]).toBeCloseTo(Math.sqrt(7.5), 12);
    // There restricted maximum likelihood says the same.
    const fit = mixedModel(
      { horse, y: Float64Array.from(y) },
      { response: 'y', fixed: [], random: [{ by: ['horse'] }] },
    );
    expect(fit.random[0].variance).toBeCloseTo(15, 10);
    expect(fit.residualSd ** 2).toBeCloseTo(2, 10);
  });
  it('is that of the analysis of variance for two factors that cross, with one row in each cell', () => {
    // Rows by horse and visit: 1 2 6 / 3 7 5. Horse means 3 and 5, visit means 2, 4.5 and 5.5 about 4.
    // Squares: horses 3 · 2 = 6 over 1; visits 2 · (4 + 0.25 + 2.25) = 13 over 2; all 28, so 9 left over 2.
    // Variances: left 4.5; horses (6 − 4.5) / 3 = 0.5; visits (6.5 − 4.5) / 2 = 1.
    const found = start(
      [1, 2, 6, 3, 7, 5],
      { horse: ['a', 'a', 'a', 'b', 'b', 'b'], visit: ['1', '2', '3', '1', '2', '3'] },
      [{ by: ['horse'] }, { by: ['visit'] }],
    );
    expect(found[0]).toBeCloseTo(Math.sqrt(0.5 / 4.5), 10);
    expect(found[1]).toBeCloseTo(Math.sqrt(1 / 4.5), 10);
  });
  it('is a tenth where the moments give a negative variance', () => {
    expect(start([1, 5, 2, 4, 3, 3], { horse }, [{ by: ['horse'] }])[0]).toBeCloseTo(0.1, 12);
  });
  it('is 1 where nothing is left to compare with', () => {
    expect([...start([1, 1, 2, 2, 3, 3], { horse }, [{ by: ['horse'] }])].every(Number.isFinite)).toBe(true);
  });
});
