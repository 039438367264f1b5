import type { ShownColumn } from './shownColumns.ts';

/** Under the grid: what the column of the chosen cell is, and how it was worked out. */
export function AboutColumn({ shown }: { shown: ShownColumn }) {
  const { title, symbol, formula } = shown;
  return (
    <p class="about-column unprinted">
      <strong>{title}</strong>
      {symbol && `, ${symbol}`}: {formula === undefined ? 'measured or typed' : <code>{formula}</code>}
    </p>
  );
}
