import { useContext, useEffect, useId, useMemo, useState } from 'preact/hooks';
import type { SheetBlock } from '../blocks.ts';
import { DownloadPart } from '../parts/DownloadPart.tsx';
import { SurroundingsContext } from '../surroundings.ts';
import { AboutColumn } from './AboutColumn.tsx';
import { ConditionBar } from './ConditionBar.tsx';
import { Grid } from './Grid.tsx';
import { type Condition, matchingRows, type Order } from './matchingRows.ts';
import { StillTable } from './StillTable.tsx';
import { shownColumns } from './shownColumns.ts';

/** A table: a grid on the screen, a plain table on paper and in a file. */
export function SheetPart({ block }: { block: SheetBlock }) {
  const { still } = useContext(SurroundingsContext);
  const id = useId();
  return (
    <figure class="sheet" aria-labelledby={id}>
      <p class="figure-title" id={id}>
        {block.title}
      </p>
      {block.caption && <figcaption>{block.caption}</figcaption>}
      {still ? <StillTable block={block} /> : <LiveSheet block={block} />}
    </figure>
  );
}

function LiveSheet({ block }: { block: SheetBlock }) {
  const { units, files } = useContext(SurroundingsContext);
  const columns = useMemo(
    () => shownColumns(block.sheet, block.columns, units),
    [block.sheet, block.columns?.join('\n'), units],
  );
  const [conditions, setConditions] = useState<readonly Condition[]>([]);
  const [order, setOrder] = useState<Order | undefined>();
  const [about, setAbout] = useState('');
  const [said, say] = useState('');
  const rows = useMemo(
    () => matchingRows(block.sheet, conditions, order, block.rows),
    [block.sheet, block.rows, conditions, order],
  );
  const printing = usePrinting();
  const all = block.rows?.length ?? block.sheet.rows;
  const count = `${number(rows.length)}${rows.length < all ? ` of ${number(all)}` : ''} ${all === 1 ? 'row' : 'rows'}`;

  function sortBy(column: string) {
    if (order?.column !== column) setOrder({ column, direction: 'ascending' });
    else setOrder(order.direction === 'ascending' ? { column, direction: 'descending' } : undefined);
  }

  if (columns.length === 0) return <p class="note">This table has no columns yet.</p>;
  return (
    <>
      <ConditionBar columns={columns} conditions={conditions} onChange={setConditions} />
      <p class="sheet-count" role="status">
        {count}
        {said && `. ${said}`}
      </p>
      {printing && <StillTable block={{ ...block, rows }} />}
      <Grid
        label={block.title}
        sheet={block.sheet}
        columns={columns}
        rows={rows}
        order={order}
        onOrder={sortBy}
        onColumn={({ name }) => setAbout(name)}
        onCopied={(cells) => say(`${number(cells)} ${cells === 1 ? 'cell' : 'cells'} copied`)}
      />
      <AboutColumn sheet={block.sheet} shown={columns.find(({ name }) => name === about) ?? columns[0]} />
      <p class="takeaway">
        {files({ ...block, rows }).map((file) => (
          <DownloadPart key={file.filename} block={file} />
        ))}
      </p>
    </>
  );
}

const number = (value: number) => value.toLocaleString('en');

/** Whether the page is being laid out for paper. */
function usePrinting(): boolean {
  const paper = useMemo(() => matchMedia('print'), []);
  const [printing, setPrinting] = useState(paper.matches);
  useEffect(() => {
    const follow = () => setPrinting(paper.matches);
    paper.addEventListener('change', follow);
    return () => paper.removeEventListener('change', follow);
  }, []);
  return printing;
}
