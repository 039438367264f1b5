import { useContext, useEffect, useState } from 'preact/hooks';
import type { Kind } from '../../sheet/column.ts';
import { type DisplayUnits, formatQuantity } from '../../sheet/display.ts';
import { say } from '../../words/say.ts';
import { shownDay } from '../../words/shownDay.ts';
import type { SheetBlock } from '../blocks.ts';
import { SurroundingsContext } from '../surroundings.ts';
import type { Editing, PastCell } from './editing.ts';

interface HistoryProps {
  readonly sheet: SheetBlock['sheet'];
  readonly editing: Editing;
  readonly column: string;
  readonly row: number;
  readonly revision: number;
}

const NEWEST = 20;

/** What stood in the chosen cell before: when it was changed, by whom, from what to what. */
export function CellHistory({ sheet, editing, column, row, revision }: HistoryProps) {
  const { units } = useContext(SurroundingsContext);
  const [past, setPast] = useState<readonly PastCell[]>([]);
  useEffect(() => {
    let wanted = true;
    const rested = setTimeout(async () => {
      const found = (await editing.history?.(column, row).catch(() => [])) ?? [];
      if (wanted) setPast(found);
    }, 120);
    return () => {
      wanted = false;
      clearTimeout(rested);
    };
  }, [editing, column, row, revision]);
  if (past.length === 0 || !sheet.names.includes(column)) return null;
  const { kind, unit } = sheet.describe(column);
  return (
    <section class="origin unprinted" aria-label={say`What stood in the chosen cell before`}>
      <ul class="cell-history">
        {past
          .slice(-NEWEST)
          .reverse()
          .map(({ at, who, before, after }, i) => (
            <li key={i}>
              <time dateTime={new Date(at).toISOString()}>{moment.format(at)}</time>
              {who && `, ${who}`}: <span class="number">{entered(before, kind, unit, units)}</span> {say`became`}{' '}
              <strong class="number">{entered(after, kind, unit, units)}</strong>
            </li>
          ))}
      </ul>
      {past.length > NEWEST && <p>{say`And ${past.length - NEWEST} changes before those.`}</p>}
    </section>
  );
}

const moment = new Intl.DateTimeFormat(say`en-GB`, { dateStyle: 'long', timeStyle: 'short' });

function entered(cell: PastCell['before'], kind: Kind, unit: string, units: DisplayUnits): string {
  if (cell === null) return say`nothing`;
  if (typeof cell === 'object') return say`“${cell.text}”, which could not be read`;
  if (typeof cell === 'string') return cell;
  if (kind === 'date') return shownDay(cell);
  if (kind === 'boolean') return cell === 1 ? say`yes` : say`no`;
  return formatQuantity(cell, unit, units);
}
