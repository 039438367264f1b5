import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Data } from '../../../lib/stats/mixed/design.ts';
import {
  contrast,
  kenwardRogerEffects,
  type MixedModelSpec,
  mixedModel,
  refitModel,
} from '../../../lib/stats/mixed/mixedModel.ts';
import { conditionalModes, fittedValues } from '../../../lib/stats/mixed/solution.ts';
import { random } from '../../../lib/stats/random.ts';
import { denseCriterion, yard } from './data.ts';

const nested: MixedModelSpec = {
  response: 'y',
  fixed: ['x', 'limb'],
  random: [{ by: ['horse', 'limb'] }, { by: ['horse'] }],
};
const near = (found: number, expected: number, relative: number, absolute = 1e-10) =>
  expect(Math.abs(found - expected), `found ${found}, expected ${expected}`).toBeLessThanOrEqual(
    relative * Math.abs(expected) + absolute,
  );

/** The columns of the fixed effects, by hand. */
function fixedColumns({ limb, x }: { limb: readonly string[]; x: Float64Array }): Float64Array[] {
  return [
    new Float64Array(x.length).fill(1),
    x,
    ...['LH', 'RF', 'RH'].map((code) => Float64Array.from(limb, (each) => (each === code ? 1 : 0))),
  ];
}

describe('a fit is the best that the covariance of all rows, written out, allows', () => {
  const shapes: Record<string, MixedModelSpec['random']> = {
    nested: nested.random,
    'crossed within the horse: limbs and visits': [
      { by: ['horse', 'visit'] },
      { by: ['horse', 'limb'] },
      { by: ['horse'] },
    ],
    'crossed with nested: farriers across horses': [...nested.random, { by: ['farrier'] }],
    'crossed within the horse, and farriers across horses': [
      { by: ['horse', 'visit'] },
      { by: ['horse', 'limb'] },
      { by: ['farrier'] },
    ],
    'a slope of its own for each horse, uncorrelated': [{ by: ['horse'], slopes: ['x'], correlated: false }],
    'slopes within the horse and across horses': [
      { by: ['horse'], slopes: ['x'], correlated: false },
      { by: ['farrier'], slopes: ['x'], correlated: false },
    ],
  };
  for (const [name, groups] of Object.entries(shapes))
    for (const method of ['REML', 'ML'] as const)
      it(`${name} (${method})`, () => {
        const data = yard(name.length);
        const model = mixedModel(data, { ...nested, random: groups, method });
        const relative = model.random.map(({ sd }) => sd / model.residualSd);
        const at = (shares: readonly number[]) => denseCriterion(data, fixedColumns(data), groups, shares, method);
        const { criterion, beta, sigma2, inverse } = at(relative);
        near(model.criterion, criterion, 0, 1e-7);
        near(model.residualSd, Math.sqrt(sigma2), 1e-8);
        for (const [i, { estimate, se }] of model.fixed.entries()) {
          near(estimate, beta[i], 1e-7, 1e-9);
          near(se, Math.sqrt(sigma2 * inverse[i][i]), 1e-7);
        }
        expect(model.converged).toBe(true);
        // No better criterion beside it, on either side of any deviation.
        for (let k = 0; k < relative.length; k++)
          for (const change of [0.97, 1.03, 0.5, 2]) {
            const shares = relative.map((share, i) => (i === k ? share * change + (share === 0 ? 0.05 : 0) : share));
            expect(at(shares).criterion).toBeGreaterThan(criterion - 1e-7);
          }
      });
});

describe('mixedModel', () => {
  it('names collinear columns as dropped, keeps those before them, and fits as without', () => {
    const data = { ...yard(3), twice: yard(3).x.map((value) => 2 * value + 1) };
    const model = mixedModel(data, { ...nested, fixed: ['x', 'twice', 'limb'] });
    const plain = mixedModel(data, nested);
    expect(model.dropped).toEqual(['twice']);
    expect(model.fixed.map(({ term }) => term)).toEqual(['(Intercept)', 'x', 'limbLH', 'limbRF', 'limbRH']);
    near(model.criterion, plain.criterion, 1e-12);
    for (const [i, { estimate, se, df }] of model.fixed.entries()) {
      near(estimate, plain.fixed[i].estimate, 1e-9);
      near(se, plain.fixed[i].se, 1e-9);
      near(df, plain.fixed[i].df, 1e-6);
    }
    expect(plain.dropped).toEqual([]);
    expect(plain.parameters).toBe(5 + 2 + 1);
    near(plain.aic, plain.criterion + 16, 1e-12);
    near(plain.bic, plain.criterion + 8 * Math.log(plain.n), 1e-12);
    near(plain.logLik, -plain.criterion / 2, 1e-12);
  });

  it('drops levels that say what another category says already', () => {
    const data = yard(3);
    const side = data.limb.map((limb) => (limb.startsWith('L') ? 'left' : 'right'));
    const model = mixedModel({ ...data, side }, { ...nested, fixed: ['x', 'side', 'limb'] });
    expect(model.dropped).toEqual(['limbRH']);
    const ml = (fixed: string[]) => mixedModel({ ...data, side }, { ...nested, fixed, method: 'ML' }).criterion;
    near(ml(['x', 'side', 'limb']), ml(['x', 'limb']), 1e-10);
  });

  it('leaves out rows with anything missing that it uses, counts them, and looks at no other column', () => {
    const data = yard(4);
    const y = data.y.slice();
    y[0] = Number.NaN;
    y[5] = Number.POSITIVE_INFINITY;
    const x = data.x.slice();
    x[0] = x[7] = Number.NaN;
    const horse = [...data.horse];
    horse[9] = '';
    const unused = new Float64Array(y.length).fill(Number.NaN);
    const model = mixedModel({ ...data, y, x, horse, unused }, nested);
    expect(model.missing).toBe(4);
    expect(model.n).toBe(y.length - 4);
    const kept = (_: unknown, row: number) => ![0, 5, 7, 9].includes(row);
    const fewer: Record<string, Data> = {
      ...Object.fromEntries((['horse', 'limb'] as const).map((name) => [name, data[name].filter(kept)])),
      x: data.x.filter(kept),
      y: data.y.filter(kept),
    };
    near(model.criterion, mixedModel(fewer, nested).criterion, 1e-13);
  });

  it('answers where a variance is zero, and says so', () => {
    const { normal } = random(8);
    const horse = Array.from({ length: 60 }, (_, i) => `h${i % 6}`);
    const y = Float64Array.from(horse, () => normal());
    // Every horse has the same mean, so horses can't vary.
    for (let h = 0; h < 6; h++) {
      const rows = horse.flatMap((name, i) => (name === `h${h}` ? [i] : []));
      const mean = rows.reduce((sum, i) => sum + y[i], 0) / rows.length;
      for (const i of rows) y[i] -= mean;
    }
    const model = mixedModel({ horse, y }, { response: 'y', fixed: [], random: [{ by: ['horse'] }] });
    expect(model.singular).toBe(true);
    expect(model.random[0].sd).toBe(0);
    expect(model.converged).toBe(true);
    const squares = y.reduce((sum, value) => sum + value * value, 0);
    near(model.residualSd, Math.sqrt(squares / 59), 1e-10);
    near(model.fixed[0].df, 59, 1e-8);
    for (const mode of conditionalModes(model.fit)[0].modes) expect(mode[0]).toBeCloseTo(0, 12);
  });

  it('leaves a variance that is not zero when it starts from one that is', () => {
    // A refit must not be caught where the first fit ended: at the boundary the slope is nil.
    const data = yard(5);
    const { normal } = random(2);
    const flat = mixedModel({ ...data, y: data.y.map(() => normal()) }, nested);
    expect(flat.singular).toBe(true);
    const again = refitModel(flat, data.y);
    const fresh = mixedModel(data, nested);
    expect(again.singular).toBe(fresh.singular);
    near(again.criterion, fresh.criterion, 0, 1e-7);
  });

  it('refits another response as a fresh fit would, to its last digits, without touching the first', () => {
    const data = yard(6);
    const other = yard(60);
    const y = data.y.map((value, i) => 3 * value + (other.y[i % other.y.length] ?? 0));
    for (const groups of [
      nested.random,
      [{ by: ['horse', 'visit'] }, { by: ['horse', 'limb'] }, { by: ['farrier'] }],
    ]) {
      const first = mixedModel(data, { ...nested, random: groups });
      const before = first.criterion;
      const again = refitModel(first, y);
      const fresh = mixedModel({ ...data, y }, { ...nested, random: groups });
      near(again.criterion, fresh.criterion, 0, 1e-8);
      for (const [i, { estimate, se, df }] of again.fixed.entries()) {
        near(estimate, fresh.fixed[i].estimate, 1e-7);
        near(se, fresh.fixed[i].se, 1e-7);
        near(df, fresh.fixed[i].df, 1e-4);
      }
      expect(refitModel(first, data.y).criterion).toBeCloseTo(before, 8);
      near(
        refitModel(first, data.y, 'ML').criterion,
        mixedModel(data, { ...nested, random: groups, method: 'ML' }).criterion,
        0,
        1e-7,
      );
    }
  });

  it('gives the same whichever order the rows come in', () => {
    const data = yard(9);
    const order = Array.from(data.y.keys()).sort((a, b) => ((a * 7919) % 101) - ((b * 7919) % 101) || a - b);
    const shuffled: Record<string, Data> = Object.fromEntries(
      Object.entries(data).map(([name, values]) => [
        name,
        values instanceof Float64Array ? Float64Array.from(order, (i) => values[i]) : order.map((i) => values[i]),
      ]),
    );
    const [a, b] = [mixedModel(data, nested), mixedModel(shuffled, nested)];
    near(a.criterion, b.criterion, 1e-12);
    for (const [i, { estimate }] of a.fixed.entries()) near(estimate, b.fixed[i].estimate, 1e-9);
    expect(b.groups).toEqual([
      { by: 'horse:limb', levels: a.groups[0].levels },
      { by: 'horse', levels: 12 },
    ]);
  });

  it('keeps its digits far from zero', () => {
    const data = yard(10);
    const [near0, far] = [
      mixedModel(data, nested),
      mixedModel({ ...data, y: data.y.map((value) => value + 1e8), x: data.x.map((value) => value + 1e4) }, nested),
    ];
    near(far.criterion, near0.criterion, 0, 1e-3);
    near(far.fixed[1].estimate, near0.fixed[1].estimate, 1e-5);
    near(far.fixed[1].se, near0.fixed[1].se, 1e-5);
  });

  it('shifts and scales with the response and the predictor (laws)', () => {
    const spec: MixedModelSpec = { ...nested, random: [{ by: ['horse'], slopes: ['x'] }] };
    const scale = fc.double({ min: 0.01, max: 100, noNaN: true });
    const shift = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), scale, shift, scale, (seed, times, plus, stretch) => {
        const data = yard(seed, { horses: 8 });
        const model = mixedModel(data, spec);
        const y = data.y.map((value) => times * value + plus);
        const x = data.x.map((value) => stretch * value);
        const other = mixedModel({ ...data, y, x }, spec);
        near(other.fixed[1].estimate, (model.fixed[1].estimate * times) / stretch, 1e-4, 1e-8);
        near(other.fixed[1].se, (model.fixed[1].se * times) / stretch, 1e-4);
        near(other.fixed[0].estimate, times * model.fixed[0].estimate + plus, 1e-4, 1e-4 * times);
        near(other.residualSd, times * model.residualSd, 1e-4);
        near(other.random[0].sd, times * model.random[0].sd, 1e-3, 1e-3 * times);
        near(other.random[1].sd, (times * model.random[1].sd) / stretch, 1e-3, (1e-3 * times) / stretch);
        near(other.criterion, model.criterion + 2 * (model.n - 5) * Math.log(times) + 2 * Math.log(stretch), 0, 1e-5);
        expect(other.singular).toBe(model.singular);
      }),
      { numRuns: 25, seed: 4 },
    );
  });

  it('multiplies categories and numbers into interactions', () => {
    const data = yard(11);
    const model = mixedModel(data, { ...nested, fixed: ['x', 'limb', 'x:limb'], random: [{ by: ['horse'] }] });
    expect(model.fixed.map(({ term }) => term).slice(5)).toEqual(['x:limbLH', 'x:limbRF', 'x:limbRH']);
    // The slope of each limb's own rows is the base and its interaction, whatever the coding.
    const crossed = mixedModel(data, { ...nested, fixed: ['limb', 'limb:x'], random: [{ by: ['horse'] }] });
    expect(crossed.dropped).toEqual([]);
    const weights = model.fixed.map(({ term }) => (term === 'x' || term === 'x:limbRF' ? 1 : 0));
    const slope = contrast(model, weights);
    expect(slope.estimate).toBeCloseTo(model.fixed[1].estimate + model.fixed[6].estimate, 10);
    expect(slope.lower).toBeLessThan(slope.estimate);
    near(slope.t, slope.estimate / slope.se, 1e-12);
  });

  it('splits each row into fixed effects, modes and residual, and modes sum to nothing where horses are alike', () => {
    const data = yard(12);
    const { fit, fixed } = mixedModel(data, nested);
    const { fitted, population, residuals } = fittedValues(fit);
    const modes = conditionalModes(fit);
    for (const row of [0, 17, data.y.length - 1]) {
      near(fitted[row] + residuals[row], data.y[row], 1e-10);
      const limb = fixed.find(({ term }) => term === `limb${data.limb[row]}`)?.estimate ?? 0;
      near(population[row], fixed[0].estimate + fixed[1].estimate * data.x[row] + limb, 1e-9);
      const own = modes.reduce((sum, { by, levels, modes: list }) => {
        const name = by === 'horse' ? data.horse[row] : `${data.horse[row]}:${data.limb[row]}`;
        return sum + list[levels.indexOf(name)][0];
      }, 0);
      near(fitted[row], population[row] + own, 1e-9);
    }
    expect(modes.map(({ terms }) => terms)).toEqual([['(Intercept)'], ['(Intercept)']]);
    for (const { modes: list } of modes) expect(list.reduce((sum, [mode]) => sum + mode, 0)).toBeCloseTo(0, 6);
  });

  it('takes names that are words of the language as they are', () => {
    const data = yard(13);
    const words = ['__proto__', 'constructor', 'toString', 'h:1', ' ', '<b>', '=1+1', '🐴'];
    const horse = data.horse.map((name) => words[Number(name.slice(1)) % words.length]);
    const model = mixedModel({ ...data, horse }, nested);
    expect(model.groups[1].levels).toBe(words.length);
    expect(conditionalModes(model.fit)[1].levels).toEqual([...words].sort());
    expect(() => mixedModel(data, { ...nested, fixed: ['__proto__'] })).toThrow(/__proto__; the data has horse, limb/);
    expect(() => mixedModel(data, { ...nested, random: [{ by: ['constructor'] }] })).toThrow(TypeError);
  });

  it('refuses what is no model, and says what would be', () => {
    const data = yard(14);
    const few = Object.fromEntries(Object.entries(data).map(([name, values]) => [name, values.slice(0, 5)]));
    expect(() => mixedModel(few, nested)).toThrow(/fixed terms and only 5 complete rows/);
    expect(() => mixedModel(data, { ...nested, random: [] })).toThrow(/needs a random term/);
    expect(() => mixedModel(data, { ...nested, random: [{ by: [] }] })).toThrow(/at least one grouping column/);
    expect(() => mixedModel(data, { ...nested, response: 'horse' })).toThrow(/horse must be numeric here/);
    expect(() => mixedModel(data, { ...nested, random: [{ by: ['horse'], slopes: ['limb'] }] })).toThrow(
      /limb must be numeric/,
    );
    expect(() => kenwardRogerEffects(mixedModel(data, { ...nested, method: 'ML' }))).toThrow(/fit with method REML/);
  });

  it('agrees with the analysis of variance where the design is balanced', () => {
    // One-way, 10 groups of 4: REML is the expected mean squares solved (Searle, Casella & McCulloch 1992, 3.8).
    const { normal } = random(21);
    const group = Array.from({ length: 40 }, (_, i) => `g${Math.floor(i / 4)}`);
    const effects = Array.from({ length: 10 }, () => 2 * normal());
    const y = Float64Array.from(group, (name) => effects[Number(name.slice(1))] + normal());
    const means = effects.map((_, g) => y.slice(4 * g, 4 * g + 4).reduce((sum, value) => sum + value, 0) / 4);
    const grand = means.reduce((sum, value) => sum + value, 0) / 10;
    const between = (4 * means.reduce((sum, value) => sum + (value - grand) ** 2, 0)) / 9;
    const within = y.reduce((sum, value, i) => sum + (value - means[Math.floor(i / 4)]) ** 2, 0) / 30;
    const model = mixedModel({ group, y }, { response: 'y', fixed: [], random: [{ by: ['group'] }] });
    near(model.residualSd ** 2, within, 1e-8);
    near(model.random[0].variance, (between - within) / 4, 1e-8);
    near(model.fixed[0].estimate, grand, 1e-10);
    near(model.fixed[0].se, Math.sqrt(between / 40), 1e-8);
    near(model.fixed[0].df, 9, 1e-7);
    const [kr] = kenwardRogerEffects(model);
    near(kr.df, 9, 1e-7);
    near(kr.se, Math.sqrt(between / 40), 1e-7);
  });

  it('finds what was put in, over 10,000 rows and more', () => {
    const data = yard(30, { horses: 900, visits: 6 });
    expect(data.y.length).toBeGreaterThan(10_000);
    const groups = [{ by: ['horse', 'visit'] }, { by: ['horse', 'limb'] }, { by: ['horse'] }, { by: ['farrier'] }];
    const model = mixedModel(data, { ...nested, random: groups });
    expect(model.converged).toBe(true);
    const sds = Object.fromEntries(model.random.map(({ by, sd }) => [by, sd]));
    near(sds['horse:visit'], 0.5, 0.1);
    near(sds['horse:limb'], 0.7, 0.1);
    near(sds.horse, 1, 0.15);
    near(model.residualSd, 1, 0.05);
    const { estimate, se } = model.fixed[1];
    expect(Math.abs(estimate - 0.4)).toBeLessThan(3 * se);
  });
});
