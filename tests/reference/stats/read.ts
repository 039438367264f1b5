import { readFileSync } from 'node:fs';
import { expect } from 'vitest';

/** The expected values of a reference case, as its JSON file holds them. */
// biome-ignore lint/suspicious/noExplicitAny: each case has its own shape, described in README.md beside it
export function readCase(name: string): any {
  return JSON.parse(readFileSync(new URL(`${name}.json`, import.meta.url), 'utf8'));
}

/** The data of a reference case: its columns by name, as numbers where every cell is one. */
export function readData(name: string): { numbers: Record<string, number[]>; text: Record<string, string[]> } {
  const [heading, ...rows] = readFileSync(new URL(`${name}.csv`, import.meta.url), 'utf8')
    .trim()
    .split('\n');
  const cells = rows.map((row) => row.split(','));
  const numbers: Record<string, number[]> = {};
  const text: Record<string, string[]> = {};
  heading.split(',').forEach((column, c) => {
    text[column] = cells.map((row) => row[c]);
    numbers[column] = text[column].map(Number);
  });
  return { numbers, text };
}

/** Fails unless the numbers agree within a relative tolerance, or `absolute` where the expected one is near zero. */
export function closeTo(
  found: number | ArrayLike<number>,
  expected: number | readonly number[],
  relative: number,
  absolute = 0,
): void {
  if (typeof expected !== 'number') {
    const list = Array.from(found as ArrayLike<number>);
    expect(list).toHaveLength(expected.length);
    list.forEach((value, i) => {
      closeTo(value, expected[i], relative, absolute);
    });
    return;
  }
  const allowed = Math.max(Math.abs(expected) * relative, absolute);
  expect(
    Math.abs((found as number) - expected),
    `found ${found}, expected ${expected} within ${allowed}`,
  ).toBeLessThanOrEqual(allowed);
}
