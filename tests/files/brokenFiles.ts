import { readdirSync, readFileSync } from 'node:fs';
import { gridOfText } from '../../lib/files/guided/cellGrid.ts';
import { readPlanned } from '../../lib/files/guided/readPlanned.ts';
import { suggestPlan } from '../../lib/files/guided/suggestPlan.ts';
import { isMissing } from '../../lib/files/missingWords.ts';
import { readTable, type TableRead } from '../../lib/files/readTable.ts';
import { type Column, TextColumn } from '../../lib/sheet/column.ts';
import type { Random } from '../../lib/stats/random.ts';

const folder = new URL('../fixtures/files/', import.meta.url);
const own = readdirSync(folder)
  .filter((name) => !name.endsWith('.md'))
  .map((name) => new Uint8Array(readFileSync(new URL(name, folder))));

/** Files in which names and cells are what a program might take for something else. */
const hostile = [
  'horse_id,date,limb,moment,repeat,toe_angle_deg,note\n__proto__,2026-03-09,LF,before,1,52,=1+1\nconstructor,2026-03-09,RF,before,1,49,"<script>"\n',
  'Horse;Date;Limb;Toe angle;Toe length\n"‮evil";9.3.2026;n/f;52°;8,5 cm\n🐴;10.3.2026;off hind;"49,5";3 1/4 in\n',
  'Animal\tDay\tLF toe angle\tRF toe angle\r\n"a ""b"""\t2026-03-09\t52\t51\r\n\'=x\t2026-03-10\t-\tNA\r\n',
].map((text) => new TextEncoder().encode(text));

const files = [...own, ...hostile];
const signs = Array.from('",;\t\r\n =-+@\'0.\u0000%/', (sign) => sign.charCodeAt(0));
const pieces = [
  '""',
  '"',
  '\r\n',
  'sep=;\n',
  '\ufeff',
  '\u0000\u0000',
  '1e999',
  '-0',
  '9'.repeat(400),
  '__proto__',
  ',,,,',
  '\u2028',
  '\xa0',
];

/** A valid file with bytes changed, put in, taken out, doubled, moved or cut off; or with pieces of another in it. */
export function brokenFile({ below }: Random): Uint8Array {
  let bytes = Uint8Array.from(files[below(files.length)]);
  for (let change = 1 + below(10); change > 0; change--) {
    const [a, b] = [below(bytes.length + 1), below(bytes.length + 1)].sort((x, y) => x - y);
    const byte = below(2) === 0 ? signs[below(signs.length)] : below(256);
    switch (below(9)) {
      case 0:
      case 1:
        if (a < bytes.length) bytes[a] = byte;
        break;
      case 2:
        bytes = joined(bytes.subarray(0, a), [byte], bytes.subarray(a));
        break;
      case 3:
        bytes = joined(bytes.subarray(0, a), bytes.subarray(Math.min(b, a + 1 + below(20))));
        break;
      case 4:
        bytes = joined(bytes.subarray(0, b), bytes.subarray(a, Math.min(b, a + 400)), bytes.subarray(b));
        break;
      case 5:
        bytes = joined(bytes.subarray(0, a), new TextEncoder().encode(pieces[below(pieces.length)]), bytes.subarray(a));
        break;
      case 6: {
        const other = files[below(files.length)];
        bytes = joined(bytes.subarray(0, a), other.subarray(below(other.length)), bytes.subarray(b));
        break;
      }
      case 7:
        if (below(4) === 0) bytes = bytes.slice(0, b);
        break;
      default:
        // The same sign many times over.
        bytes = joined(bytes.subarray(0, a), new Uint8Array(below(3000)).fill(byte), bytes.subarray(a));
    }
    // Pieces of pieces would grow without end.
    if (bytes.length > 60_000) bytes = bytes.slice(0, 60_000);
  }
  return bytes;
}

function joined(...parts: readonly ArrayLike<number>[]): Uint8Array<ArrayBuffer> {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

/** How a file was read. */
export interface Account {
  readonly rows: number;
  /** How many cells with text in them were looked at. */
  readonly cells: number;
  /** Cells that are neither read nor kept to be reported. */
  readonly lost: readonly string[];
  readonly problems: number;
}

/** Reads a file by a plan that is suggested for it, as the guided import does. @throws where a problem has no place in it */
export function readGuided(source: Uint8Array): void {
  const grid = gridOfText(source, 'x.csv');
  const planned = readPlanned(grid, suggestPlan(grid));
  lengthOf(planned);
  for (const { row } of planned.problems)
    if (!Number.isInteger(row) || row < 0 || row > grid.rows.length + 1) throw new Error(`no row ${row} in the file`);
}

/** Reads a file, and counts its cells. */
export function accountOf(source: Uint8Array): Account {
  const read = readTable(source);
  const rows = lengthOf(read);
  for (const { row, remedy, expected } of read.problems)
    if (!Number.isInteger(row) || row < 0 || expected === '' || remedy === '')
      throw new Error('a problem without words');
  const text = asText(source, read);
  const account = { rows, problems: read.problems.length };
  if (read.schema === undefined || lengthOf(text) !== rows) return { ...account, cells: 0, lost: [] };
  let cells = 0;
  const lost: string[] = [];
  if (text.headings.length !== read.headings.length) throw new Error('a column was lost on the way to its text');
  read.headings.forEach(({ column, heading }, c) => {
    const texts = text.columns[text.headings[c].column];
    // A heading that means nothing to the text's reading is read as it looks there too.
    if (!(texts instanceof TextColumn)) return;
    for (let row = 0; row < rows; row++) {
      const cell = texts.at(row);
      if (isMissing(cell)) continue;
      cells++;
      const kept = read.entered.get(column)?.has(row) ?? false;
      if (hasValue(read.columns[column] as Column, row) === kept) lost.push(`${heading}, row ${row}: ${cell}`);
    }
  });
  return { ...account, cells, lost };
}

function lengthOf({ columns }: TableRead): number {
  const lengths = new Set(Object.values(columns).map(({ values }) => values.length));
  if (lengths.size > 1) throw new Error('columns of different lengths');
  return [...lengths][0] ?? 0;
}

function hasValue(column: Column, row: number): boolean {
  return column instanceof TextColumn ? column.codes[row] >= 0 : !Number.isNaN(column.values[row]);
}

/** The same file with every cell as text, by the same names and rows. */
function asText(source: Uint8Array, { headings }: TableRead): TableRead {
  const columns = headings.map(({ heading }) => {
    return { name: heading, title: heading, kind: 'text', unit: '1', headings: [] } as const;
  });
  return readTable(source, { schema: { name: 'text', columns, required: [], keys: ['x'] } });
}
