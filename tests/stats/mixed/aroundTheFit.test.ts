import { describe, expect, it } from 'vitest';
import { compareModels } from '../../../lib/stats/mixed/compare.ts';
import { leaveOneOut } from '../../../lib/stats/mixed/leaveOneOut.ts';
import { type MixedModelSpec, mixedModel } from '../../../lib/stats/mixed/mixedModel.ts';
import { parametricBootstrap } from '../../../lib/stats/mixed/parametricBootstrap.ts';
import { profileIntervals } from '../../../lib/stats/mixed/profile.ts';
import { rSquared } from '../../../lib/stats/mixed/rSquared.ts';
import { simulator } from '../../../lib/stats/mixed/simulate.ts';
import { simulatedPower } from '../../../lib/stats/mixed/simulatedPower.ts';
import { powerOfEstimate } from '../../../lib/stats/powerOfEstimate.ts';
import { random } from '../../../lib/stats/random.ts';
import { slopeDesign } from '../../../lib/stats/slopeDesign.ts';
import { yard } from './data.ts';

const spec: MixedModelSpec = {
  response: 'y',
  fixed: ['x', 'limb'],
  random: [{ by: ['horse', 'limb'] }, { by: ['horse'] }],
};

describe('leaveOneOut', () => {
  const data = yard(1);

  it('gives for each group what a fit without its rows gives', () => {
    const left = leaveOneOut(data, spec, 'horse');
    expect(left.map(({ group }) => group)).toEqual([...new Set(data.horse)]);
    const kept = (_: unknown, row: number) => data.horse[row] !== 'h3';
    const without = mixedModel(
      { horse: data.horse.filter(kept), limb: data.limb.filter(kept), x: data.x.filter(kept), y: data.y.filter(kept) },
      spec,
    );
    const h3 = left.find(({ group }) => group === 'h3')!;
    expect(h3.n).toBe(without.n);
    expect(h3.fixed.map(({ term }) => term)).toEqual(without.fixed.map(({ term }) => term));
    for (const [i, { estimate, se }] of h3.fixed.entries()) {
      expect(estimate).toBeCloseTo(without.fixed[i].estimate, 9);
      expect(se).toBeCloseTo(without.fixed[i].se, 9);
    }
  });

  it('shows the horse that carries the effect', () => {
    const y = data.y.map((value, i) => value + (data.horse[i] === 'h3' ? 5 * data.x[i] : 0));
    const all = mixedModel({ ...data, y }, spec).fixed[1].estimate;
    const moved = leaveOneOut({ ...data, y }, spec, 'horse').map(({ group, fixed }) => ({
      group,
      by: Math.abs(fixed[1].estimate - all),
    }));
    expect(moved.sort((a, b) => b.by - a.by)[0].group).toBe('h3');
  });

  it('passes over a group without which the model has too few rows, and stops when told', () => {
    const few = {
      g: ['a', 'a', 'a', 'a', 'b', 'c'],
      y: Float64Array.of(1, 2, 3, 5, 2, 4),
      x: Float64Array.of(0, 1, 2, 3, 1, 2),
    };
    const small: MixedModelSpec = { response: 'y', fixed: ['x'], random: [{ by: ['g'] }] };
    expect(leaveOneOut(few, small, 'g').map(({ group }) => group)).toEqual(['b', 'c']);
    const seen: number[][] = [];
    const stopped = leaveOneOut(data, spec, 'horse', (done, total) => {
      seen.push([done, total]);
      return done < 2;
    });
    expect(stopped).toHaveLength(2);
    expect(seen).toEqual([
      [1, 12],
      [2, 12],
    ]);
    expect(() => leaveOneOut(data, spec, 'hoof')).toThrow(/no column hoof/);
  });
});

describe('simulatedPower', () => {
  const places = [-1.5, -0.5, 0.5, 1.5];
  const plan = { horse: [] as string[], limb: [] as string[], within: [] as number[] };
  for (let h = 0; h < 8; h++)
    for (const limb of ['LF', 'RF'])
      for (const place of places) {
        plan.horse.push(`h${h}`);
        plan.limb.push(limb);
        plan.within.push(place);
      }
  const columns = { ...plan, within: Float64Array.from(plan.within) };
  const model: MixedModelSpec = {
    response: 'y',
    fixed: ['within'],
    random: [{ by: ['horse', 'limb'] }, { by: ['horse'] }],
  };
  const truth = { fixed: { within: 0.25 }, random: [0.5, 0.8], residualSd: 1 };
  const { se, df } = slopeDesign({ groups: 8, units: 2, places, residualSd: 1 });

  it('comes to the closed form of a balanced design, within what the replicates leave open', () => {
    const exact = powerOfEstimate(0.25, se, df);
    const found = simulatedPower(columns, model, { term: 'within', truth, replicates: 600, seed: 3 });
    expect(found.lower).toBeLessThan(exact);
    expect(found.upper).toBeGreaterThan(exact);
    expect(found.lower).toBeLessThan(found.power);
    expect(Math.abs(found.mean - 0.25)).toBeLessThan((4 * se) / Math.sqrt(600));
    expect(found.sd / se).toBeGreaterThan(0.9);
    expect(found.sd / se).toBeLessThan(1.1);
    expect(found.replicates).toBe(600);
  });

  it('sees nothing where there is nothing, five times in a hundred', () => {
    const none = simulatedPower(columns, model, {
      term: 'within',
      truth: { ...truth, fixed: {} },
      replicates: 1500,
      seed: 3,
    });
    expect(none.power).toBeGreaterThan(0.03);
    expect(none.power).toBeLessThan(0.07);
  });

  it('gives the same for the same seed, tells how far it is, and stops when told', () => {
    const few = { term: 'within', truth, replicates: 20, seed: 9 } as const;
    expect(simulatedPower(columns, model, few)).toEqual(simulatedPower(columns, model, few));
    expect(simulatedPower(columns, model, { ...few, seed: 10 })).not.toEqual(simulatedPower(columns, model, few));
    const calls: number[] = [];
    const stopped = simulatedPower(columns, model, {
      ...few,
      onProgress: (done, total) => {
        calls.push(done, total);
        return done < 4;
      },
    });
    expect(stopped.replicates).toBe(4);
    expect(calls).toEqual([1, 20, 2, 20, 3, 20, 4, 20]);
  });

  it('refuses a term that is not in the model and a truth that lacks a deviation', () => {
    expect(() => simulatedPower(columns, model, { term: 'between', truth, seed: 1 })).toThrow(
      /no term between; it has \(Intercept\), within/,
    );
    expect(() => simulatedPower(columns, model, { term: 'within', truth: { ...truth, random: [1] }, seed: 1 })).toThrow(
      /2 random coefficients, the truth 1/,
    );
  });
});

describe('simulator and parametricBootstrap', () => {
  it('draws responses with the variances of the model', () => {
    const data = yard(20, { horses: 60 });
    const model = mixedModel(data, { ...spec, random: [{ by: ['horse'], slopes: ['x'] }, { by: ['horse', 'limb'] }] });
    const { normal } = random(1);
    const draw = simulator(model, normal);
    const draws = Array.from({ length: 400 }, draw);
    const { covariance } = {
      covariance: (i: number, j: number) =>
        mean(draws.map((y) => y[i] * y[j])) - mean(draws.map((y) => y[i])) * mean(draws.map((y) => y[j])),
    };
    const of = (by: string, term: string) =>
      model.random.find((each) => each.by === by && each.term === term)!.variance;
    const cross = model.correlations[0].correlation * Math.sqrt(of('horse', '(Intercept)') * of('horse', 'x'));
    const share = (i: number, j: number) =>
      of('horse', '(Intercept)') + (data.x[i] + data.x[j]) * cross + data.x[i] * data.x[j] * of('horse', 'x');
    const [i] = [0];
    const j = data.limb.findIndex((limb, row) => row > i && limb !== data.limb[i] && data.horse[row] === data.horse[i]);
    const total = share(i, i) + of('horse:limb', '(Intercept)') + model.residualSd ** 2;
    expect(Math.abs(covariance(i, i) - total)).toBeLessThan(0.3 * total);
    expect(Math.abs(covariance(i, j) - share(i, j))).toBeLessThan(0.25 * total);
    const far = data.horse.findIndex((horse) => horse !== data.horse[0]);
    expect(Math.abs(covariance(0, far))).toBeLessThan(0.2 * total);
  });

  it('gives intervals near the ones of the model, the same for the same seed, as many replicates as were let run', () => {
    const model = mixedModel(yard(21, { horses: 20 }), spec);
    const run = () => parametricBootstrap(model, { replicates: 200, seed: 4 });
    const { fixed, random: groups, residualSd, n } = run();
    expect(n).toBe(200);
    expect(fixed.map(({ term }) => term)).toEqual(model.fixed.map(({ term }) => term));
    for (const [i, { se, lower, upper, estimate }] of fixed.entries()) {
      expect(estimate).toBe(model.fixed[i].estimate);
      expect(se / model.fixed[i].se).toBeGreaterThan(0.8);
      expect(se / model.fixed[i].se).toBeLessThan(1.25);
      expect(Math.abs(lower - model.fixed[i].lower)).toBeLessThan(model.fixed[i].se);
      expect(Math.abs(upper - model.fixed[i].upper)).toBeLessThan(model.fixed[i].se);
    }
    expect(groups.map(({ by }) => by)).toEqual(['horse:limb', 'horse']);
    expect(residualSd.lower).toBeLessThan(model.residualSd);
    expect(residualSd.upper).toBeGreaterThan(model.residualSd);
    expect(run()).toEqual(run());
    const stopped = parametricBootstrap(model, { replicates: 50, seed: 4, onProgress: (done) => done < 7 });
    expect(stopped.n).toBe(7);
  });

  it('agrees with profiles on how far a deviation may be from its estimate', () => {
    const model = mixedModel(yard(22, { horses: 25 }), { ...spec, method: 'ML' });
    const profiled = profileIntervals(model).find(({ kind }) => kind === 'residual sd')!;
    const { residualSd } = parametricBootstrap(model, { replicates: 300, seed: 2 });
    expect(Math.abs(residualSd.lower / profiled.lower - 1)).toBeLessThan(0.06);
    expect(Math.abs(residualSd.upper / profiled.upper - 1)).toBeLessThan(0.06);
  });
});

describe('compareModels and rSquared', () => {
  const data = yard(23);

  it('gives twice the gain in log likelihood against the parameters it cost', () => {
    const of = (fixed: string[], method: 'REML' | 'ML' = 'ML') => mixedModel(data, { ...spec, fixed, method });
    const [small, large] = [of(['x']), of(['x', 'limb'])];
    const { chiSquared, df, p } = compareModels(small, large);
    expect(chiSquared).toBeCloseTo(2 * (large.logLik - small.logLik), 9);
    expect(df).toBe(3);
    expect(p).toBeGreaterThan(0);
    expect(p).toBeLessThan(1);
    expect(compareModels(large, large)).toEqual({ chiSquared: 0, df: 0, p: expect.any(Number) });
    expect(() => compareModels(of(['x'], 'REML'), large)).toThrow(/method ML/);
    const fewer = mixedModel(
      { ...data, y: data.y.map((value, i) => (i === 0 ? NaN : value)) },
      { ...spec, method: 'ML' },
    );
    expect(() => compareModels(fewer, large)).toThrow(/fit both to the same rows/);
  });

  it('shares out the variance as the formulas of Nakagawa and Schielzeth have it', () => {
    const model = mixedModel(data, spec);
    const { marginal, conditional } = rSquared(model);
    const limb = (code: string) => model.fixed.find(({ term }) => term === `limb${code}`)?.estimate ?? 0;
    const population = Array.from(data.x, (x, i) => model.fixed[1].estimate * x + limb(data.limb[i]));
    const middle = mean(population);
    const fixed = population.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (population.length - 1);
    const groups = model.random.reduce((sum, { variance }) => sum + variance, 0);
    const total = fixed + groups + model.residualSd ** 2;
    expect(marginal).toBeCloseTo(fixed / total, 10);
    expect(conditional).toBeCloseTo((fixed + groups) / total, 10);
  });

  it('counts a slope’s variance at each row, with its covariance', () => {
    const model = mixedModel(data, { ...spec, random: [{ by: ['horse'], slopes: ['x'] }] });
    const [{ sd: a }, { sd: b }] = model.random;
    const rho = model.correlations[0].correlation;
    const groups = mean(Array.from(data.x, (x) => a * a + 2 * x * rho * a * b + (x * b) ** 2));
    const { marginal, conditional } = rSquared(model);
    const total = (groups + model.residualSd ** 2) / (1 - marginal);
    expect(conditional - marginal).toBeCloseTo(groups / total, 8);
  });
});

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
