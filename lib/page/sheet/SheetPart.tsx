import { useContext, useEffect, useId, useMemo, useState } from 'preact/hooks';
import { say } from '../../words/say.ts';
import type { SheetBlock } from '../blocks.ts';
import { FailureLine, useFailure } from '../parts/FailureLine.tsx';
import { SurroundingsContext } from '../surroundings.ts';
import { AboutColumn } from './AboutColumn.tsx';
import { ConditionBar } from './ConditionBar.tsx';
import type { EditedSheet } from './EditedSheet.tsx';
import { Grid } from './Grid.tsx';
import { OnPaper } from './OnPaper.tsx';
import { StillTable } from './StillTable.tsx';
import { shownColumns } from './shownColumns.ts';
import { TakeAway } from './TakeAway.tsx';
import { useView } from './useView.ts';

/** A table: a grid on the screen, typed into where someone keeps it; a plain table on paper and in a file. */
export function SheetPart({ block }: { block: SheetBlock }) {
  const { still, editing } = useContext(SurroundingsContext);
  const id = useId();
  const edited = block.editable && editing?.(block.editable.table);
  return (
    <figure class="sheet" aria-labelledby={id}>
      <p class="figure-title" id={id}>
        {block.title}
      </p>
      {block.caption && <figcaption>{block.caption}</figcaption>}
      {still ? (
        <StillTable block={block} />
      ) : edited ? (
        <Typed block={block} editable={block.editable!} editing={edited} />
      ) : (
        <LiveSheet block={block} />
      )}
    </figure>
  );
}

/** What typing needs is fetched by the pages where someone types. */
function Typed(props: Parameters<typeof EditedSheet>[0]) {
  const [Part, setPart] = useState<typeof EditedSheet | undefined>();
  const [failure, attempt] = useFailure();
  useEffect(() => {
    attempt(async () => {
      const { EditedSheet } = await import('./EditedSheet.tsx');
      setPart(() => EditedSheet);
    });
  }, []);
  if (Part) return <Part {...props} />;
  return failure ? <FailureLine failure={failure} /> : <p class="waiting">{say`Opening the table for typing …`}</p>;
}

function LiveSheet({ block }: { block: SheetBlock }) {
  const { units } = useContext(SurroundingsContext);
  const columns = useMemo(
    () => shownColumns(block.sheet, block.columns, units),
    [block.sheet, block.columns?.join('\n'), units],
  );
  const view = useView(block, block.sheet);
  const [about, setAbout] = useState('');
  const [said, setSaid] = useState('');

  if (columns.length === 0) return <p class="note">{say`This table has no columns yet.`}</p>;
  return (
    <>
      <ConditionBar columns={columns} conditions={view.conditions} onChange={view.setConditions} />
      <p class="sheet-count" role="status">
        {view.count}
        {said && <span class="unprinted">. {said}</span>}
      </p>
      <OnPaper block={{ ...block, rows: view.rows }} />
      <Grid
        label={block.title}
        sheet={block.sheet}
        columns={columns}
        rows={view.rows}
        order={view.order}
        onOrder={view.sortBy}
        onChosen={({ column }) => setAbout(columns[column].name)}
        onSaid={setSaid}
      />
      <AboutColumn sheet={block.sheet} shown={columns.find(({ name }) => name === about) ?? columns[0]} />
      <TakeAway block={{ ...block, rows: view.rows }} />
    </>
  );
}
