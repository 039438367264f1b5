import { type CellGrid, headingsKey, type ImportPlan } from '../../lib/index.ts';

const KEY = 'evenhoof matched headings';
const most = 40;

/** How someone matched the columns of a file with the same headings before; `undefined` where nobody did. */
export function rememberedPlan(grid: CellGrid, plan: ImportPlan): ImportPlan | undefined {
  const known = new Map(matchings()).get(headingsKey(grid, plan));
  return known && { ...known, headingRow: plan.headingRow, given: [] };
}

/** Remembers how columns were matched. What was typed for all rows belongs to this file alone. */
export function rememberPlan(grid: CellGrid, plan: ImportPlan): void {
  const key = headingsKey(grid, plan);
  const others = matchings().filter(([other]) => other !== key);
  try {
    localStorage.setItem(KEY, JSON.stringify([...others, [key, { ...plan, given: [] }]].slice(-most)));
  } catch {
    // Where nothing can be kept the columns are matched again.
  }
}

function matchings(): (readonly [key: string, plan: ImportPlan])[] {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    return Array.isArray(kept) ? kept : [];
  } catch {
    return [];
  }
}
