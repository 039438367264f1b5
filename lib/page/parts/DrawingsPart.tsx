import type { Drawings } from '../blocks.ts';
import { Drawing } from './Drawing.tsx';

export function DrawingsPart({ block }: { block: Drawings }) {
  return (
    <figure class="drawings">
      {block.title && <p class="figure-title">{block.title}</p>}
      <ul>
        {block.items.map(({ title, note, drawing, href }) => (
          <li key={title}>
            <Drawing node={drawing} label={note ? `${title}. ${note}` : title} />
            <p class="drawing-title">{href ? <a href={href}>{title}</a> : title}</p>
            {note && <p class="note">{note}</p>}
          </li>
        ))}
      </ul>
      {block.caption && <figcaption>{block.caption}</figcaption>}
    </figure>
  );
}
