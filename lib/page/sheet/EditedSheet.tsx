import { useContext, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { cellAt } from '../../sheet/cell.ts';
import { counted } from '../../words/counted.ts';
import { say } from '../../words/say.ts';
import { wholeNumber } from '../../words/wholeNumber.ts';
import type { Editable, SheetBlock } from '../blocks.ts';
import { SurroundingsContext } from '../surroundings.ts';
import { CellHistory } from './CellHistory.tsx';
import { CellOrigin } from './CellOrigin.tsx';
import { CellPicture } from './CellPicture.tsx';
import { ConditionBar } from './ConditionBar.tsx';
import { EditBar } from './EditBar.tsx';
import type { Editing } from './editing.ts';
import { FootForm } from './FootForm.tsx';
import { Grid } from './Grid.tsx';
import { keepLastFoot, lastFoot } from './lastFoot.ts';
import type { Cell } from './moved.ts';
import { OnPaper } from './OnPaper.tsx';
import { OwnColumns } from './OwnColumns.tsx';
import { rowName } from './rowName.ts';
import { shownColumns } from './shownColumns.ts';
import { TakeAway } from './TakeAway.tsx';
import { fillDown, type Region, travel, travelKey } from './typing.ts';
import { usePutOnLeaving } from './usePutOnLeaving.ts';
import { useRevision } from './useRevision.ts';
import { placeOf, useSameRow } from './useSameRow.ts';
import { useView } from './useView.ts';

interface EditedProps {
  readonly block: SheetBlock;
  readonly editable: Editable;
  readonly editing: Editing;
}

const START: Region = { top: 0, bottom: 0, left: 0, right: 0 };

/** A sheet that is typed into: as a grid, or one foot at a time. */
export function EditedSheet({ block, editable, editing }: EditedProps) {
  const { units } = useContext(SurroundingsContext);
  const { sheet } = block;
  const revision = useRevision(sheet, editing);
  const names = block.columns ?? sheet.names;
  const columns = useMemo(
    () => shownColumns(sheet, names, units, (name) => editing.typed(name)),
    [sheet, editing, names.join('\n'), units],
  );
  const view = useView(block, editing);
  const [one, setOne] = useState(() => matchMedia('(pointer: coarse), (max-width: 40rem)').matches);
  const [chosen, choose] = useState(() => {
    const last = one ? Math.max(0, placeOf(view.rows, 0, lastFoot(block.name), editing.rowKey)) : 0;
    return { focus: { row: last, column: 0 } as Cell, region: { ...START, top: last, bottom: last } };
  });
  const [said, setSaid] = useState('');
  const place = useRef<HTMLDivElement>(null);
  usePutOnLeaving(place);
  const followed = useSameRow(view.rows, chosen, chosen.focus.row, editing.rowKey);
  const foot = one && followed >= 0 ? editing.rowKey(view.rows[followed]) : undefined;
  useEffect(() => {
    if (foot !== undefined) keepLastFoot(block.name, foot);
  }, [foot]);
  if (columns.length === 0) return <p class="note">{say`This table has no columns yet.`}</p>;

  const { rows } = view;
  const at = Math.min(Math.max(followed, 0), rows.length - 1);
  const moved = followed - chosen.focus.row;
  const shown = columns[Math.min(chosen.focus.column, columns.length - 1)];
  const region = {
    ...chosen.region,
    top: Math.max(chosen.region.top + moved, 0),
    bottom: Math.min(chosen.region.bottom + moved, rows.length - 1),
  };
  const count = Math.max(region.bottom - region.top + 1, 0);
  const goTo = (row: number) =>
    choose({ focus: { row, column: chosen.focus.column }, region: { ...chosen.region, top: row, bottom: row } });

  /** A row after the chosen one, begun with what it shares with it; shown whatever rows were in view. */
  function addRow() {
    const from = rows.length > 0 ? rows[at] : -1;
    const row = Object.fromEntries(
      sheet.names
        .filter((name) => from >= 0 && editing.typed(name))
        .map((name) => [name, cellAt(sheet.column(name), from)]),
    );
    editing.addRows([editable.next(row)], from + 1);
    if (!view.whole) view.showAll();
    goTo(from + 1);
    setSaid(say`A row is added after the chosen one${view.whole ? '' : say`, and all rows are shown again`}`);
  }

  function removeRows() {
    if (rows.length === 0) return;
    const gone = [...rows.subarray(region.top, region.bottom + 1)];
    const words =
      gone.length === 1
        ? say`${rowName(sheet, editable.names, gone[0])} is removed`
        : counted(gone.length, {
            one: say`${wholeNumber(gone.length)} row is removed`,
            other: say`${wholeNumber(gone.length)} rows are removed`,
          });
    editing.removeRows(gone);
    goTo(Math.max(0, Math.min(region.top, rows.length - gone.length - 1)));
    setSaid(say`${words}. It can be taken back`);
  }

  const fill = () => setSaid(fillDown({ editing, columns, data: [], rows, whole: view.whole }, region));

  function onKeyDown(event: KeyboardEvent) {
    if ((event.target as Element).matches('input, select, textarea')) return;
    const way = travelKey(event);
    if (way) setSaid(travel(editing, way));
    else if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'd' && !one) fill();
    else return;
    event.preventDefault();
  }

  const subject = at >= 0 ? rowName(sheet, editable.names, rows[at]) : '';
  // With cold hands the form comes first, the tools after it.
  const conditionBar = <ConditionBar columns={columns} conditions={view.conditions} onChange={view.setConditions} />;
  const editBar = (
    <EditBar
      editing={editing}
      onSaid={setSaid}
      onFill={one ? undefined : fill}
      onAdd={addRow}
      addWords={one ? say`New foot` : say`Add a row`}
      onRemove={removeRows}
      removeWords={
        one ? say`Remove this foot` : counted(count, { one: say`Remove the row`, other: say`Remove ${count} rows` })
      }
    />
  );
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys for the whole sheet; each has a button too
    <div class="edited" ref={place} onKeyDown={onKeyDown}>
      <fieldset class="ways unprinted">
        <legend class="unseen">{say`How to type in`}</legend>
        {[true, false].map((way) => (
          <label key={String(way)}>
            <input type="radio" name={`${block.name}-way`} checked={one === way} onChange={() => setOne(way)} />
            {way ? say`One foot at a time` : say`Sheet`}
          </label>
        ))}
      </fieldset>
      {!one && conditionBar}
      <p class="sheet-count" role="status">
        {view.count}
        {said && <span class="unprinted">. {said}</span>}
      </p>
      {!one && editBar}
      <OnPaper block={{ ...block, rows }} />
      {one ? (
        <FootForm
          sheet={sheet}
          editable={editable}
          editing={editing}
          rows={rows}
          at={at}
          onGo={goTo}
          onSaid={setSaid}
        />
      ) : (
        <>
          <Grid
            label={block.title}
            sheet={sheet}
            columns={columns}
            rows={rows}
            order={view.order}
            onOrder={view.sortBy}
            onChosen={(focus, region) => choose({ focus, region })}
            onSaid={setSaid}
            revision={revision}
            editing={editing}
            whole={view.whole}
          />
          <p class="note unprinted">{say`Type into any cell, or F2 to change it; Enter goes down, Tab to the side, Escape gives up. Paste a block from any table. Columns in italics are worked out.`}</p>
          {at >= 0 && (
            <CellOrigin
              sheet={sheet}
              editable={editable}
              shown={shown}
              row={rows[at]}
              unread={editing.unread(shown.name, rows[at])?.text}
              subject={subject}
              revision={revision}
            />
          )}
          {at >= 0 && editing.typed(shown.name) && (
            <CellPicture editing={editing} column={shown.name} row={rows[at]} revision={revision} />
          )}
          {at >= 0 && editing.typed(shown.name) && (
            <CellHistory sheet={sheet} editing={editing} column={shown.name} row={rows[at]} revision={revision} />
          )}
        </>
      )}
      {one && editBar}
      {one && conditionBar}
      <OwnColumns sheet={sheet} editing={editing} revision={revision} rows={rows} onSaid={setSaid} />
      <TakeAway block={{ ...block, columns: columns.map(({ name }) => name), rows }} />
    </div>
  );
}
