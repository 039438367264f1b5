import { expect, test } from 'vitest';
import { tickText } from '../../lib/views/tickText.ts';

const told = (ticks: readonly unknown[]) => ticks.map((tick, i) => tickText(tick, i, ticks));
const days = (...isoDays: string[]) => isoDays.map((day) => new Date(day));

test('numbers have as many decimals as the finest tick, and a true minus sign', () => {
  expect(told([-1, -0.5, 0, 0.5])).toEqual(['−1.0', '−0.5', '0.0', '0.5']);
  expect(told([0, 20, 40])).toEqual(['0', '20', '40']);
  expect(told([0.1 + 0.2, 0.4])).toEqual(['0.3', '0.4']);
});

test('months have the year below where it is new', () => {
  expect(told(days('2025-10-01', '2025-12-01', '2026-02-01'))).toEqual(['Oct\n2025', 'Dec', 'Feb\n2026']);
});

test('years stand alone, days have their month', () => {
  expect(told(days('2024-01-01', '2025-01-01'))).toEqual(['2024', '2025']);
  expect(told(days('2026-03-01', '2026-03-08'))).toEqual(['Mar 1\n2026', 'Mar 8']);
});

test('names stay as they are', () => {
  expect(told(['LF', 'RF'])).toEqual(['LF', 'RF']);
});
