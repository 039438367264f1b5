import type { Figures } from '../blocks.ts';

export function FiguresPart({ block }: { block: Figures }) {
  return (
    <dl class="figures">
      {block.items.map(({ label, value, note }) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd class="number">{value}</dd>
          {note && <dd class="note">{note}</dd>}
        </div>
      ))}
    </dl>
  );
}
