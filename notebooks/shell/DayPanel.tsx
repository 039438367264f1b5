import { useState } from 'preact/hooks';
import {
  BlockList,
  counted,
  difference,
  type HerdPage,
  herd,
  type KeptTable,
  SurroundingsContext,
  say,
  tableAsOf,
} from '../../lib/index.ts';
import { units } from './displayUnits.ts';
import { inUse } from './herdInUse.ts';
import { tableFiles } from './tableFiles.ts';

type Edits = ReturnType<typeof difference>;

interface Then {
  /** In words. */
  readonly day: string;
  readonly table: KeptTable;
  readonly edits: Edits;
}

const today = () => new Intl.DateTimeFormat('sv-SE').format();

/** The table of feet as it stood at the end of a day, and the way back to it. */
export function DayPanel({ page }: { page: HerdPage }) {
  const [then, setThen] = useState<Then | undefined>();
  const [said, setSaid] = useState('');

  async function goTo(date: string) {
    const end = new Date(`${date}T23:59:59.999`);
    if (Number.isNaN(end.getTime())) return;
    const day = new Intl.DateTimeFormat(say`en-GB`, { dateStyle: 'long' }).format(end);
    const record = inUse.value!.record!;
    try {
      const table = await tableAsOf(record, 'feet', end.getTime());
      const now = record.tables().feet!;
      setThen(table && { day, table, edits: difference('feet', now, table) });
      setSaid(table ? '' : say`On ${day} there was no such record on this device yet.`);
    } catch (error) {
      setThen(undefined);
      setSaid(say`The record could not be looked up: ${error instanceof Error ? error.message : String(error)}`);
    }
  }

  function goBack({ day, edits }: Then) {
    inUse.value!.record!.table('feet')!.make(edits, say`going back to ${day}`);
    setThen(undefined);
    setSaid(say`The record stands as it did on ${day}. This is a change like any other: it can be taken back.`);
  }

  return (
    <div>
      <p>
        <label>
          {say`As it stood at the end of`}{' '}
          <input type="date" max={today()} onChange={(event) => goTo(event.currentTarget.value)} />
        </label>
      </p>
      <p role="status">{said}</p>
      {then && (
        <>
          <p>
            {since(then.edits)}{' '}
            {then.edits.length > 0 && (
              <button type="button" onClick={() => goBack(then)}>{say`Take the record back to ${then.day}`}</button>
            )}
          </p>
          <AsItStood page={page} then={then} />
        </>
      )}
    </div>
  );
}

function AsItStood({ page, then }: { page: HerdPage; then: Then }) {
  const { columns } = then.table;
  const made = herd({ feet: columns }, { problems: then.table.problems, files: { feet: then.table.file } });
  const blocks = page
    .blocks({ herd: made, controls: {}, units: units.value })
    .flatMap((block) => (block.kind === 'sheet' ? block : []))
    .map((block) => ({
      ...block,
      name: 'then',
      title: say`Every reading as it stood on ${then.day}`,
      editable: undefined,
    }));
  return (
    <SurroundingsContext.Provider value={{ units: units.value, still: false, set: () => {}, files: tableFiles }}>
      <BlockList blocks={blocks} />
    </SurroundingsContext.Provider>
  );
}

/** What has changed since, in words. */
function since(edits: Edits): string {
  const cells = edits.reduce((sum, edit) => sum + (edit.kind === 'cells' ? edit.rows.length : 0), 0);
  const rows = (how: 'add' | 'remove') =>
    edits.reduce((sum, edit) => sum + (edit.kind === 'rows' && edit.how === how ? edit.rows.length : 0), 0);
  const [come, gone] = [rows('remove'), rows('add')];
  const own = edits.filter(({ kind }) => kind === 'own column').length;
  const parts = [
    cells > 0 && counted(cells, { one: say`${cells} cell has changed`, other: say`${cells} cells have changed` }),
    come > 0 && counted(come, { one: say`${come} row has come`, other: say`${come} rows have come` }),
    gone > 0 && counted(gone, { one: say`${gone} row has gone`, other: say`${gone} rows have gone` }),
    own > 0 &&
      counted(own, {
        one: say`${own} column of your own has changed`,
        other: say`${own} columns of your own have changed`,
      }),
  ].filter((part) => part !== false);
  return parts.length === 0 ? say`It stands today as it did then.` : say`Since then ${parts.join(', ')}.`;
}
