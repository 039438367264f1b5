import { convertible, parseUnit } from '../sheet/dimension.ts';
import { type ColumnSchema, schemas, type TableSchema } from './schemas.ts';
import { unitCode } from './unitCode.ts';

/** What a heading stands for. */
export interface HeadingMatch {
  readonly column: ColumnSchema;
  /** The unit written in the heading, where it is one of the column's dimension. */
  readonly unit?: string;
  /** A unit written in the heading that the column can't have. */
  readonly wrongUnit?: string;
  /** Whether the heading is the column's own name. */
  readonly exact: boolean;
}

const shortForms: Readonly<Record<string, string>> = {
  ...{
    ang: 'angle',
    ht: 'height',
    hgt: 'height',
    len: 'length',
    lgth: 'length',
    lth: 'length',
    wd: 'width',
    wdth: 'width',
  },
  ...{ med: 'medial', lat: 'lateral', circ: 'circumference', wt: 'weight', past: 'pastern', dors: 'dorsal' },
};

/** The words of a heading in lower case, signs of units spelt out, common short forms written in full. */
export function wordsOf(heading: string): string[] {
  const words = heading
    .replace(/(\p{Ll}|\d)(\p{Lu})/gu, '$1 $2')
    .toLowerCase()
    .replace(/[°º˚]/g, ' deg ')
    .replace(/["″”]/g, ' in ')
    .replace(/%/g, ' percent ')
    .match(/[\p{L}\d]+/gu);
  return (words ?? []).map((word) => (Object.hasOwn(shortForms, word) ? shortForms[word] : word));
}

/** The words without the unit at their end: `toe length in mm` is `toe length`, in mm. */
export function withoutUnit(words: readonly string[]): { stem: string; unit?: string } {
  const unit = words.length > 1 ? unitCode(words[words.length - 1]) : undefined;
  if (unit === undefined) return { stem: words.join(' ') };
  const rest = words.slice(0, -1);
  if (rest.length > 1 && rest[rest.length - 1] === 'in') rest.pop();
  return { stem: rest.join(' '), unit };
}

/**
 * The unit, as a code, that stands at the end of a heading.
 * @example unitOfHeading('Toe (cm)') // 'cm'
 */
export function unitOfHeading(heading: string): string | undefined {
  return withoutUnit(wordsOf(heading)).unit;
}

const known = new WeakMap<TableSchema, ReadonlyMap<string, ColumnSchema>>();

/** The schema's columns by every form of heading they go by. */
function byWords(schema: TableSchema): ReadonlyMap<string, ColumnSchema> {
  let map = known.get(schema);
  if (map === undefined) {
    const forms = new Map<string, ColumnSchema>();
    for (const column of schema.columns)
      for (const heading of [column.name, column.title, ...column.headings]) {
        const words = wordsOf(heading);
        for (const form of [words.join(' '), column.unit === '1' ? '' : withoutUnit(words).stem])
          if (form !== '' && !forms.has(form)) forms.set(form, column);
      }
    map = forms;
    known.set(schema, map);
  }
  return map;
}

/**
 * The column of a schema that a heading means, as people write headings: `Toe angle`, `toe angle (deg)`, `Toe Angle [°]`.
 * @returns `undefined` where it means none
 * @example matchHeading('Toe length (cm)', schemas.feet)?.unit // 'cm'
 */
export function matchHeading(heading: string, schema: TableSchema): HeadingMatch | undefined {
  const own = schema.columns.find(({ name }) => name === heading);
  if (own !== undefined) return { column: own, exact: true };
  const words = wordsOf(heading);
  const forms = byWords(schema);
  const whole = forms.get(words.join(' '));
  const { stem, unit } = withoutUnit(words);
  const column = whole ?? forms.get(stem);
  if (column === undefined) return undefined;
  if (unit === undefined || column.kind !== 'number') return whole && { column, exact: false };
  if (convertible(parseUnit(unit), parseUnit(column.unit))) return { column, unit, exact: false };
  return whole ? { column, exact: false } : { column, wrongUnit: unit, exact: false };
}

/**
 * Which of the three tables a file is, told by its headings.
 * @returns `undefined` where they say none of them
 */
export function schemaOfHeadings(headings: readonly string[]): TableSchema | undefined {
  let best: TableSchema | undefined;
  let most = 0;
  for (const schema of Object.values(schemas)) {
    const matches = headings.flatMap((heading) => matchHeading(heading, schema) ?? []);
    const names = new Set(matches.map(({ column }) => column.name));
    const own = [...names].filter((name) => belongsOnlyTo(name, schema)).length;
    const complete = schema.required.every((name) => names.has(name));
    // `name` and `type` alone could head any list; `horse` or a name of ours says more.
    const sure = headings.some((heading) => /horse/i.test(heading)) || matches.some(({ exact }) => exact);
    if (own === 0 || (complete ? names.size + (sure ? 1 : 0) < 3 : own < 2)) continue;
    const score = names.size + (complete ? 100 : 0);
    if (score > most) {
      most = score;
      best = schema;
    }
  }
  return best;
}

function belongsOnlyTo(name: string, schema: TableSchema): boolean {
  const homes = Object.values(schemas).filter(({ columns }) => columns.some((column) => column.name === name));
  return homes.length === 1 && homes[0] === schema;
}
