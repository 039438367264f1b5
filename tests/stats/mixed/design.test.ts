import { describe, expect, it } from 'vitest';
import { design } from '../../../lib/stats/mixed/design.ts';

const data = {
  y: Float64Array.of(1, 2, 3, NaN, 5, 6, 7),
  x: Float64Array.of(2, 4, 6, 8, 10, NaN, 14),
  year: Float64Array.of(10, 9, 10, 9, 9, 9, 10),
  limb: ['RF', 'LF', 'RF', 'LF', 'LH', 'LF', 'LF'],
  horse: ['b', 'a', 'b', 'a', 'a', 'a', ''],
};
const horses = [{ by: ['horse'] }];
const values = (term: { values: Float64Array }) => [...term.values];

describe('design', () => {
  it('leaves out rows with a cell missing in any column that the model names, and counts them', () => {
    const { n, rows, missing, y } = design(data, { response: 'y', fixed: ['x'], random: horses });
    expect([n, missing]).toEqual([4, 3]);
    expect([...rows]).toEqual([0, 1, 2, 4]);
    expect([...y]).toEqual([1, 2, 3, 5]);
    expect(design(data, { response: 'y', fixed: [], random: [{ by: ['limb'] }] }).n).toBe(6);
  });
  it('turns categories into contrasts against the first in code-point order', () => {
    const { terms } = design(data, { response: 'y', fixed: ['limb'], random: horses });
    expect(terms.map(({ name }) => name)).toEqual(['(Intercept)', 'limbLH', 'limbRF']);
    // Rows 0, 1, 2, 4 and 5 are RF, LF, RF, LH and LF.
    expect(terms.map(values)).toEqual([
      [1, 1, 1, 1, 1],
      [0, 0, 0, 1, 0],
      [1, 0, 1, 0, 0],
    ]);
  });
  it('multiplies the columns of an interaction, the first varying fastest', () => {
    const { terms } = design(data, { response: 'y', fixed: ['limb:x'], random: horses });
    expect(terms.slice(1).map(({ name }) => name)).toEqual(['limbLH:x', 'limbRF:x']);
    expect(terms.slice(1).map(values)).toEqual([
      [0, 0, 0, 10],
      [2, 0, 6, 0],
    ]);
    const two = design(
      { y: Float64Array.of(1, 2), a: ['p', 'q'], b: ['u', 'v'], horse: ['a', 'b'] },
      { response: 'y', fixed: ['a:b'], random: horses },
    );
    expect(two.terms[1]).toMatchObject({ name: 'aq:bv' });
    expect(values(two.terms[1])).toEqual([0, 1]);
  });
  it('numbers groups in order, and combinations by the first column and then the second', () => {
    const { random } = design(data, { response: 'y', fixed: ['x'], random: [...horses, { by: ['horse', 'limb'] }] });
    expect(random.map(({ by }) => by)).toEqual(['horse', 'horse:limb']);
    expect(random.map(({ levels }) => levels)).toEqual([
      ['a', 'b'],
      ['a:LF', 'a:LH', 'b:RF'],
    ]);
    expect(random.map(({ codes }) => [...codes])).toEqual([
      [1, 0, 1, 0],
      [2, 0, 2, 1],
    ]);
  });
  it('puts numbers that name groups in the order of numbers', () => {
    const { random } = design(data, { response: 'y', fixed: [], random: [{ by: ['year'] }, { by: ['limb', 'year'] }] });
    expect(random[0].levels).toEqual(['9', '10']);
    expect([...random[0].codes]).toEqual([1, 0, 1, 0, 0, 1]);
    expect(random[1].levels).toEqual(['LF:9', 'LF:10', 'LH:9', 'RF:10']);
    expect([...random[1].codes]).toEqual([3, 0, 3, 2, 0, 1]);
  });
  it('brings slopes to a mean square of 1 and remembers by how much', () => {
    const slopes = [{ by: ['horse'], slopes: ['x'] }];
    const [term] = design(data, { response: 'y', fixed: [], random: slopes }).random;
    // 2, 4, 6 and 10 have a mean square of 156 / 4.
    const scale = Math.sqrt(39);
    expect(term.coefficients.map((each) => [each.name, each.scale])).toEqual([
      ['(Intercept)', 1],
      ['x', scale],
    ]);
    expect(term.coefficients[0].values).toBeUndefined();
    expect(term.coefficients[1].values![3]).toBeCloseTo(10 / scale, 14);
    const apart = design(data, { response: 'y', fixed: [], random: [{ ...slopes[0], correlated: false }] }).random;
    expect(apart.map(({ by, coefficients }) => [by, coefficients.map(({ name }) => name)])).toEqual([
      ['horse', ['(Intercept)']],
      ['horse', ['x']],
    ]);
  });
  it('leaves a slope of zeros at zero', () => {
    const zero = { y: Float64Array.of(1, 2), x: new Float64Array(2), horse: ['a', 'b'] };
    const [term] = design(zero, { response: 'y', fixed: [], random: [{ by: ['horse'], slopes: ['x'] }] }).random;
    expect(term.coefficients[1].scale).toBe(1);
    expect([...term.coefficients[1].values!]).toEqual([0, 0]);
  });
  it('says what it was given and what it needs', () => {
    const given =
      (fixed: string[], random: { by: string[]; slopes?: string[] }[], response = 'y') =>
      () =>
        design(data, { response, fixed, random });
    expect(given(['weight'], horses)).toThrow('The model names weight; the data has y, x, year, limb, horse');
    expect(given(['toString'], horses)).toThrow('The model names toString');
    expect(given([], [])).toThrow('A mixed model needs a random term');
    expect(given([], [{ by: [] }])).toThrow('at least one grouping column');
    expect(given([], [{ by: ['horse'], slopes: ['limb'] }])).toThrow('limb must be numeric here, and it holds text');
    expect(given([], horses, 'limb')).toThrow('limb must be numeric');
  });
});
