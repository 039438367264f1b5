import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Data } from '../../../lib/stats/mixed/design.ts';
import type { FittedModel } from '../../../lib/stats/mixed/fittedModel.ts';
import { type MixedModelSpec, mixedModel } from '../../../lib/stats/mixed/mixedModel.ts';
import { ModelSums } from '../../../lib/stats/mixed/modelSums.ts';
import { conditionalModes } from '../../../lib/stats/mixed/solution.ts';
import type { ModelSumsSpec } from '../../../lib/stats/mixed/sumSpec.ts';
import { random } from '../../../lib/stats/random.ts';
import { yard } from './data.ts';

type Columns = Record<string, Data>;
const horse = { by: ['horse'] };
const foot = { by: ['horse', 'limb'] };
const feet: MixedModelSpec = { response: 'y', fixed: ['x', 'limb'], random: [foot, horse] };

/** Some of the rows of a table. */
function taken(columns: Columns, rows: readonly number[]): Columns {
  return Object.fromEntries(
    Object.entries(columns).map(([name, values]) => [
      name,
      values instanceof Float64Array ? Float64Array.from(rows, (row) => values[row]) : rows.map((row) => values[row]),
    ]),
  );
}

const rowsOf = (columns: Columns) => Array.from(Object.values(columns)[0] as ArrayLike<unknown>, (_, row) => row);

/** Everything that a model says, apart from how it got there. */
function said({ fit: { design, theta, variance }, ...model }: FittedModel) {
  return { ...model, theta, variance, levels: design.random.map(({ levels }) => levels) };
}

/** The same model of the same rows, from the rows and from sums. */
function expectSame(sums: FittedModel, rows: FittedModel, relative = 1e-9): void {
  const near = (found: number, expected: number, scale = 0) =>
    expect(Math.abs(found - expected), `found ${found}, expected ${expected}`).toBeLessThanOrEqual(
      relative * (Math.abs(expected) + scale),
    );
  expect(sums.fixed.map(({ term }) => term)).toEqual(rows.fixed.map(({ term }) => term));
  for (const [i, effect] of rows.fixed.entries()) {
    const { estimate, se, df, t, p, lower, upper } = sums.fixed[i];
    near(estimate, effect.estimate, effect.se);
    near(lower, effect.lower, effect.se);
    near(upper, effect.upper, effect.se);
    near(se, effect.se);
    near(df, effect.df);
    near(t, effect.t, 1);
    near(p, effect.p, 1);
  }
  for (const [i, value] of rows.covariance.entries()) near(sums.covariance[i], value, rows.covariance[0]);
  expect(sums.random.map(({ by, term }) => [by, term])).toEqual(rows.random.map(({ by, term }) => [by, term]));
  // Where the criterion is flat, at a deviation of zero, the last digits of theta are anybody's.
  for (const [i, { sd }] of rows.random.entries()) near(sums.random[i].sd, sd, 100 * rows.residualSd);
  for (const [i, { correlation }] of rows.correlations.entries())
    if (Number.isFinite(correlation)) near(sums.correlations[i].correlation, correlation, 1);
  for (const key of ['residualSd', 'criterion', 'logLik', 'aic', 'bic'] as const) near(sums[key], rows[key], 1);
  for (const key of ['n', 'missing', 'parameters', 'singular', 'dropped', 'groups', 'method'] as const)
    expect(sums[key]).toEqual(rows[key]);
  const [ours, theirs] = [conditionalModes(sums.fit), conditionalModes(rows.fit)];
  for (const [k, { by, terms, levels, modes, sds }] of theirs.entries()) {
    expect([ours[k].by, ours[k].terms, ours[k].levels]).toEqual([by, terms, levels]);
    for (const level of levels.keys()) {
      for (const a of terms.keys()) {
        near(ours[k].modes[level][a], modes[level][a], 100 * rows.residualSd);
        near(ours[k].sds[level][a], sds[level][a], 100 * rows.residualSd);
      }
    }
  }
}

const shapes: Record<string, MixedModelSpec> = {
  'limbs within horses': feet,
  'limbs within horses, by ML': { ...feet, method: 'ML' },
  'horses alone': { ...feet, random: [horse] },
  'no horses around the feet': { ...feet, random: [foot] },
  'nothing fixed': { ...feet, fixed: [] },
  'limbs and visits that cross within horses': { ...feet, random: [{ by: ['horse', 'visit'] }, foot, horse] },
  'three deep': { ...feet, random: [horse, foot, { by: ['horse', 'limb', 'season'] }] },
  'columns of groups in another order': { ...feet, random: [{ by: ['limb', 'horse'] }, horse] },
  'correlated slopes of horses': { ...feet, random: [{ ...horse, slopes: ['x'] }, foot] },
  'slopes without correlation': { ...feet, random: [{ ...horse, slopes: ['x'], correlated: false }] },
  'a slope that is not among the fixed terms': { ...feet, fixed: ['limb'], random: [{ ...horse, slopes: ['x'] }] },
  'slopes on levels that cross': {
    ...feet,
    random: [
      { by: ['horse', 'visit'], slopes: ['z'] },
      { ...foot, slopes: ['x'] },
      { ...horse, slopes: ['x', 'z'] },
    ],
  },
  'products of numbers and categories': { ...feet, fixed: ['x', 'limb', 'x:limb', 'farrier:limb', 'x:z'] },
  'groups that are numbers': { ...feet, random: [{ by: ['number'] }, { by: ['number', 'limb'] }] },
  'collinear columns': { ...feet, fixed: ['x', 'twice', 'limb', 'limb:limb'] },
};

function table(seed: number, horses = 14) {
  const { normal, uniform } = random(seed + 100);
  const data = yard(seed, { horses });
  const missing = (value: number) => (uniform() < 0.03 ? Number.NaN : value);
  return {
    ...data,
    limb: data.limb.map((limb) => (uniform() < 0.03 ? '' : limb)),
    x: data.x.map(missing),
    y: data.y.map(missing),
    season: data.visit.map((visit) => (Number(visit.slice(1)) % 2 === 0 ? 'dry' : 'wet')),
    z: data.x.map(() => normal()),
    twice: data.x.map((x) => 2 * x),
    number: Float64Array.from(data.horse, (name) => Number(name.slice(1)) - 4),
  };
}

describe.each(Object.entries(shapes))('sums of %s', (_, spec) => {
  it.each([1, 2])('give the model that the rows give (herd %i)', (seed) => {
    const columns = table(seed);
    expectSame(new ModelSums(spec).add(columns).fit(), mixedModel(columns, spec));
  });
});

/** Tables of few rows with numbers of many sizes, repeated levels, missing cells. */
const anyNumber = fc.oneof(
  fc.integer({ min: -5, max: 5 }),
  fc.double({ min: -1e3, max: 1e3, noNaN: true }).map((value) => (Math.abs(value) < 1e-30 ? 0 : value)),
  fc.constantFrom(0.1, -0.1, 1e15, -1e15, 1e-20, Number.NaN),
);
const anyRow = fc.record({
  horse: fc.constantFrom('a', 'b', 'constructor', 'ä', ''),
  limb: fc.constantFrom('LF', 'RF', 'LH', 'RH'),
  visit: fc.integer({ min: -2, max: 2 }),
  x: anyNumber,
  y: anyNumber,
});
const parted = [{ column: 'x', within: 'x_within', mean: 'x_mean' }];
const specs: ModelSumsSpec[] = [
  feet,
  {
    response: 'y',
    fixed: ['x_within', 'x_mean', 'x:limb'],
    random: [{ ...horse, slopes: ['x_within'] }, { by: ['horse', 'visit'] }, foot],
    parted,
  },
];

describe('sums of parts', () => {
  it('add up to the same bytes and the same fit, whatever the parts, their order and the way they are put together', () => {
    const split = fc.array(anyRow, { minLength: 1, maxLength: 40 }).chain((rows) =>
      fc.record({
        rows: fc.constant(rows),
        order: fc.shuffledSubarray([...rows.keys()], { minLength: rows.length }),
        part: fc.array(fc.nat(3), { minLength: rows.length, maxLength: rows.length }),
        chunk: fc.integer({ min: 1, max: 9 }),
        tree: fc.array(fc.tuple(fc.nat(), fc.nat(), fc.boolean()), { minLength: 3, maxLength: 3 }),
        spec: fc.constantFrom(...specs),
      }),
    );
    fc.assert(
      fc.property(split, ({ rows, order, part, chunk, tree, spec }) => {
        const columns: Columns = {
          horse: rows.map(({ horse }) => horse),
          limb: rows.map(({ limb }) => limb),
          visit: Float64Array.from(rows, ({ visit }) => visit),
          x: Float64Array.from(rows, ({ x }) => x),
          y: Float64Array.from(rows, ({ y }) => y),
        };
        const whole = new ModelSums(spec).add(columns);
        const parts = [0, 1, 2, 3].map((which) => {
          const sums = new ModelSums(spec);
          const mine = order.filter((row) => part[row] === which);
          for (let at = 0; at < mine.length; at += chunk) sums.add(taken(columns, mine.slice(at, at + chunk)));
          return sums;
        });
        for (const [a, b, sent] of tree) {
          const [one] = parts.splice(a % parts.length, 1);
          const [two] = parts.splice(b % parts.length, 1);
          parts.push(one.merge(sent ? ModelSums.load(two.save()) : two));
        }
        const [together] = parts;
        expect(together.n).toBe(whole.n);
        expect(together.missing).toBe(whole.missing);
        expect(Buffer.from(together.save()).equals(Buffer.from(whole.save()))).toBe(true);
        expect(told(together)).toEqual(told(whole));
      }),
      { numRuns: 150 },
    );
  });

  /** A fit to the last bit, or why there is none. */
  function told(sums: ModelSums) {
    try {
      return said(sums.fit());
    } catch (error) {
      return String(error);
    }
  }

  it('give the fit of the whole to the last bit, where there is enough to fit', () => {
    const columns = table(3, 20);
    const rows = rowsOf(columns);
    for (const spec of specs) {
      const whole = new ModelSums(spec).add(columns);
      const { below } = random(5);
      const part = rows.map(() => below(3));
      const parts = [0, 1, 2].map((which) =>
        new ModelSums(spec).add(taken(columns, rows.filter((row) => part[row] === which).reverse())),
      );
      const together = parts[2].merge(parts[0]).merge(parts[1]);
      expect(said(together.fit())).toEqual(said(whole.fit()));
      expect(together.save()).toEqual(whole.save());
    }
  });

  it('stay as they are when they are saved, fitted, or merged into others', () => {
    const columns = table(4);
    const rows = rowsOf(columns);
    const [first, second] = [rows.slice(0, 100), rows.slice(100)].map((some) => taken(columns, some));
    const asked = new ModelSums(feet).add(first);
    const before = asked.save();
    asked.fit();
    new ModelSums(feet).add(second).merge(asked);
    expect(asked.save()).toEqual(before);
    expect(asked.add(second).save()).toEqual(new ModelSums(feet).add(columns).save());
  });

  it('are those of no rows where there are none', () => {
    const none = new ModelSums(feet);
    expect([none.n, none.missing]).toEqual([0, 0]);
    expect(ModelSums.load(none.save()).save()).toEqual(none.save());
    const columns = table(5);
    const all = new ModelSums(feet).add(columns).save();
    expect(new ModelSums(feet).merge(none).add(columns).merge(new ModelSums(feet)).save()).toEqual(all);
    expect(new ModelSums(feet).add(taken(columns, [])).add(columns).save()).toEqual(all);
    expect(() => none.fit()).toThrow(/No rows were added/);
    const whole = rowsOf(columns).filter(
      (row) => !Number.isNaN(columns.x[row] + columns.y[row]) && columns.limb[row] !== '',
    );
    expect(() => new ModelSums(feet).add(taken(columns, whole.slice(0, 3))).fit()).toThrow(
      /fixed terms and only 3 complete rows/,
    );
  });
});

describe('parted columns', () => {
  const columns = table(6, 18);
  const complete = rowsOf(columns).filter(
    (row) => !Number.isNaN(columns.x[row]) && !Number.isNaN(columns.y[row]) && columns.limb[row] !== '',
  );
  const means = new Map<string, number>();
  for (const name of new Set(columns.horse)) {
    const own = complete.filter((row) => columns.horse[row] === name);
    means.set(name, own.reduce((sum, row) => sum + columns.x[row], 0) / own.length);
  }
  const mean = Float64Array.from(columns.horse, (name) => means.get(name)!);
  const worked = { ...columns, x_mean: mean, x_within: columns.x.map((x, row) => x - mean[row]) };

  it.each([
    { random: [foot, horse] },
    { random: [{ ...horse, slopes: ['x_within'], correlated: false }, foot] },
    { random: [{ ...foot, slopes: ['x_within', 'x_mean'] }, horse] },
  ])('enter as what lies beyond the mean of the group, and as that mean: %j', ({ random }) => {
    const spec = { response: 'y', fixed: ['x_within', 'x_mean', 'limb'], random };
    expectSame(new ModelSums({ ...spec, parted }).add(columns).fit(), mixedModel(worked, spec));
  });

  it('cannot be multiplied', () => {
    expect(() => new ModelSums({ response: 'y', fixed: ['x_within:limb'], random: [horse], parted })).toThrow(
      /x_within:limb multiplies a parted column/,
    );
  });
});

describe('one set of sums', () => {
  const columns = table(7, 18);
  const large = { ...feet, fixed: ['x', 'limb', 'z'], random: [{ ...horse, slopes: ['x'] }, foot] };
  const sums = new ModelSums(large).add(columns);
  // What a smaller model must leave out as well, as the sums did.
  const rows = {
    ...columns,
    y: columns.y.map((y, row) => (columns.limb[row] === '' ? Number.NaN : y + 0 * columns.x[row])),
  };

  it.each([{ fixed: ['x'] }, { random: [horse] }, { fixed: ['z', 'x'], random: [foot], method: 'ML' as const }])(
    'serves smaller models too: %j',
    (change) => {
      expectSame(sums.fit(change), { ...mixedModel(rows, { ...large, ...change }), missing: sums.missing });
    },
  );

  it('says which sums it lacks', () => {
    expect(() => sums.fit({ fixed: ['farrier'] })).toThrow(
      /No sums were kept of farrier; there are sums of x, limb, z/,
    );
    expect(() => sums.fit({ random: [horse, { by: ['horse', 'visit'] }] })).toThrow(/kept by horse and visit/);
    expect(() => sums.fit({ random: [{ ...horse, slopes: ['z'] }] })).toThrow(/No sums of z .*kept by horse/);
    expect(() => sums.fit({ random: [{ ...horse, slopes: ['limb'] }] })).toThrow(/No sums of .*kept by horse/);
  });
});

describe('digits', () => {
  it('are not lost to means that are large beside the spread', () => {
    const data = table(8, 16);
    const coarse = (values: Float64Array) => values.map((value) => Math.round(value * 2 ** 20) / 2 ** 20);
    const [x, y] = [coarse(data.x), coarse(data.y)];
    const spec = { ...feet, random: [foot, horse] };
    const near = new ModelSums(spec).add({ ...data, x, y }).fit();
    // Shifted without rounding: 2 to the power 20 leaves the 20 binary places that there are.
    const far = new ModelSums(spec)
      .add({ ...data, x: x.map((value) => value + 2 ** 20), y: y.map((value) => value + 2 ** 20) })
      .fit();
    for (const i of [1, 2, 3, 4]) {
      expect(Math.abs(far.fixed[i].estimate / near.fixed[i].estimate - 1)).toBeLessThan(1e-11);
      expect(Math.abs(far.fixed[i].se / near.fixed[i].se - 1)).toBeLessThan(1e-11);
    }
    expect(Math.abs(far.criterion - near.criterion)).toBeLessThan(1e-9);
  });

  it('are refused where sums of products would lose them', () => {
    const data = table(9);
    const with0 = (value: number) => ({ ...data, x: data.x.map((x, row) => (row === 7 ? value : x)) });
    for (const value of [1e61, -1e70, 1e-61])
      expect(() => new ModelSums(feet).add(with0(value))).toThrow(
        /x is .* in row 7; sums can be kept of 0 and of sizes/,
      );
    const sums = new ModelSums(feet).add(data);
    const before = sums.save();
    expect(() => sums.add({ ...with0(1e70), horse: data.horse.map(() => 'another') })).toThrow(RangeError);
    expect(sums.save()).toEqual(before);
    for (const value of [0, -0, 1e-59, 1e59]) expect(new ModelSums(feet).add(with0(value)).n).toBeGreaterThan(100);
  });
});

describe('what sums refuse', () => {
  const data = table(10);

  it('groups that cross with none around them', () => {
    expect(() => new ModelSums({ ...feet, random: [horse, { by: ['farrier'] }] })).toThrow(
      /none of horse, farrier is around all the others/,
    );
    expect(() => new ModelSums({ ...feet, random: [] })).toThrow(/needs a random term/);
    expect(() => new ModelSums({ ...feet, random: [{ by: [] }] })).toThrow(/at least one grouping column/);
  });

  it('columns that are not there, or of the wrong kind, or of another kind than before', () => {
    expect(() => new ModelSums(feet).add({ horse: data.horse, limb: data.limb, x: data.x })).toThrow(
      /names y; the data has horse, limb, x/,
    );
    expect(() => new ModelSums(feet).add({ ...data, y: data.horse })).toThrow(/y must be numeric/);
    expect(() => new ModelSums(feet).add({ ...data, x: data.horse }).add(data)).toThrow(
      /x holds number here and held text/,
    );
    const other = new ModelSums(feet).add({ ...data, x: data.horse });
    expect(() => new ModelSums(feet).add(data).merge(other)).toThrow(/x holds text here and held number before/);
  });

  it('sums of another model', () => {
    const same = new ModelSums(feet).add(data);
    expect(() => same.merge(same)).toThrow(/every row would count twice/);
    expect(() => new ModelSums(feet).merge(new ModelSums({ ...feet, fixed: ['x'] }))).toThrow(/can't be added to them/);
    const written = { random: [foot, horse], fixed: ['x', 'limb'], response: 'y' };
    expect(new ModelSums(written).add(data).merge(new ModelSums(feet)).n).toBeGreaterThan(100);
  });

  it('more categories than there is room for', () => {
    const many = data.limb.map((_, row) => `farrier ${row}`);
    const more = { ...data, farrier: many, barn: many, town: many };
    expect(3 * new Set(many).size).toBeGreaterThan(400);
    expect(() => new ModelSums({ ...feet, fixed: ['x', 'farrier', 'barn', 'town'] }).add(more)).toThrow(
      /Put rare categories together/,
    );
  });

  it('bytes that are no saved sums', () => {
    const bytes = new ModelSums(feet).add(data).save();
    for (const broken of [
      new Uint8Array(0),
      new Uint8Array(16),
      bytes.slice(0, 100),
      bytes.slice(0, -8),
      bytes.slice(1),
      new TextEncoder().encode('horse_id,date,limb\nBella,2024-05-01,LF\n'),
    ])
      expect(() => ModelSums.load(broken)).toThrow(/These are no saved sums: .*Load the bytes that save\(\) gave/);
    const within = new Uint8Array(bytes.length + 3);
    within.set(bytes, 3);
    expect(ModelSums.load(within.subarray(3)).save()).toEqual(bytes);
    // As a file is read.
    expect(ModelSums.load(Buffer.from(bytes)).save()).toEqual(bytes);
  });
});
