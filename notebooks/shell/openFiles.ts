import { type KeptTable, type KeptTables, problemSentence, readTable, type TableName } from '../../lib/index.ts';
import { tableNames } from './herdInUse.ts';

export type DateOrder = 'dmy' | 'mdy';

/**
 * Reads the files that someone chose or dropped, in any order.
 * @param askDates asked for each file whose dates can be read both ways; `undefined` means: leave it
 * @returns the tables by what they are; `undefined` where a question was left unanswered
 * @throws Error in words for the reader where a file can't be used, or two files hold the same table
 */
export async function openFiles(
  files: readonly File[],
  askDates: (file: string) => Promise<DateOrder | undefined>,
): Promise<KeptTables | undefined> {
  const tables: Partial<Record<TableName, KeptTable>> = {};
  for (const { name: file, bytes } of await Promise.all(files.map(bytesOf))) {
    let read = readTable(bytes, { file });
    if (Object.keys(read.columns).length === 0) throw new Error(problemSentence(read.problems[0]));
    if (read.dates === 'undecided') {
      const dates = await askDates(file);
      if (!dates) return undefined;
      read = readTable(bytes, { file, dates });
    }
    const table = tableNames.find((name) => name === read.schema);
    if (!table)
      throw new Error(
        `The headings of ${file} don’t say whether it holds feet, horses or visits. A table of feet has a horse, a date, a limb and at least one measurement`,
      );
    const twin = tables[table];
    if (twin) throw new Error(`${twin.file} and ${file} both hold the table of ${table}. Open one of them`);
    tables[table] = { columns: read.columns, problems: read.problems, entered: read.entered, file };
  }
  return tables;
}

const bytesOf = async (file: File) => ({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) });
