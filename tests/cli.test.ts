import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'evenhoof-cli-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let main: (args: readonly string[], print: (line: string) => void) => Promise<number>;
beforeAll(async () => {
  // The module is the command: it runs with the arguments that it finds.
  process.argv = ['node', 'evenhoof', '--help'];
  vi.spyOn(console, 'log').mockImplementation(() => {});
  ({ main } = await import('../lib/cli.ts'));
});

/** A file in the scratch folder. */
function file(name: string, contents: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, contents);
  return path;
}

async function evenhoof(...args: string[]): Promise<{ code: number; said: string[]; complaint: string }> {
  const said: string[] = [];
  const error = vi.spyOn(console, 'error').mockImplementation(() => {});
  const code = await main(args, (line) => said.push(line));
  const complaint = error.mock.calls.map(([line]) => String(line)).join('\n');
  error.mockRestore();
  return { code, said, complaint };
}

const heading = 'horse,date,limb,toe angle,heel angle\n';
const feet = file('feet.csv', `${heading}Bella,2026-03-09,near fore,52°,45\nBella,2026-03-09,off fore,520,45\n`);

describe('tidy', () => {
  it('writes the tables and their description, and says what it found', async () => {
    const out = join(folder, 'tidy');
    const { code, said, complaint } = await evenhoof('tidy', feet, '--out', out);
    expect([code, complaint]).toEqual([0, '']);
    expect(readdirSync(out).sort()).toEqual([
      'datapackage.json',
      'feet.csv',
      'horses.csv',
      'intervals.csv',
      'problems.csv',
    ]);
    expect(said.join('\n')).toMatch(/^2 readings of feet, 1 horse, 0 intervals\n1 cell or row[\s\S]*“520”/);
    expect(readFileSync(join(out, 'problems.csv'), 'utf8')).toContain('feet.csv,3,toe_angle_deg,"520",beyond-anatomy');
  });

  it('exits with 1 under --strict where something could not be used, and with 0 where all could', async () => {
    expect((await evenhoof('tidy', feet, '--strict', '--out', join(folder, 'strict'))).code).toBe(1);
    const clean = file('clean.csv', `${heading}Bella,2026-03-09,LF,52,45\n`);
    expect((await evenhoof('tidy', clean, '--strict', '--out', join(folder, 'strict'))).code).toBe(0);
  });

  it('reads what it wrote, and writes the same again without a complaint', async () => {
    const horses = file('horses.csv', 'horse,girth (cm),body length (cm)\nBella,180,170\n');
    const clean = file('clean.csv', `${heading}Bella,2026-03-09,LF,52.1,45\nBella,2026-03-09,RF,51,44.3\n`);
    const [once, twice] = [join(folder, 'once'), join(folder, 'twice')];
    await evenhoof('tidy', clean, '--horses', horses, '--out', once);
    const again = ['tidy', join(once, 'feet.csv'), '--horses', join(once, 'horses.csv'), '--strict', '--out', twice];
    expect((await evenhoof(...again)).code).toBe(0);
    for (const name of ['feet.csv', 'horses.csv', 'intervals.csv', 'problems.csv'])
      expect(readFileSync(join(twice, name), 'utf8'), name).toBe(readFileSync(join(once, name), 'utf8'));
  });

  it.each(['parquet', 'arrow'])('writes %s, and reads it as it reads CSV', async (format) => {
    const [typed, again, plain] = [`typed-${format}`, `again-${format}`, 'plain-csv'].map((name) => join(folder, name));
    await evenhoof('tidy', feet, '--format', format, '--out', typed);
    expect(readdirSync(typed).sort()).toEqual(
      ['feet', 'horses', 'intervals', 'problems'].map((name) => `${name}.${format}`),
    );
    const horses = ['--horses', join(typed, `horses.${format}`)];
    expect((await evenhoof('tidy', join(typed, `feet.${format}`), ...horses, '--strict', '--out', again)).code).toBe(0);
    await evenhoof('tidy', feet, '--out', plain);
    for (const name of ['feet.csv', 'horses.csv', 'intervals.csv'])
      expect(readFileSync(join(again, name), 'utf8'), name).toBe(readFileSync(join(plain, name), 'utf8'));
  });

  it('asks for --dates where the order of day and month is open, and only there', async () => {
    const open = file('open.csv', `${heading}Bella,03/04/2026,LF,52,45\n`);
    const { code, complaint } = await evenhoof('tidy', open, '--out', join(folder, 'open'));
    expect(code).toBe(2);
    expect(complaint).toContain('say which with --dates dmy or --dates mdy');
    expect((await evenhoof('tidy', open, '--dates', 'mdy', '--out', join(folder, 'open'))).code).toBe(0);
    expect(readFileSync(join(folder, 'open/feet.csv'), 'utf8')).toContain('\nBella,2026-03-04,LF,');
    const plain = file('plain.csv', `${heading}Bella,03/04/2026,LF,52,45\nBella,25/04/2026,LF,52,45\n`);
    expect((await evenhoof('tidy', plain, '--out', join(folder, 'open'))).code).toBe(0);
  });
});

describe('page', () => {
  it('writes one page as a file that stands alone', async () => {
    const out = join(folder, 'level.html');
    expect((await evenhoof('page', 'level', feet, '--out', out)).code).toBe(0);
    expect(readFileSync(out, 'utf8')).toMatch(/^<!doctype html>/i);
  });

  it('holds feet against ranges of one’s own', async () => {
    const ranges = file('ranges.csv', 'measure,at_most\ntoe_minus_heel_deg,1\n');
    const out = join(folder, 'columns.html');
    expect((await evenhoof('page', 'columns', feet, '--ranges', ranges, '--out', out)).code).toBe(0);
    const page = readFileSync(out, 'utf8');
    expect(page).toContain('at most 1.0°');
    expect(page).not.toContain('at most 5.0°');
  });
});

describe('pool', () => {
  const named = file('named.csv', `${heading.trim()},observer,notes\nBella,2026-03-09,LF,52,45,Ida Zwick,lame?\n`);
  const key = join(folder, 'keys', 'mine.txt');
  const out = join(folder, 'pool');

  it('makes a key that only its owner can read, once, and writes tables without names', async () => {
    const { code, said, complaint } = await evenhoof('pool', named, '--key', key, '--out', out);
    expect([code, complaint]).toEqual([0, '']);
    expect(readdirSync(out).sort()).toEqual(['datapackage.json', 'feet.csv', 'what-still-identifies.md']);
    expect(readFileSync(key, 'utf8')).toMatch(/^[0-9a-f]{64}\n$/);
    if (process.platform !== 'win32') expect(statSync(key).mode & 0o077).toBe(0);
    const files = readdirSync(out).map((name) => readFileSync(join(out, name), 'utf8'));
    for (const secret of ['Bella', 'Zwick', '2026-03-09', 'lame', readFileSync(key, 'utf8').trim()])
      expect(files.join('\n')).not.toContain(secret);
    expect(said.join('\n')).toMatch(/^1 horse under[\s\S]*Left out: notes; --keep[\s\S]*A new key is in /);
    const again = await evenhoof('pool', named, '--key', key, '--out', join(folder, 'pool-again'));
    expect(again.said.at(-1)).toContain('The key is in');
    expect(readFileSync(join(folder, 'pool-again', 'feet.csv'), 'utf8')).toBe(files[1]);
  });

  it('keeps what is asked for, and leaves out what is', async () => {
    const kept = join(folder, 'kept');
    await evenhoof('pool', named, '--key', key, '--out', kept, '--keep', 'notes', '--leave-out', 'observer');
    expect(readFileSync(join(kept, 'feet.csv'), 'utf8')).toMatch(
      /^horse_id,date,limb,toe_angle_deg,heel_angle_deg,notes\n/,
    );
  });

  it.each([
    ['no key', () => [], /--key FILE is missing/],
    ['a key among what is handed on', () => ['--key', join(out, 'key.txt')], /would lie among the files/],
    ['a key that is none', () => ['--key', named], /This is no key for pooling/],
    ['a column that isn’t there', () => ['--key', key, '--keep', 'paddock'], /There is no column paddock/],
  ])('is refused with %s', async (_, args, words) => {
    const { code, complaint } = await evenhoof('pool', named, '--out', out, ...args());
    expect([code, complaint]).toEqual([2, expect.stringMatching(words)]);
    expect(readdirSync(out)).not.toContain('key.txt');
  });
});

describe('what can’t be used', () => {
  it.each([
    ['tidy', [], /can't be written/],
    ['page', ['level'], /can't be written/],
    ['large', [], /can't be made/],
  ])('says why %s can’t write where a file stands in the way', async (command, page, words) => {
    const { code, complaint } = await evenhoof(command, ...page, feet, '--out', join(feet, 'below', 'out'));
    expect([code, complaint]).toEqual([2, expect.stringMatching(words)]);
    expect(complaint).toContain('a file stands where a folder would be. Choose another place');
  });

  it('takes no empty name for a folder', async () => {
    const { code, complaint } = await evenhoof('tidy', feet, '--out', '');
    expect([code, complaint]).toEqual([2, 'evenhoof: --out FOLDER is missing: say it behind the file of feet']);
  });

  it('comes to an end where the system makes no folder', async () => {
    const { code, complaint } = await evenhoof('tidy', feet, '--out', '/proc/evenhoof');
    expect([code, complaint]).toEqual([2, expect.stringMatching(/can't be written \(E\w+: the system /)]);
  });

  it.each([
    ['other headings', 'Pferd;Datum;Bein\nAda;9.3.2026;vorn links\n'],
    ['a title', 'Our list\n\nHorse,Date,Limb\nAda,2026-03-09,LF\n'],
    ['a quote that nothing closes', 'horse_id,date,limb\nAda,2026-03-09\n"Ada\n'],
  ])('sends a table that is not tidy, with %s, to evenhoof tidy first', async (_, text) => {
    const { code, complaint } = await evenhoof('large', file('untidy.csv', text), '--out', join(folder, 'untidy'));
    expect([code, complaint]).toEqual([
      2,
      expect.stringMatching(
        /untidy\.csv (has no column horse_id; it has|can't be read as CSV:) .+\. Large tables must be tidy: give what evenhoof tidy /,
      ),
    ]);
  });

  it.each([
    [
      'no such file',
      () => ['tidy', join(folder, 'none.csv')],
      /none\.csv can't be read \(ENOENT: there is no such file\. Check its name/,
    ],
    ['a folder for a file', () => ['tidy', folder], /can't be read \(EISDIR: it is a folder\. Name a file\)/],
    [
      'two files of feet',
      () => ['tidy', feet, feet],
      /one file of feet is needed, and 2 given: evenhoof tidy FEET\.csv/,
    ],
    ['no page', () => ['page'], /a page and a file of feet are needed: evenhoof page NAME FEET\.csv/],
    ['an option of another command', () => ['sql', feet], /--out says nothing to sql, which takes --horses,/],
    ['a word that an option does not take', () => ['page', 'herd', feet, '--units', 'ell'], /it must be mm, cm or in$/],
    [
      'an option without its word',
      () => ['tidy', feet, '--dates'],
      /--dates is not written as evenhoof --help shows it/,
    ],
    ['an empty file', () => ['tidy', file('empty.csv', '')], /empty\.csv: Expected a heading row and rows of cells/],
    ['headings without rows', () => ['tidy', file('head.csv', heading)], /holds no row of measurements/],
    [
      'no text',
      () => ['tidy', file('feet.png', Buffer.from('\x89PNG\r\n\x1a\n\0\0\0\rIHDR', 'latin1'))],
      /save it there as CSV/,
    ],
    ['other columns', () => ['tidy', file('other.csv', 'a,b\n1,2\n')], /has no column horse_id, only a, b;/],
    ['strange signs', () => ['tidy', file('signs.csv', 'a\u001b[31m,b\n1,2\n')], /only a \[31m, b/],
    ['ranges without a measure', () => ['tidy', feet, '--ranges', feet], /feet\.csv has no column measure;/],
    ['an unknown option', () => ['tidy', feet, '--colour'], /there is no option --colour; evenhoof --help lists/],
    ['an unknown page', () => ['page', 'stable', feet], /there is no page stable; write one of herd,/],
    ['an unknown command', () => ['shoe', feet], /there is no command shoe/],
  ])('exits with 2 and one line: %s', async (_, args, words) => {
    const { code, said, complaint } = await evenhoof(...args(), '--out', join(folder, 'nothing'));
    expect([code, said]).toEqual([2, []]);
    expect(complaint).toMatch(/^evenhoof: \P{Cc}+$/u);
    expect(complaint).toMatch(words);
  });
});

describe('large', () => {
  it('writes the columns of a Parquet file to another, small tables and a page', async () => {
    const [tidy, out] = [join(folder, 'for-large'), join(folder, 'large')];
    await evenhoof('tidy', feet, '--format', 'parquet', '--out', tidy);
    const { code, said } = await evenhoof(
      'large',
      join(tidy, 'feet.parquet'),
      '--out',
      out,
      '--column',
      'twice = 2 * toe_angle_deg',
    );
    expect([code, said[0]]).toEqual([0, '2 readings of feet, 1 horse, 0 intervals']);
    expect(readdirSync(out).sort()).toEqual([
      ...[
        'feet.parquet',
        'horses.parquet',
        'intervals.parquet',
        'level.html',
        'ranges.html',
        'shares.csv',
        'spread.csv',
      ],
    ]);
    const more = [
      '--errors',
      '--longer-intervals',
      'wall_level_mm',
      '--column',
      'off = toe_angle_deg - mean(toe_angle_deg)',
    ];
    const again = await evenhoof('large', join(tidy, 'feet.parquet'), '--out', `${out}-again`, ...more);
    expect([again.code, again.said[1]]).toEqual([
      0,
      'Without errors, because they rest on more than single horses: off',
    ]);
    expect(readdirSync(`${out}-again`)).toEqual(expect.arrayContaining(['errors.parquet', 'longer-intervals.html']));
    expect(readFileSync(join(out, 'ranges.html'), 'utf8')).toContain('in published herds');
    expect(readFileSync(join(out, 'spread.csv'), 'utf8')).toContain('\ntwice,LF,between,,1,0,104,');
  });
});

describe('sql', () => {
  const demo = (name: string) => new URL(`../data/${name}.csv`, import.meta.url).pathname;

  it('prints statements that a database answers like the tidy files', { timeout: 60_000 }, async () => {
    const out = join(folder, 'for-sql');
    const tables = ['--horses', demo('horses'), '--visits', demo('visits')];
    await evenhoof('tidy', demo('feet'), ...tables, '--out', out);
    const { code, said } = await evenhoof('sql', demo('feet'), ...tables, '--column', 'twice = 2 * wall_level_mm');
    expect([code, said.length]).toEqual([0, 3]);
    const duckdb = await (await DuckDBInstance.create()).connect();
    const { resources } = JSON.parse(readFileSync(join(out, 'datapackage.json'), 'utf8'));
    const sqlTypes: Record<string, string> = {
      number: 'DOUBLE',
      integer: 'DOUBLE',
      boolean: 'BOOLEAN',
      date: 'DATE',
      string: 'VARCHAR',
    };
    for (const [i, table] of ['feet', 'horses', 'intervals'].entries()) {
      const { fields } = resources.find(({ name }: { name: string }) => name === table).schema;
      // A column without a value has no type that a database could guess.
      const types = fields.map(({ name, type }: { name: string; type: string }) => `'${name}': '${sqlTypes[type]}'`);
      const file = `read_csv('${join(out, table)}.csv', types = {${types.join(', ')}}, nullstr = '')`;
      await duckdb.run(`CREATE TABLE ${table} AS SELECT * FROM ${file}`);
      const asked = said[i].replace(/;\s*$/, '');
      const columns = {
        feet: ['twice', 'wall_level_mm'],
        horses: ['body_weight_kg'],
        intervals: ['toe_length_change_mm'],
      };
      for (const name of columns[table as keyof typeof columns]) {
        const mean = async (from: string) =>
          (await duckdb.runAndReadAll(`SELECT avg("${name}"), count("${name}") FROM ${from}`)).getRows()[0].map(Number);
        const [ours, theirs] = [
          await mean(`(${asked})`),
          await mean(name === 'twice' ? `(SELECT 2 * wall_level_mm AS twice FROM feet)` : table),
        ];
        expect(ours[1]).toBe(theirs[1]);
        expect(ours[1]).toBeGreaterThan(10);
        expect(ours[0]).toBeCloseTo(theirs[0], 9);
      }
    }
    duckdb.closeSync();
  });

  it('writes for other engines, and takes dates for dates', async () => {
    const own = ['--column', "late = date > '2026-01-01'"];
    const spark = await evenhoof('sql', feet, ...own, '--dialect', 'spark');
    expect(spark.said[0]).toContain("((1E0 * DATEDIFF(`date`, DATE '1970-01-01')) > 2.0454E4) AS `late`");
    expect((await evenhoof('sql', feet, '--dialect', 'basic')).complaint).toContain(
      '--dialect is basic; it must be standard, duckdb, trino or spark',
    );
  });

  it('says what an own column must look like', async () => {
    expect(await evenhoof('sql', feet, '--column', 'toe_angle_deg')).toMatchObject({
      code: 2,
      complaint: 'evenhoof: --column is toe_angle_deg; it must be a name, an equals sign and a formula',
    });
  });
});
