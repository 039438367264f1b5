import { describe, expect, it } from 'vitest';
import { newton } from '../../../lib/stats/mixed/newton.ts';

/** A function of one variable as the optimiser sees it. */
const line = (value: (x: number) => number, slope: (x: number) => number, curve: (x: number) => number) => {
  let calls = 0;
  const at = ([x]: Float64Array) => {
    calls++;
    return {
      value: value(x),
      slopes: () => ({ gradient: Float64Array.of(slope(x)), hessian: Float64Array.of(curve(x)) }),
      extra: x,
    };
  };
  return { at, calls: () => calls };
};

describe('newton', () => {
  it('finds the minimum of a parabola in one step, and stays there', () => {
    const { at, calls } = line(
      (x) => (x - 1.5) ** 2,
      (x) => 2 * (x - 1.5),
      () => 2,
    );
    const { x, value, extra, converged, iterations } = newton(Float64Array.of(1), at);
    expect(x[0]).toBe(1.5);
    expect({ value, extra, converged, iterations }).toEqual({ value: 0, extra: 1.5, converged: true, iterations: 2 });
    expect(calls()).toBe(3);
  });

  it('does not step across to the mirror image of a point where the value is the same', () => {
    // At 1 the curvature is nil, so that the full step is cut to a length of 2 and would land on −1.
    const { at } = line(
      (x) => Math.log(1 + x * x),
      (x) => (2 * x) / (1 + x * x),
      (x) => (2 - 2 * x * x) / (1 + x * x) ** 2,
    );
    const { x, converged } = newton(Float64Array.of(1), at);
    expect(converged).toBe(true);
    expect(Math.abs(x[0])).toBeLessThan(1e-6);
  });

  it('goes down where the curvature is negative', () => {
    const { at } = line(
      (x) => Math.cos(x),
      (x) => -Math.sin(x),
      (x) => -Math.cos(x),
    );
    const { x, value } = newton(Float64Array.of(0.3), at);
    expect(x[0]).toBeCloseTo(Math.PI, 6);
    expect(value).toBe(-1);
  });

  it('leaves a saddle in two variables', () => {
    const at = ([x, y]: Float64Array) => ({
      value: x * x + (y * y - 1) ** 2,
      slopes: () => ({
        gradient: Float64Array.of(2 * x, 4 * y * (y * y - 1)),
        hessian: Float64Array.of(2, 0, 0, 12 * y * y - 4),
      }),
      extra: undefined,
    });
    const { x, value, converged } = newton(Float64Array.of(0.5, 0.01), at);
    expect(converged).toBe(true);
    expect(value).toBeLessThan(1e-12);
    expect(x[1]).toBeCloseTo(1, 6);
  });

  it('says that it did not converge where no step goes down', () => {
    const { at } = line(
      (x) => x * x,
      (x) => -2 * x,
      () => 2,
    );
    const { x, converged } = newton(Float64Array.of(1), at);
    expect(converged).toBe(false);
    expect(x[0]).toBe(1);
  });

  it('has nothing to do without variables', () => {
    const { converged, iterations, value } = newton(new Float64Array(), () => ({
      value: 7,
      slopes: () => ({ gradient: new Float64Array(), hessian: new Float64Array() }),
      extra: 0,
    }));
    expect({ converged, iterations, value }).toEqual({ converged: true, iterations: 0, value: 7 });
  });
});
