import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readTable, type TableRead } from '../../../lib/files/readTable.ts';
import type { Helper } from '../../../lib/files/twoThreads/helper.ts';
import { readPart } from '../../../lib/files/twoThreads/readPart.ts';
import { type Manner, readInPieces, readTableFile } from '../../../lib/files/twoThreads/readTableFile.ts';
import { TextColumn } from '../../../lib/sheet/column.ts';
import { type Random, random } from '../../../lib/stats/random.ts';
import { brokenFile } from '../brokenFiles.ts';

const folder = mkdtempSync(join(tmpdir(), 'evenhoof-pieces-'));
const path = join(folder, 'feet.csv');
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Does its part at once, on what a message to another thread would carry. */
const prompt: Helper = {
  free: true,
  ask: (task) => {
    const read = structuredClone(readPart(structuredClone(task)));
    return () => read;
  },
};

/** Comes when a few pieces have been read. */
function late(after: number): Helper {
  let asked = 0;
  return {
    get free() {
      return asked++ > after;
    },
    ask: prompt.ask,
  };
}

function plain({ columns, ...read }: TableRead) {
  const cells = Object.entries(columns).map(([name, column]) => {
    const values =
      column instanceof TextColumn
        ? [column.levels, Array.from(column.codes)]
        : Array.from(column.values as Float64Array);
    return { name, kind: column.kind, unit: column.unit, values };
  });
  return { ...read, cells };
}

/** Compares a file read in pieces with its bytes read at once; false where it can't be read in pieces. */
function agrees(bytes: Uint8Array | string, manner: Partial<Manner> = {}): boolean {
  writeFileSync(path, bytes);
  const read = readInPieces(path, {}, { least: 1, piece: 64, helper: () => prompt, ...manner });
  if (read === undefined) return false;
  expect(plain(read)).toEqual(plain(readTable(bytes)));
  return true;
}

/** Rows with a cell of each sort; some empty, some not what their column expects, some too short or too long. */
function feet(rows: number, { below }: Random, note: () => string): string {
  const cell = (usual: () => string) =>
    below(20) === 0 ? ['', 'n/a', '?', '52°', '8,5 cm', '"52.5"', '900'][below(7)] : usual();
  const lines = Array.from({ length: rows }, () => {
    const cells = [
      ['Bella', 'Ötzi', ' Max ', '"Max"'][below(4)],
      cell(() => `2026-0${1 + below(9)}-1${below(10)}`),
      ['LF', 'RF', 'near hind', 'RH'][below(4)],
      cell(() => (45 + below(200) / 20).toFixed(below(3))),
      note(),
    ];
    if (below(40) === 0) cells.push('more');
    return below(40) === 0 ? '' : cells.slice(0, below(40) === 0 ? 3 : cells.length).join(',');
  });
  return ['horse,date,limb,toe angle,what we saw', ...lines].join('\n');
}

describe('readInPieces', () => {
  it('reads rows as readTable does, wherever pieces and halves part, with line breaks in quotes too', () => {
    const draws = random(7);
    let read = 0;
    for (let nth = 0; nth < 300; nth++) {
      const notes = [
        '',
        'sound',
        '"a, b"',
        '"say ""no"""',
        nth % 3 === 0 ? '"two\nlines"' : 'x'.repeat(draws.below(30)),
      ];
      const file = feet(100 + draws.below(100), draws, () => notes[draws.below(notes.length)]);
      const helper = draws.below(2) === 0 ? prompt : late(draws.below(5));
      if (agrees(nth % 2 === 0 ? file : `${file}\r\n`, { piece: 200 + draws.below(300), helper: () => helper })) read++;
    }
    expect(read).toBeGreaterThan(150);
  });

  it('gives what readTable gives from broken bytes, or nothing', () => {
    const draws = random(8);
    let read = 0;
    for (let nth = 0; nth < 2000; nth++) {
      const broken = Buffer.from(brokenFile(draws));
      const bytes = Buffer.concat([broken, ...new Array(draws.below(20)).fill(broken)]);
      if (agrees(bytes, { piece: 64 + draws.below(4000) })) read++;
    }
    expect(read).toBeGreaterThan(50);
  });

  it('guesses what a column of a file without known headings holds, and reads again where it was wrong', () => {
    const rows = Array.from(
      { length: 400 },
      (_, row) => `${row},${row === 390 ? 'late' : row / 4},${row % 7 ? 'a' : ''}`,
    );
    expect(agrees(`count,share,word\n${rows.join('\n')}\n`)).toBe(true);
  });

  it('gives nothing where rows are more than a count of lines in some places led to expect', () => {
    const long = `Bella,2026-03-09,LF,52,${'x'.repeat(3000)}\n`;
    const short = 'Bella,2026-03-09,LF,52,\n';
    // Lines are counted at the beginning of each of 64 shares of a half.
    const share = long.repeat(2) + short.repeat(500);
    const file = `horse,date,limb,toe angle,note\n${share.repeat(128)}`;
    expect(agrees(file, { piece: 4096 })).toBe(false);
    expect(agrees(file, { piece: 4096, helper: () => ({ free: false, ask: prompt.ask }) })).toBe(false);
  });

  it('reads a file alone while no helper comes, and gives nothing where one fails', () => {
    const file = feet(200, random(9), () => 'note');
    expect(agrees(file, { helper: () => ({ free: false, ask: prompt.ask }) })).toBe(true);
    expect(agrees(file, { helper: () => ({ free: true, ask: () => () => undefined }) })).toBe(false);
  });

  it('leaves small files, other encodings and other formats to a reader of whole files', () => {
    const file = feet(50, random(10), () => 'note');
    expect(agrees(file, { least: 1e6 })).toBe(false);
    expect(agrees(Buffer.from(file, 'latin1'))).toBe(false);
    expect(agrees(Buffer.from(file, 'utf16le'))).toBe(false);
    expect(agrees(`PAR1${file}`)).toBe(false);
    expect(agrees('horse,date,limb')).toBe(false);
  });
});

describe('readTableFile', () => {
  it('reads any file by its path, and names it in problems', async () => {
    writeFileSync(path, 'horse,date,limb,toe angle\nBella,2026-03-09,near fore,steep');
    const { columns, problems } = await readTableFile(path);
    expect(columns.limb.values[0]).toBe('LF');
    expect(problems.map(({ file, row, value }) => [file, row, value])).toEqual([['feet.csv', 2, 'steep']]);
  });

  it('reads a large file too where no second thread can be had', async () => {
    const lines = Array.from({ length: 400_000 }, (_, row) => `H${row},2026-03-09,LF,52.5`);
    const file = `horse,date,limb,toe angle\n${lines.join('\n')}`;
    writeFileSync(path, file);
    const { columns } = await readTableFile(path);
    expect(columns.toe_angle_deg.values).toEqual(new Float64Array(400_000).fill(52.5));
    expect(columns.horse_id.values.at(-1)).toBe('H399999');
  });

  it('says which file is not there', async () => {
    await expect(readTableFile(join(folder, 'none.csv'))).rejects.toThrow(/ENOENT.*none\.csv/);
  });
});
