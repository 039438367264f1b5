import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Range } from '../../lib/hoof/measure.ts';
import { verdict } from '../../lib/hoof/verdict.ts';

const firm = { source: 'turner-balance', firmness: 'published' } as const;
const atMost5: Range = { atMost: 5, above: 'underrun', ...firm };

describe('a verdict', () => {
  it('is within for a value on the limit', () => {
    expect(verdict(5, 1, atMost5).state).toBe('within');
  });

  it('is beyond only where the value passes the limit by more than 1.96 standard errors', () => {
    expect(verdict(5 + 1.97, 1, atMost5)).toMatchObject({ state: 'beyond', side: 'above', word: 'underrun' });
    expect(verdict(5 + 1.95, 1, atMost5).state).toBe("can't tell");
    expect(verdict(1.96, 1, { ...atMost5, atMost: 0 }).state).toBe("can't tell");
  });

  it('can’t be told where the error is unknown', () => {
    expect(verdict(40, Number.NaN, atMost5)).toMatchObject({ state: "can't tell", by: 35 });
    expect(verdict(40, Number.NaN, atMost5).repeats).toBeUndefined();
  });

  it('never calls a missing value a pass or a flag', () => {
    expect(verdict(Number.NaN, 1, atMost5).state).toBe('missing');
    expect(verdict(9, 1, undefined).state).toBe('no range');
  });

  it('says which side a value lies on', () => {
    const both: Range = { atLeast: -5, atMost: 5, below: 'outside high', above: 'inside high', ...firm };
    expect(verdict(-9, 0.1, both)).toMatchObject({ state: 'beyond', side: 'below', word: 'outside high', by: 4 });
  });

  it('on a limit that lies outside is outside, and no number of repeats would tell', () => {
    const sheared: Range = { atLeast: -5, atMost: 5, limitsOutside: true, ...firm };
    expect(verdict(5, 1, sheared)).toMatchObject({ state: "can't tell", side: 'above' });
    expect(verdict(5, 1, sheared).repeats).toBeUndefined();
    expect(verdict(5, 0, sheared).state).toBe('beyond');
    expect(verdict(4.9999, 0, sheared).state).toBe('within');
  });

  it('names the number of repeats that tells, and one less that would not', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 3, noNaN: true }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        fc.integer({ min: 1, max: 4 }),
        (by, reading, readings) => {
          const now = verdict(5 + by, reading / Math.sqrt(readings), atMost5, readings);
          fc.pre(now.repeats !== undefined);
          const withRepeats = (n: number): string => verdict(5 + by, reading / Math.sqrt(n), atMost5, n).state;
          expect(withRepeats(now.repeats! + 1)).toBe('beyond');
          expect(withRepeats(now.repeats! - 1)).toBe("can't tell");
        },
      ),
    );
  });
});
