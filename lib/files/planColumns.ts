import { measures } from '../hoof/measures/index.ts';
import type { ColumnPlan } from './columnPlan.ts';
import { unguard } from './guard.ts';
import { type HeadingMatch, matchHeading } from './headings.ts';
import type { ProblemLog } from './problemLog.ts';
import type { TableSchema } from './schemas.ts';
import { unitOfName } from './unitCode.ts';

/** Columns that tidy tables bring along beside what they were made from. */
const computed = new Set(measures.map(({ name }) => name));

/**
 * What each column of a file is, from its headings. Each column of the schema goes to one heading: its own name before any
 * other words for it, and the first before the second. All other columns keep their heading as their name.
 * @param row  of the headings, as a spreadsheet numbers it
 */
export function planColumns(
  texts: readonly string[],
  row: number,
  schema: TableSchema | undefined,
  log: ProblemLog,
): ColumnPlan[] {
  const headings = texts.map(unguard);
  const matches = headings.map((heading) => schema && matchHeading(heading, schema));
  const owners = ownersOf(matches);
  const first = new Map<string, number>();
  headings.forEach((heading, c) => {
    if (!first.has(heading)) first.set(heading, c);
  });
  const taken = new Set([...headings, ...owners.keys()]);
  const next = new Map<string, number>();
  const unused = (name: string): string => {
    let n = next.get(name) ?? 2;
    while (taken.has(`${name}_${n}`)) n++;
    next.set(name, n + 1);
    taken.add(`${name}_${n}`);
    return `${name}_${n}`;
  };

  const plans: ColumnPlan[] = [];
  headings.forEach((heading, c) => {
    const match = matches[c];
    const owned = match && owners.get(match.column.name) === c;
    if (owned) {
      const { name, kind, unit } = match.column;
      const headingUnit = match.unit === unit ? undefined : match.unit;
      plans.push({ name, heading, kind, unit, headingUnit, schema: match.column });
      return;
    }
    const repeated = heading !== '' && first.get(heading)! < c;
    let name = heading;
    if (heading === '') name = taken.has(`column_${c + 1}`) ? unused(`column_${c + 1}`) : `column_${c + 1}`;
    else if (repeated) name = unused(plans[first.get(heading)!].name);
    else if (owners.has(heading)) name = unused(heading);
    if (repeated) log.about('duplicate-heading', row, name, heading, name);
    else if (match?.wrongUnit) log.about('heading-unit', row, name, heading, match.column.title.toLowerCase());
    else if (match && match.column.kind === 'number' && !computed.has(heading))
      log.about('same-meaning', row, name, heading, match.column.name);
    plans.push({ name, heading, kind: 'text', unit: unitOfName(name) });
  });
  for (const name of schema?.required ?? []) if (!owners.has(name)) log.about('missing-column', row, name, '', name);
  return plans;
}

/** For each column of the schema that is found, which heading it goes to. */
function ownersOf(matches: readonly (HeadingMatch | undefined)[]): Map<string, number> {
  const owners = new Map<string, number>();
  for (const exact of [true, false])
    matches.forEach((match, c) => {
      if (match && match.exact === exact && !match.wrongUnit && !owners.has(match.column.name))
        owners.set(match.column.name, c);
    });
  return owners;
}
