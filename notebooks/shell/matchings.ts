import { type CellGrid, headingsKey, type ImportPlan } from '../../lib/index.ts';

const KEY = 'evenhoof matched headings';
const most = 40;

/** How someone matched the columns of a file with the same headings before. */
export interface Matching {
  readonly plan: ImportPlan;
  /** The day, in days since 1970-01-01, and the file; unknown of what was kept before they were. */
  readonly made?: { readonly on: number; readonly file: string };
}

type Kept = readonly [key: string, plan: ImportPlan, made?: Matching['made']];

/** The matching of a file with the same headings; `undefined` where there was none. */
export function rememberedMatching(grid: CellGrid, plan: ImportPlan): Matching | undefined {
  const key = headingsKey(grid, plan);
  const kept = matchings().find(([other]) => other === key);
  return kept && { plan: { ...kept[1], headingRow: plan.headingRow, given: [] }, ...(kept[2] && { made: kept[2] }) };
}

/** Remembers how columns were matched. What was typed for all rows belongs to this file alone. */
export function rememberMatching(grid: CellGrid, plan: ImportPlan): void {
  const now = new Date();
  const on = Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / 86_400_000;
  const kept: Kept = [headingsKey(grid, plan), { ...plan, given: [] }, { on, file: grid.file }];
  keep([...without(kept[0]), kept].slice(-most));
}

/** The next file with these headings is matched by what is likely alone. */
export function forgetMatching(grid: CellGrid, plan: ImportPlan): void {
  keep(without(headingsKey(grid, plan)));
}

const without = (key: string) => matchings().filter(([other]) => other !== key);

function keep(all: readonly Kept[]): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(all));
  } catch {
    // Where nothing can be kept the columns are matched again.
  }
}

function matchings(): readonly Kept[] {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    return Array.isArray(kept) ? kept : [];
  } catch {
    return [];
  }
}
