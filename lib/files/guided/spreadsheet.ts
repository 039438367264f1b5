import type { CellValue, Workbook } from 'hucre/xlsx';
import { isoFromDays } from '../../sheet/days.ts';
import { say } from '../../words/say.ts';
import { guard } from '../guard.ts';
import { type CellGrid, mostColumns } from './cellGrid.ts';

/** Whether a file is packed as spreadsheets and archives are. */
export function isPacked(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;
}

/** A spreadsheet that can't be read, in words for the reader. */
export class SpreadsheetError extends Error {
  override readonly name = 'SpreadsheetError';
}

/**
 * The sheets of a spreadsheet's own file (XLSX or ODS) as texts: values as they were computed last, dates as ISO dates
 * whichever year the file counts its days from, numbers with all their digits. What reads it is loaded when it is needed.
 * @returns the sheets that hold anything
 * @throws SpreadsheetError where it can't be read
 */
export async function readSpreadsheet(bytes: Uint8Array, file: string): Promise<CellGrid[]> {
  const book = await workbook(bytes, file);
  const grids = book.sheets.map(({ name, rows }): CellGrid => {
    const texts = rows.map((row) => row.map(textOf));
    return { file, sheet: name, rows: texts, serial: book.dateSystem === '1904' ? 1904 : 1900 };
  });
  const filled = grids.filter(({ rows }) => rows.some((row) => row.some((text) => text !== '')));
  if (filled.length === 0)
    throw new SpreadsheetError(say`${file} holds no cells. Choose the file with the measurements`);
  const wide = filled.find(({ rows }) => rows.some((row) => row.length > mostColumns));
  if (wide)
    throw new SpreadsheetError(
      say`The sheet ${wide.sheet.slice(0, 60)} of ${file} has more than ${mostColumns} columns. Take out what is no measurement, and save it again`,
    );
  return filled;
}

async function workbook(bytes: Uint8Array, file: string): Promise<Workbook> {
  try {
    // The names of what is packed stand at the end; only the one format has a file of this name.
    const names = new TextDecoder('latin1').decode(bytes.subarray(-(1 << 16)));
    if (!names.includes('[Content_Types].xml')) return await (await import('hucre/ods')).readOds(bytes);
    return await (await import('hucre/xlsx')).readXlsx(bytes);
  } catch {
    throw new SpreadsheetError(
      say`${file} could not be read as a spreadsheet (XLSX or ODS). Save it again in its program, or save it there as CSV`,
    );
  }
}

function textOf(value: CellValue): string {
  if (value === null || value === undefined) return '';
  if (value instanceof Date) return dateText(value);
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return typeof value === 'string' ? guard(value) : String(value);
}

const dayLength = 86_400_000;

/** A date without its time, which no table keeps; a time alone as it is. */
function dateText(value: Date): string {
  const days = Math.floor(value.getTime() / dayLength);
  if (Number.isNaN(days)) return '';
  const iso = value.toISOString();
  return value.getTime() === days * dayLength ? isoFromDays(days) : `${iso.slice(0, 10)} ${iso.slice(11, 16)}`;
}
