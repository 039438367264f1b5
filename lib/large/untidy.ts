import { LargeTableError } from './largeTableError.ts';

/**
 * That a large table is not as it must be, and what to do.
 * @param found  where, what was found and what was expected
 */
export function untidy(found: string): LargeTableError {
  return new LargeTableError(
    `${found}. Large tables must be tidy: give what evenhoof tidy --format parquet makes of these files`,
  );
}

/**
 * What the engine says of a file, which is long and speaks of its own settings, in our words; any other error as it is.
 * @param error  as the engine throws it
 * @param file  the file that is being read; left out, the one that a message about CSV names
 */
export function inOurWords(error: unknown, file?: string): unknown {
  if (!(error instanceof Error) || error instanceof LargeTableError) return error;
  const { message } = error;
  const named = file ?? message.match(/^ *file = (.*)$/m)?.[1];
  if (named === undefined) return error;
  const said = (pattern: RegExp) => message.match(pattern)?.slice(1);
  if (said(/No files found/))
    return new LargeTableError(`${named} can't be read: there is no such file. Check its name and its folder`);
  const [line] = said(/CSV Error on Line: (\d+)/) ?? [];
  const place = line === undefined ? named : `${named}, line ${line}`;
  const cell = said(/column "([^\n]*)"\. Could not convert string "(.*?)" to '(\w+)'/s);
  if (cell) {
    const [column, text, type] = cell;
    return untidy(`${place}, column ${column}: found “${text}”, expected ${kinds[type] ?? 'a number'}`);
  }
  const [wide, cells] = said(/Expected Number of Columns: (\d+) Found: (\d+)/) ?? [];
  if (cells) return untidy(`${place}: found ${cells} cells, expected ${wide} as in the headings`);
  if (said(/unterminated quote/i)) return untidy(`${place}: found a quotation mark without its end`);
  if (said(/Invalid unicode/i)) return untidy(`${place}: found bytes that are not UTF-8`);
  if (said(/sniffing/)) return untidy(`${named} can't be read as CSV: its rows have no shape in common`);
  if (said(/Parquet file|magic bytes/)) return new LargeTableError(`${named} is no Parquet file, or not a whole one`);
  return new LargeTableError(`${place} can't be read (${message.split('\n', 1)[0]})`);
}

const kinds: Readonly<Record<string, string>> = {
  DATE: 'a date as 2026-03-09',
  BOOLEAN: 'TRUE or FALSE',
};
