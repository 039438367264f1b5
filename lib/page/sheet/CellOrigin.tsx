import { useContext, useMemo } from 'preact/hooks';
import type { LineageNode } from '../../sheet/formula/lineage.ts';
import { say } from '../../words/say.ts';
import type { Editable, SheetBlock } from '../blocks.ts';
import { Drawing } from '../parts/Drawing.tsx';
import { SurroundingsContext } from '../surroundings.ts';
import { formulaWithNumbers, quantityOf } from './formulaWithNumbers.ts';
import type { ShownColumn } from './shownColumns.ts';
import { useRested } from './useRested.ts';

interface OriginProps {
  readonly sheet: SheetBlock['sheet'];
  readonly editable: Editable;
  readonly shown: ShownColumn;
  readonly row: number;
  /** The text in the cell, where it could not be read. */
  readonly unread?: string;
  /** Which foot the row is of, in words. */
  readonly subject: string;
  readonly revision: number;
}

/** Where the chosen cell came from: its numbers, its sentence, where it is measured, its range, its error, its roots. */
export function CellOrigin(props: OriginProps) {
  const { sheet, editable, shown, row, unread, subject, revision } = useRested(props, 120, Object.values(props));
  const { units } = useContext(SurroundingsContext);
  const lineage = useMemo(
    () =>
      row >= 0 && row < sheet.rows && sheet.names.includes(shown.name) ? sheet.lineage(shown.name, row) : undefined,
    [sheet, shown.name, row, revision],
  );
  if (!lineage) return null;
  const known = (name: string) => (sheet.names.includes(name) ? sheet.describe(name) : undefined);
  const titleOf = (name: string) => known(name)?.title ?? name;
  const words = (node: LineageNode, withError = true) => quantityOf(node, units, withError, known(node.column)?.kind);
  const roots = rootsOf(lineage);
  const about = editable.about(shown.name, [...new Set(roots.map(({ column }) => column))]);
  const worked = lineage.formula !== undefined;
  return (
    <section class="origin unprinted" aria-label={say`Where the chosen cell came from`}>
      <div class="origin-words">
        <p class="origin-subject">{subject}</p>
        <p class="origin-value">
          <span>{shown.title}</span>{' '}
          <strong class="number">{unread === undefined ? words(lineage) : say`“${unread}”, left out`}</strong>
        </p>
        {worked && (
          <>
            <p>
              {capital(sheet.sentence(shown.name))}. <code>{lineage.formula}</code>
            </p>
            <p class="origin-numbers number">
              {formulaWithNumbers(lineage, units)} <span class="gives">{say`gives`}</span> {words(lineage, false)}
            </p>
          </>
        )}
        {!worked && <p>{say`Measured or typed in. ${errorWords(lineage)}`}</p>}
        {worked && lineage.error === undefined && typeof lineage.value === 'number' && !Number.isNaN(lineage.value) && (
          <p>{say`How far it may be off is not known: the error of something that it is made from is unknown.`}</p>
        )}
        <dl class="origin-facts">
          {about.facts.map(({ label, text }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      </div>
      {about.drawing && <Drawing node={about.drawing} label="" />}
      {worked && lineage.from.length > 0 && (
        <div class="origin-tree">
          <p class="origin-heading">{say`What it came from`}</p>
          <Tree nodes={lineage.from} titleOf={titleOf} words={words} />
        </div>
      )}
    </section>
  );
}

interface TreeProps {
  readonly nodes: readonly LineageNode[];
  readonly titleOf: (name: string) => string;
  readonly words: (node: LineageNode) => string;
}

function Tree({ nodes, titleOf, words }: TreeProps) {
  return (
    <ul>
      {nodes.map((node, index) => (
        <li key={index}>
          {node.via && <span class="via">{node.via.replace(/_/g, ' ')}: </span>}
          {titleOf(node.column)} <strong class="number">{words(node)}</strong>
          {node.formula === undefined && node.from.length === 0 && typeof node.value === 'number' && (
            <span class="via">{node.error === undefined ? say`, error not known` : ''}</span>
          )}
          {node.from.length > 0 && <Tree nodes={node.from} titleOf={titleOf} words={words} />}
        </li>
      ))}
    </ul>
  );
}

/** The cells at the ends of the tree. */
function rootsOf(node: LineageNode): readonly LineageNode[] {
  return node.from.length === 0 ? [node] : node.from.flatMap(rootsOf);
}

function errorWords({ value, error }: LineageNode): string {
  if (typeof value !== 'number' || Number.isNaN(value)) return '';
  return error === undefined ? say`How far one reading may be off is not known.` : '';
}

const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);
