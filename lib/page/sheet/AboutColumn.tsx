import { say } from '../../words/say.ts';
import type { SheetBlock } from '../blocks.ts';
import type { ShownColumn } from './shownColumns.ts';

/** Under the grid: what the column of the chosen cell is, and how it was worked out where a formula says so. */
export function AboutColumn({ sheet, shown }: { sheet: SheetBlock['sheet']; shown: ShownColumn }) {
  const { name, title, symbol, formula } = shown;
  return (
    <p class="about-column unprinted">
      <strong>{title}</strong>
      {symbol && `, ${symbol}`}
      {formula !== undefined && (
        <>
          {say`: worked out as ${sheet.sentence(name)}.`} <code>{formula}</code>
        </>
      )}
    </p>
  );
}
