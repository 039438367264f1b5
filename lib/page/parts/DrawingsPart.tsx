import type { SvgNode } from '../../views/svg.ts';
import type { Drawings } from '../blocks.ts';
import { Drawing } from './Drawing.tsx';

/** Between the drawings of one row, in px; the style sheet's `--space-close`. */
const GAP = 8;

export function DrawingsPart({ block }: { block: Drawings }) {
  const rows = block.items.map(({ drawing }) => [drawing].flat() as readonly SvgNode[]);
  const several = rows.some(({ length }) => length > 1);
  return (
    <figure class={several ? 'drawings rows' : 'drawings'} style={several ? extents(rows) : undefined}>
      {block.title && <p class="figure-title">{block.title}</p>}
      <ul>
        {block.items.map(({ title, note, href }, index) => (
          <li key={title}>
            <div class="row">
              {rows[index].map((drawing, place) => (
                <div key={place} style={{ '--wide': size(drawing, 'width') }}>
                  <Drawing node={drawing} label={note ? `${title}. ${note}` : title} />
                </div>
              ))}
            </div>
            <p class="drawing-title">{href ? <a href={href}>{title}</a> : title}</p>
            {note && <p class="note">{note}</p>}
          </li>
        ))}
      </ul>
      {block.caption && <figcaption>{block.caption}</figcaption>}
    </figure>
  );
}

const size = (drawing: SvgNode, side: 'width' | 'height') => Number(drawing.attributes[side] ?? 0);

/** The widest row and the tallest drawing, from which the style sheet shrinks all by one factor: one scale throughout. */
function extents(rows: readonly (readonly SvgNode[])[]) {
  const widths = rows.map((row) => row.reduce((sum, one) => sum + size(one, 'width') + GAP, -GAP));
  const heights = rows.flat().map((one) => size(one, 'height'));
  return { '--widest': Math.max(1, ...widths), '--tallest': Math.max(1, ...heights) };
}
