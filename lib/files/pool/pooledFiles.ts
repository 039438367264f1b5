import { say } from '../../words/say.ts';
import { dataPackage } from '../dataPackage.ts';
import type { TidyFile } from '../tidyFiles.ts';
import { writeTable } from '../writeTable.ts';
import type { Pooled } from './pooled.ts';
import { remainsInWords } from './remainsInWords.ts';

/**
 * Tables that were prepared for a pool as files: `feet.csv`, `horses.csv` and `visits.csv`, those that there are,
 * `datapackage.json`, which says what stands in them, and `what-still-identifies.md`, to be read before they are handed
 * on. The key is in none of them.
 * @param pool  what `pooled` made
 */
export function pooledFiles(pool: Pooled): TidyFile[] {
  const tables = Object.entries(pool.tables).filter(([, columns]) => columns !== undefined);
  const resources = tables.map(([name, columns]) => ({ name, path: `${name}.csv`, columns }));
  const descriptor = dataPackage(resources, {
    name: 'herd-without-names',
    title: say`A herd’s feet without names`,
    description: say`Names are pseudonyms, and the days of each horse are moved by a number of its own.`,
  });
  return [
    ...resources.map(({ path, columns }) => ({ name: path, contents: writeTable(columns) })),
    { name: 'datapackage.json', contents: `${JSON.stringify(descriptor, null, 2)}\n` },
    { name: 'what-still-identifies.md', contents: remainsInWords(pool) },
  ];
}
