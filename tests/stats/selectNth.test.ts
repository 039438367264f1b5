import fc from 'fast-check';
import { expect, it } from 'vitest';
import { inversions } from '../../lib/stats/inversions.ts';
import { selectNth } from '../../lib/stats/selectNth.ts';

const few = fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 1, maxLength: 40 });

it('selectNth puts the nth in its place, smaller ones before it', () => {
  fc.assert(
    fc.property(few, fc.nat(), (numbers, pick) => {
      const n = pick % numbers.length;
      const values = Float64Array.from(numbers);
      expect(selectNth(values, n)).toBe([...numbers].sort((a, b) => a - b)[n]);
      expect(values[n]).toBe([...numbers].sort((a, b) => a - b)[n]);
      for (let i = 0; i < n; i++) expect(values[i]).toBeLessThanOrEqual(values[n]);
      for (let i = n; i < values.length; i++) expect(values[i]).toBeGreaterThanOrEqual(values[n]);
    }),
  );
});
it('inversions counts pairs in the wrong order and leaves them sorted', () => {
  fc.assert(
    fc.property(few, (numbers) => {
      let expected = 0;
      for (let i = 0; i < numbers.length; i++) for (let j = 0; j < i; j++) if (numbers[j] > numbers[i]) expected++;
      const values = Float64Array.from(numbers);
      expect(inversions(values)).toBe(expected);
      expect([...values]).toEqual([...numbers].sort((a, b) => a - b));
    }),
  );
});
