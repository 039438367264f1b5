import { expect, it } from 'vitest';
import { kendallTau } from '../../lib/stats/kendallTau.ts';
import { random } from '../../lib/stats/random.ts';
import { summary } from '../../lib/stats/summary.ts';

const many = (draw: () => number, count = 20000) => Float64Array.from({ length: count }, draw);

it('the same seed gives the same stream, another seed another', () => {
  const [a, b, c] = [random(42), random(42), random(43)];
  const [first, second, third] = [a, b, c].map(({ uniform, below, normal }) => [uniform(), below(1000), normal()]);
  expect(first).toEqual(second);
  expect(first).not.toEqual(third);
});
it('uniform numbers fill 0 to 1', () => {
  const { mean, sd, min, max } = summary(many(random(1).uniform));
  expect(mean).toBeCloseTo(0.5, 1.9);
  expect(sd).toBeCloseTo(Math.sqrt(1 / 12), 2);
  expect(min).toBeGreaterThanOrEqual(0);
  expect(min).toBeLessThan(0.001);
  expect(max).toBeLessThan(1);
  expect(max).toBeGreaterThan(0.999);
});
it('below(n) gives each of 0 to n − 1 about as often', () => {
  const { below } = random(2);
  const counts = new Array<number>(6).fill(0);
  for (let i = 0; i < 60000; i++) counts[below(6)]++;
  for (const count of counts) expect(Math.abs(count - 10000)).toBeLessThan(4.5 * Math.sqrt(60000 * (5 / 36)));
});
it('normal numbers have mean 0, deviation 1 and the tails of a normal', () => {
  const values = many(random(3).normal, 40000);
  const { mean, sd } = summary(values);
  expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(40000));
  expect(Math.abs(sd - 1)).toBeLessThan(4 / Math.sqrt(80000));
  const beyond = values.filter((value) => Math.abs(value) > 1.959964).length / 40000;
  expect(Math.abs(beyond - 0.05)).toBeLessThan(0.005);
});
it('neighbouring seeds, large ones too, give unrelated streams', () => {
  const firsts = Array.from({ length: 500 }, (_, seed) => random(seed).uniform());
  const seconds = Array.from({ length: 500 }, (_, seed) => random(seed + 1).uniform());
  expect(kendallTau(firsts, seconds).p).toBeGreaterThan(0.001);
  expect(kendallTau(firsts, Array.from(firsts.keys())).p).toBeGreaterThan(0.001);
  expect(random(1).uniform()).not.toBe(random(1 + 2 ** 32).uniform());
});
