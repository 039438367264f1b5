import { bibliography } from '../hoof/bibliography.ts';
import type { Herd } from '../hoof/herd.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { say } from '../words/say.ts';
import { dataPackage, type Resource } from './dataPackage.ts';
import { problemColumns } from './problems.ts';
import { writeTable } from './writeTable.ts';

export interface TidyFile {
  readonly name: string;
  readonly contents: string;
}

/** A tidy file whose columns have types of their own. */
export interface ColumnarTidyFile {
  readonly name: string;
  readonly contents: Uint8Array;
}

/**
 * A herd as tidy files: `feet.csv`, `intervals.csv`, `horses.csv` and `problems.csv`, one row an observation, and
 * `datapackage.json`, which says what stands in them.
 * @param created  the moment to write into the package, as RFC 3339; left out, none is
 */
export function tidyFiles(herd: Herd, created?: string): TidyFile[] {
  const resources = tables(herd);
  const keyed = new Set(herd.horses.column('horse_id').values as readonly string[]);
  const known = (sheet: Sheet) =>
    (sheet.column('horse_id').values as readonly string[]).every((horse) => keyed.has(horse));
  const described = resources.map((resource) => ({
    ...resource,
    ...(resource.name === 'horses' && { primaryKey: ['horse_id'] }),
    ...((resource.name === 'feet' || resource.name === 'intervals') &&
      known(herd[resource.name]) && {
        foreignKeys: [{ fields: ['horse_id'], reference: { resource: 'horses', fields: ['horse_id'] } }],
      }),
  }));
  const descriptor = dataPackage(described, {
    name: 'herd',
    title: say`A herd’s feet, tidy`,
    created,
    sources: Object.values(bibliography).map(({ text }) => ({ title: text })),
  });
  return [
    ...resources.map(({ path, columns }) => ({ name: path, contents: writeTable(columns) })),
    { name: 'datapackage.json', contents: `${JSON.stringify(descriptor, null, 2)}\n` },
  ];
}

/**
 * The same tables as Parquet or Arrow files, which say themselves what stands in them: types, titles, units and formulas.
 * @example for (const { name, contents } of await columnarTidyFiles(herd, 'parquet')) writeFileSync(name, contents)
 */
export async function columnarTidyFiles(herd: Herd, format: 'arrow' | 'parquet'): Promise<ColumnarTidyFile[]> {
  const write =
    format === 'arrow'
      ? (await import('./columnar/arrow.ts')).writeArrow
      : (await import('./columnar/parquet.ts')).writeParquet;
  const files: ColumnarTidyFile[] = [];
  for (const { name, columns } of tables(herd))
    files.push({ name: `${name}.${format}`, contents: await write(columns) });
  return files;
}

function tables(herd: Herd): Resource[] {
  const problems = problemColumns(herd.problems);
  return [
    table('feet', say`Feet`, say`One row a foot each time it was measured, with the computed columns.`, herd.feet),
    table(
      'intervals',
      say`Intervals`,
      say`One row a foot and gap between one visit’s work and the next.`,
      herd.intervals,
    ),
    table(
      'horses',
      say`Horses`,
      say`One row a horse: means of front and hind feet, and left minus right.`,
      herd.horses,
    ),
    {
      name: 'problems',
      path: 'problems.csv',
      title: say`Problems`,
      description: say`One row a cell that could not be used, with its text as entered.`,
      columns: problems,
    },
  ];
}

function table(name: string, title: string, description: string, sheet: Sheet): Resource {
  return {
    name,
    path: `${name}.csv`,
    title,
    description,
    columns: sheet,
    describe: (column) => sheet.describe(column),
  };
}
