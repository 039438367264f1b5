import type { Kind } from '../../sheet/column.ts';
import { type DisplayUnits, formatQuantity } from '../../sheet/display.ts';
import { children } from '../../sheet/formula/children.ts';
import type { LineageNode } from '../../sheet/formula/lineage.ts';
import { parse } from '../../sheet/formula/parse.ts';
import { print } from '../../sheet/formula/print.ts';
import type { Node, Place } from '../../sheet/formula/syntax.ts';
import { say } from '../../words/say.ts';
import { shownDay } from '../../words/shownDay.ts';

/**
 * A formula with the numbers of one cell in place of its columns: `medial_wall_mm - lateral_wall_mm` becomes
 * `51.5 mm − 47.9 mm`. Another row's value and a summary stand as their one number; a part that the cell did not come from
 * (the branch of a choice that was not taken) keeps its words.
 * @param lineage of the cell, with its formula
 */
export function formulaWithNumbers(lineage: LineageNode, units: DisplayUnits): string {
  const { formula = '', from } = lineage;
  const pieces: (Place & { readonly text: string })[] = [];
  const put = (node: Node, source: LineageNode | undefined) => {
    if (source) pieces.push({ start: node.start, end: node.end, text: quantityOf(source, units) });
  };
  const visit = (node: Node): void => {
    if (node.kind === 'column') put(node, plain(node.name));
    else if (node.kind === 'call') {
      const other = fromElsewhere(node, from);
      if (other) put(node, other);
      else node.args.forEach(visit);
    } else children(node).forEach(visit);
  };
  const plain = (name: string) => from.find(({ column, via }) => column === name && via === undefined);
  visit(parse(formula));
  let text = formula;
  for (const { start, end, text: piece } of pieces.sort((a, b) => b.start - a.start))
    text = text.slice(0, start) + piece + text.slice(end);
  return signs(text);
}

/** What a call came to by another row or by a group: its words say so. */
function fromElsewhere({ name, args }: Node & { kind: 'call' }, from: readonly LineageNode[]): LineageNode | undefined {
  const inside = args.length > 0 ? print(args[0]) : '';
  return from.find(({ column, via = '' }) => column === inside && /\w+/.exec(via)?.[0] === name);
}

/** A cell's value in words, as its column's kind has it; an error after it only where it is asked for. */
export function quantityOf(
  { value, unit, error }: LineageNode,
  units: DisplayUnits,
  withError = false,
  kind: Kind = 'number',
): string {
  if (typeof value === 'string') return value === '' ? say`missing` : `“${value}”`;
  if (Number.isNaN(value)) return say`missing`;
  if (kind === 'boolean') return value ? say`yes` : say`no`;
  if (kind === 'date') return shownDay(value);
  return formatQuantity(value, unit === '' ? '1' : unit, units, withError ? { error } : {});
}

/** As it would be written by hand. */
function signs(text: string): string {
  return text
    .replace(/\s\*\*\s/g, say` to the power of `)
    .replace(/\s\*\s/g, ' × ')
    .replace(/\s-\s/g, ' − ')
    .replace(/\s\/\s/g, ' ÷ ');
}
