import { say } from '../../words/say.ts';
import type { Form } from '../blocks.ts';

export function FormPart({ block }: { block: Form }) {
  const { title, caption, columns, rows, lines, onPaper = rows.length } = block;
  return (
    <figure class="form">
      {rows.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table must be scrolled by keyboard too
        <section class="form-table" aria-label={title} tabIndex={0}>
          <table>
            <caption>{title}</caption>
            <thead>
              <tr>
                {columns.map((column) => (
                  <th key={column} scope="col">
                    {column}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((cells, row) => (
                <tr key={`${row} ${cells[0]}`} class={row < onPaper ? undefined : 'unprinted'}>
                  {cells.map((cell, place) =>
                    place === 0 ? (
                      <th key={columns[place]} scope="row">
                        {cell}
                      </th>
                    ) : (
                      <td key={columns[place]} class={cell === '' ? 'to-fill' : undefined}>
                        {cell}
                      </td>
                    ),
                  )}
                </tr>
              ))}
            </tbody>
          </table>
          {rows.length > onPaper && (
            <p class="note on-paper">{say`And ${rows.length - onPaper} more, on the screen.`}</p>
          )}
        </section>
      )}
      {lines && (
        <div class="ruled">
          <p class="note">{lines.label}</p>
          {Array.from({ length: lines.count }, (_, line) => (
            <hr key={line} />
          ))}
        </div>
      )}
      {caption && <figcaption>{caption}</figcaption>}
    </figure>
  );
}
