import { children, keysOf } from '../sheet/formula/children.ts';
import { functions } from '../sheet/formula/functions.ts';
import type { Node } from '../sheet/formula/syntax.ts';
import type { Sheet } from '../sheet/sheet.ts';

/** Whether a column can be worked out from the rows of each horse by themselves: it rests on no summary across horses. */
export function withinHorses(sheet: Sheet, name: string): boolean {
  const formula = sheet.checkedFormula(name);
  return formula === undefined || isWithin(formula, sheet);
}

function isWithin(node: Node, sheet: Sheet): boolean {
  if (node.kind === 'column') return withinHorses(sheet, node.name);
  const across =
    node.kind === 'call' && functions.get(node.name)?.sort === 'summary' && !keysOf(node).includes('horse_id');
  return !across && children(node).every((part) => isWithin(part, sheet));
}
