// biome-ignore-all lint/a11y/useSemanticElements: it stands over rows that a table's own can't be
// biome-ignore-all lint/a11y/useFocusableInteractive: the cells take the focus, one at a time
import { say } from '../../words/say.ts';
import { ColumnName, columnClass } from './ColumnName.tsx';
import type { Order } from './matchingRows.ts';
import type { ShownColumn } from './shownColumns.ts';

interface HeadProps {
  readonly columns: readonly ShownColumn[];
  readonly near: readonly number[];
  readonly template: string;
  readonly order?: Order;
  /** The column of the focused heading, -1 where the focus is in the rows. */
  readonly focused: number;
}

const DIRECTIONS = {
  text: { ascending: say`A to Z`, descending: say`Z to A` },
  other: { ascending: say`rising`, descending: say`falling` },
};

/** The headings, each with its unit and, where the rows stand in its order, which way. */
export function GridHead({ columns, near, template, order, focused }: HeadProps) {
  return (
    <div role="row" aria-rowindex={1} style={{ gridTemplateColumns: template }}>
      {near.map((column) => {
        const shown = columns[column];
        const direction = order?.column === shown.name ? order.direction : undefined;
        return (
          <div
            key={column}
            role="columnheader"
            aria-colindex={column + 1}
            aria-sort={direction ?? 'none'}
            class={columnClass(shown)}
            style={{ gridColumn: column + 1 }}
            tabIndex={focused === column ? 0 : -1}
          >
            <span>
              <ColumnName shown={shown} />
            </span>
            {shown.symbol && <span class="unit">{shown.symbol}</span>}
            {direction && <span class="unit">{DIRECTIONS[shown.kind === 'text' ? 'text' : 'other'][direction]}</span>}
          </div>
        );
      })}
    </div>
  );
}
