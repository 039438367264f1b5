import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dependencyOrder, dependents, loopInWords } from '../../lib/sheet/graph.ts';

const from = (edges: Record<string, string[]>) => (name: string) => edges[name] ?? [];

describe('dependencyOrder', () => {
  test('puts each column after what it needs, whichever way they were named', () => {
    const needs = from({ ratio: ['width', 'length'], score: ['ratio'], width: [], length: [] });
    expect(dependencyOrder(['score', 'ratio', 'length'], needs)).toEqual({
      order: ['width', 'length', 'ratio', 'score'],
    });
  });

  test('keeps the given order where nothing says otherwise', () => {
    expect(dependencyOrder(['c', 'a', 'b'], from({}))).toEqual({ order: ['c', 'a', 'b'] });
  });

  test('gives the loop and nothing that merely leads to it', () => {
    const needs = from({ start: ['a'], a: ['b'], b: ['c'], c: ['a'] });
    expect(dependencyOrder(['start'], needs)).toEqual({ loop: ['a', 'b', 'c', 'a'] });
    expect(dependencyOrder(['x'], from({ x: ['x'] }))).toEqual({ loop: ['x', 'x'] });
  });

  test('two ways to one column are no loop', () => {
    expect(dependencyOrder(['d'], from({ d: ['b', 'c'], b: ['a'], c: ['a'] }))).toEqual({
      order: ['a', 'b', 'c', 'd'],
    });
  });

  test('a chain of 100,000 columns is ordered without running out of stack', () => {
    const needs = (name: string) => (name === '0' ? [] : [String(Number(name) - 1)]);
    const found = dependencyOrder(['99999'], needs);
    expect('order' in found && found.order.length).toBe(100_000);
  });

  test('any graph gets an order that holds every edge, or a loop made of its edges', () => {
    const graph = fc.array(fc.tuple(fc.nat(8), fc.nat(8)), { maxLength: 20 });
    fc.assert(
      fc.property(graph, (edges) => {
        const needs = (name: string) => edges.filter(([a]) => String(a) === name).map(([, b]) => String(b));
        const names = Array.from({ length: 9 }, (_, i) => String(i));
        const found = dependencyOrder(names, needs);
        if ('loop' in found) {
          expect(found.loop[0]).toBe(found.loop.at(-1));
          for (let i = 1; i < found.loop.length; i++) expect(needs(found.loop[i - 1])).toContain(found.loop[i]);
        } else {
          expect([...found.order].sort()).toEqual(names);
          for (const [a, b] of edges)
            expect(found.order.indexOf(String(b))).toBeLessThan(found.order.indexOf(String(a)));
        }
      }),
    );
  });
});

test('a loop is printed as a loop', () => {
  expect(loopInWords(['level', 'tilt', 'level'])).toBe('level → tilt → level');
});

describe('dependents', () => {
  test('names everything downstream, near and far, in order', () => {
    const needs = from({ b: ['a'], c: ['b'], d: ['x'], e: ['c', 'd'] });
    expect(dependents('a', ['a', 'b', 'c', 'd', 'e', 'x'], needs)).toEqual(['b', 'c', 'e']);
    expect(dependents('e', ['a', 'b', 'c', 'd', 'e', 'x'], needs)).toEqual([]);
  });

  test('finds them whichever order the columns stand in', () => {
    expect(dependents('a', ['c', 'b', 'a'], from({ b: ['a'], c: ['b'] }))).toEqual(['c', 'b']);
  });
});
