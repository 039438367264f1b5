import * as Plot from '@observablehq/plot';
import { parseHTML } from 'linkedom';
import { expect, vi } from 'vitest';
import type { ColumnInput } from '../../lib/sheet/column.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';
import type { Table } from '../../lib/sheet/table.ts';
import type { ChartDescription } from '../../lib/views/chart.ts';

/** Draws a chart as a page would, and holds it to what every chart must keep: no warning, no `style`, no broken number. */
export function plotted({ options, title, summary, caption }: ChartDescription, width = 640): Element {
  const warn = vi.spyOn(console, 'warn').mockImplementation(() => {});
  const { document } = parseHTML('<html><body></body></html>');
  const picture = Plot.plot({ ...options, width, className: 'plot', document }) as unknown as Element;
  for (const style of picture.querySelectorAll('style')) style.remove();
  expect(warn).not.toHaveBeenCalled();
  warn.mockRestore();
  expect(picture.outerHTML).not.toMatch(/ style=|NaN|Infinity|undefined|⚠/);
  for (const words of [title, summary, caption]) expect(words).not.toMatch(/NaN|Infinity|undefined|null/);
  expect(title).not.toBe('');
  expect(title).not.toMatch(/\.$/);
  expect(summary).toMatch(/\.$/);
  const box = picture.getAttribute('viewBox')?.split(' ').map(Number);
  expect(box?.[2]).toBe(width);
  return picture;
}

export function words(picture: Element): string[] {
  return [...picture.querySelectorAll('text')].map((text) => text.textContent ?? '');
}

/** Marks of one kind, as Plot names their group. */
export function marks(picture: Element, kind: string): Element[] {
  return [...picture.querySelectorAll(`g[aria-label="${kind}"]`)].flatMap((group) => [...group.children]);
}

export function table(columns: Record<string, ColumnInput>): Table {
  return plainTable(columns);
}

export function number(values: readonly number[], unit = '1', error?: number): ColumnInput {
  const own = Float64Array.from(values);
  return { unit, values: own, ...(error !== undefined && { error: own.map(() => error) }) };
}

/** Names that must come out as the text they are. */
export const hostile = [
  '<script>alert(1)</script>',
  '__proto__',
  'constructor',
  '"; drop',
  '=1+1',
  'a very long name of a horse indeed',
];
