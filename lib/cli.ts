import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, isAbsolute, join, relative, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { pages } from '../notebooks/index.ts';
import {
  columnarTidyFiles,
  findingWords,
  type Herd,
  herd,
  leftOutOfPool,
  measures,
  newPoolKey,
  openPoolKey,
  type PoolTables,
  pooled,
  pooledFiles,
  problemSentence,
  rangesFromColumns,
  ranking,
  readTable,
  remains,
  sqlOf,
  tidyFiles,
  titleSentences,
  withoutTitles,
  writeTable,
} from './index.ts';
import { makeFolders } from './large/makeFolders.ts';
import {
  computeLarge,
  LargeTable,
  largeIntervals,
  largeIntervalsPage,
  largeLevelPage,
  largeRangesPage,
  readTableFile,
  shareColumns,
  spreadColumns,
} from './large.ts';
import { htmlPage } from './report.ts';

const help = `evenhoof: is each foot of the herd left level and in line, and how does it change between visits

  evenhoof tidy FEET.csv [--horses FILE] [--visits FILE] --out FOLDER [--format csv|parquet|arrow]
      writes feet.csv with the computed columns, intervals.csv, horses.csv, problems.csv and datapackage.json,
      or the same tables as .parquet or .arrow, and prints what it found
  evenhoof page NAME FEET.csv [--horses FILE] [--visits FILE] --out FILE.html
      writes one page as a file that stands alone; NAME is one of ${pages.map(({ name }) => name).join(', ')}
  evenhoof sql FEET.csv [--horses FILE] [--visits FILE] [--column NAME=FORMULA] [--dialect standard|duckdb|trino|spark]
      prints one SELECT a table, which gives the computed columns from the measured and joined ones of the tidy files,
      whose dates are dates; --column adds one of your own to the feet, and may stand more than once
  evenhoof large FEET.parquet [--horses FILE] [--visits FILE] [--column NAME=FORMULA] [--errors]
      [--longer-intervals COLUMN] --out FOLDER
      for tidy tables larger than memory, in Parquet or CSV: writes feet.parquet with the computed columns, horses.parquet,
      intervals.parquet, how columns spread and how many lie outside each range as CSV, level.html and ranges.html;
      --errors writes the standard error of every value to errors.parquet too; --longer-intervals asks whether a longer
      interval costs balance in a column, as wall_level_mm, and writes longer-intervals.html;
      needs @duckdb/node-api beside this package
  evenhoof pool FEET.csv [--horses FILE] [--visits FILE] --key FILE --out FOLDER [--keep COLUMN] [--leave-out COLUMN]
      writes the tables for a pool of several yards: names replaced by pseudonyms, the days of each horse moved, free text
      left out, and what-still-identifies.md to be read before they are handed on; a key that isn't there yet is made,
      and belongs to you alone; --keep and --leave-out may stand more than once

  FEET, FILE        CSV, Parquet or Arrow
  --ranges FILE     ranges of your own in place of the built-in ones; the page Columns saves these as a start
  --dates dmy|mdy   the order of day and month, where the files leave it open
  --units mm|cm|in  for lengths on a page; --mass kg|lb for weights
  --strict          exit with 1 where any cell could not be used
  --help, -h        this text

Exit code: 0 done; 1 problems under --strict; 2 the input can't be used.
`;

/** Something about the call or its files that the reader can put right; printed on one line. */
class Unusable extends Error {}

export async function main(args: readonly string[], print: (line: string) => void = console.log): Promise<number> {
  try {
    return await run(args, print);
  } catch (error) {
    // A programmer's mistake keeps its trace.
    if (error instanceof TypeError || !(error instanceof Error)) throw error;
    console.error(`evenhoof: ${error.message.replace(/\p{Cc}+/gu, ' ')}`);
    return 2;
  }
}

async function run(args: readonly string[], print: (line: string) => void): Promise<number> {
  const { values, positionals } = parseCall(args);
  const [command, ...operands] = positionals;
  if (values.help || command === undefined) {
    print(help);
    return values.help ? 0 : 2;
  }
  if (!Object.hasOwn(optionsOf, command))
    throw new Unusable(`there is no command ${command}; write tidy, page, sql, large or pool, or --help`);
  refuseOthers(command, values);
  if (command === 'tidy') {
    const format = oneOf(values.format, ['csv', 'parquet', 'arrow'], '--format');
    const read = await readHerd(only(operands, 'tidy FEET.csv'), values);
    return (await tidy(read, needed(values.out, '--out FOLDER'), format, print)) && values.strict ? 1 : 0;
  }
  if (command === 'page') {
    const [name, ...rest] = operands;
    const page = pages.find((each) => each.name === name);
    const names = pages.map((each) => each.name).join(', ');
    if (name === undefined) throw new Unusable(`a page and a file of feet are needed: evenhoof page NAME FEET.csv`);
    if (page === undefined) throw new Unusable(`there is no page ${name}; write one of ${names}`);
    const read = await readHerd(only(rest, `page ${name} FEET.csv`), values);
    const out = needed(values.out, '--out FILE.html');
    const units = {
      length: oneOf(values.units, ['mm', 'cm', 'in'], '--units'),
      mass: oneOf(values.mass, ['kg', 'lb'], '--mass'),
    };
    write(out, await htmlPage(page, { herd: read, units, source: `From ${basename(rest[0])}` }));
    return values.strict && withoutTitles(read.problems).length > 0 ? 1 : 0;
  }
  if (command === 'sql') {
    const read = await readHerd(only(operands, 'sql FEET.csv'), values);
    for (const text of values.column ?? []) read.feet.add(ownColumn(text));
    const dialect = oneOf(values.dialect, ['standard', 'duckdb', 'trino', 'spark'], '--dialect');
    for (const table of ['feet', 'horses', 'intervals'] as const)
      print(`${sqlOf(read[table], table, { dialect, dates: measuredDates(read[table]) })};\n`);
    return values.strict && withoutTitles(read.problems).length > 0 ? 1 : 0;
  }
  if (command === 'large') {
    const feet = only(operands, 'large FEET.parquet');
    await large(feet, needed(values.out, '--out FOLDER'), values, print);
    return 0;
  }
  if (command === 'pool') {
    const { read, tables } = await readTables(only(operands, 'pool FEET.csv'), values);
    await pool(tables, values, print);
    return values.strict && read.some(({ problems }) => withoutTitles(problems).length > 0) ? 1 : 0;
  }
  throw new TypeError(`${command} has options and does nothing`);
}

/** The columns that a database reads from the tidy files as dates. */
function measuredDates(sheet: Herd['feet'] | Herd['horses']): string[] {
  return sheet.names.filter((name) => {
    const { kind, origin } = sheet.describe(name);
    return kind === 'date' && origin === 'measured';
  });
}

function parseCall(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        ...{
          horses: { type: 'string' },
          visits: { type: 'string' },
          out: { type: 'string' },
          dates: { type: 'string' },
          ranges: { type: 'string' },
          column: { type: 'string', multiple: true },
          format: { type: 'string' },
          dialect: { type: 'string' },
          key: { type: 'string' },
          keep: { type: 'string', multiple: true },
          'leave-out': { type: 'string', multiple: true },
        },
        ...{
          units: { type: 'string' },
          mass: { type: 'string' },
          strict: { type: 'boolean' },
          errors: { type: 'boolean' },
          'longer-intervals': { type: 'string' },
          help: { type: 'boolean', short: 'h' },
        },
      },
    } as const);
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    const [option] = message.match(/--?[\w-]+/) ?? [message];
    throw new Unusable(
      code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION'
        ? `there is no option ${option}; evenhoof --help lists those that there are`
        : `${option} is not written as evenhoof --help shows it`,
    );
  }
}

/** What each command reads; any other option would be passed over without a word. */
const optionsOf: Readonly<Record<string, readonly string[]>> = {
  tidy: ['horses', 'visits', 'ranges', 'dates', 'out', 'format', 'strict'],
  page: ['horses', 'visits', 'ranges', 'dates', 'out', 'units', 'mass', 'strict'],
  sql: ['horses', 'visits', 'ranges', 'dates', 'column', 'dialect', 'strict'],
  large: ['horses', 'visits', 'column', 'errors', 'longer-intervals', 'out'],
  pool: ['horses', 'visits', 'dates', 'key', 'out', 'keep', 'leave-out', 'strict'],
};

function refuseOthers(command: string, values: object): void {
  const known = optionsOf[command];
  const other = Object.keys(values).find((name) => !known.includes(name));
  if (other !== undefined)
    throw new Unusable(
      `--${other} says nothing to ${command}, which takes ${known.map((name) => `--${name}`).join(', ')}`,
    );
}

/** `steeper = toe_angle_deg - 50` as a name and a formula. */
function ownColumn(text: string): { name: string; formula: string } {
  const [name, ...formula] = text.split('=');
  if (name.trim() === '' || formula.length === 0)
    throw new Unusable(`--column is ${text}; it must be a name, an equals sign and a formula`);
  return { name: name.trim(), formula: formula.join('=').trim() };
}

type Options = ReturnType<typeof parseCall>['values'];

async function readTables(feet: string, { horses, visits, dates }: Options) {
  const order = dates === undefined ? undefined : oneOf(dates, ['dmy', 'mdy'], '--dates');
  const read = async (path: string, schema: 'feet' | 'horses' | 'visits') => {
    const table = await readTableFile(path, { schema, dates: order }).catch((error) => notRead(path, error));
    if (Object.keys(table.columns).length === 0) throw new Unusable(problemSentence(table.problems[0]));
    if (table.dates === 'undecided') {
      throw new Unusable(
        `the dates of ${path} can be read as day first or month first; say which with --dates dmy or --dates mdy`,
      );
    }
    return table;
  };
  const tables = {
    feet: await read(feet, 'feet'),
    horses: horses === undefined ? undefined : await read(horses, 'horses'),
    visits: visits === undefined ? undefined : await read(visits, 'visits'),
  };
  if (tables.feet.columns.horse_id?.values.length === 0) throw new Unusable(`${feet} holds no row of measurements`);
  return {
    read: Object.values(tables).filter((table) => table !== undefined),
    tables: { feet: tables.feet.columns, horses: tables.horses?.columns, visits: tables.visits?.columns },
  };
}

async function readHerd(feet: string, options: Options): Promise<Herd> {
  const { horses, visits, ranges: ownRanges } = options;
  const { read, tables } = await readTables(feet, options);
  const own = ownRanges === undefined ? undefined : readRanges(ownRanges);
  return herd(tables, {
    ranges: own?.ranges,
    problems: [...read, own].flatMap((table) => table?.problems ?? []),
    files: {
      feet: basename(feet),
      horses: horses && basename(horses),
      visits: visits && basename(visits),
    },
  });
}

/** Writes the tables for a pool, and tells their owner what the files must not. */
async function pool(tables: PoolTables, values: Options, print: (line: string) => void): Promise<void> {
  const folder = needed(values.out, '--out FOLDER');
  const file = needed(values.key, '--key FILE');
  const inside = relative(resolve(folder), resolve(file));
  if (!inside.startsWith('..') && !isAbsolute(inside))
    throw new Unusable(`the key ${file} would lie among the files that are handed on; keep it outside of ${folder}`);
  const made = existsSync(file) ? undefined : newPoolKey();
  const key = await openPoolKey(made ?? new TextDecoder().decode(bytesOf(file)));
  const keep = values.keep ?? [];
  const done = await pooled(tables, key, { keep, leaveOut: values['leave-out'] });
  // Without its key, what is written could never be joined.
  if (made) write(file, `${made}\n`, 0o600);
  for (const { name, contents } of pooledFiles(done)) write(join(folder, name), contents);
  const { horses, standings } = remains(done);
  const alone = new Set(standings.filter(({ columns }) => columns.length === 1).flatMap((standing) => standing.alone));
  const left = leftOutOfPool(tables).filter((name) => !keep.includes(name));
  print(`${many(horses.length, 'horse')} under pseudonyms, the days of each moved by a number of its own`);
  if (left.length > 0) print(`Left out: ${left.join(', ')}; --keep NAME keeps one as it stands`);
  print(`${many(alone.size, 'horse stands', 'horses stand')} alone by one thing that people may know of them`);
  print(`Written to ${folder}. Read ${join(folder, 'what-still-identifies.md')} before you hand it on`);
  print(
    `${made ? 'A new key is' : 'The key is'} in ${file}. Keep it for the next export, and to yourself: it leads back to the names`,
  );
}

function readRanges(path: string) {
  const { columns, problems } = readTable(bytesOf(path), { file: basename(path) });
  if (!Object.hasOwn(columns, 'measure')) {
    throw new Unusable(
      `${path} has no column measure; a table of ranges has one row a range, as the page Columns saves it`,
    );
  }
  const read = rangesFromColumns(columns, basename(path));
  return { ranges: read.ranges, problems: [...problems, ...read.problems] };
}

function bytesOf(path: string): Uint8Array {
  try {
    return readFileSync(path);
  } catch (error) {
    return notRead(path, error);
  }
}

function notRead(path: string, error: unknown): never {
  if ((error as NodeJS.ErrnoException).code === undefined) throw error;
  const missing = 'there is no such file. Check its name and its folder';
  throw new Unusable(`${path} can't be read (${reason(error, missing, 'Choose another file')})`);
}

/** Why a file or folder can't be used, in words where the system's code is a usual one, and what to do. */
function reason(error: unknown, missing: string, otherwise: string): string {
  const { code } = error as NodeJS.ErrnoException;
  const words: Readonly<Record<string, string>> = {
    ENOENT: missing,
    EISDIR: 'it is a folder. Name a file',
    ENOTDIR: 'a file stands where a folder would be. Choose another place',
    EEXIST: 'a file stands where a folder would be. Choose another place',
    EACCES: `the system does not let you. ${otherwise}`,
    EPERM: `the system does not let you. ${otherwise}`,
    EROFS: `the system does not let you. ${otherwise}`,
    ENOSPC: `there is no room left. ${otherwise}`,
  };
  return code === undefined
    ? String(error)
    : Object.hasOwn(words, code)
      ? `${code}: ${words[code]}`
      : `${code}. ${otherwise}`;
}

/** Writes the tidy files and tells what was found; whether there were problems. */
async function tidy(
  read: Herd,
  folder: string,
  format: 'csv' | 'parquet' | 'arrow',
  print: (line: string) => void,
): Promise<boolean> {
  const files = format === 'csv' ? tidyFiles(read, new Date().toISOString()) : await columnarTidyFiles(read, format);
  for (const { name, contents } of files) write(join(folder, name), contents);
  const { raise, unsure, onPurpose } = ranking(read.occasions, read.ranges);
  print(sizes(read.feet.rows, read.horses.rows, read.intervals.rows));
  const unusable = withoutTitles(read.problems);
  print(
    `${many(unusable.length, 'cell or row', 'cells or rows')} that could not be used${unusable.length > 0 ? `, all in problems.${format}` : ''}`,
  );
  for (const problem of unusable.slice(0, 5)) print(`  ${problemSentence(problem)}`);
  for (const sentence of titleSentences(read.problems)) print(sentence);
  print(
    `${many(raise.length, 'foot', 'feet')} worth raising, ${unsure.length} that can't be told yet, ${onPurpose.length} set so on purpose`,
  );
  for (const finding of raise) {
    const { subject, sentence, value } = findingWords(finding, { length: 'mm', mass: 'kg' });
    print(`  ${subject} (${value}): ${sentence}`);
  }
  print(`Written to ${folder}`);
  return unusable.length > 0;
}

/** Writes a large table with its computed columns, and the small ones that sum it up. */
async function large(
  feet: string,
  folder: string,
  { horses, visits, column = [], errors, 'longer-intervals': outcome }: Options,
  print: (line: string) => void,
): Promise<void> {
  makeFolder(folder);
  const columns = column.map(ownColumn);
  const written = await computeLarge(feet, folder, { horses, visits, columns, errors });
  print(sizes(written.feet, written.horses, written.intervals));
  if (written.withoutErrors.length > 0)
    print(`Without errors, because they rest on more than single horses: ${written.withoutErrors.join(', ')}`);
  const table = await LargeTable.open(join(folder, 'feet.parquet'), { scratch: folder });
  try {
    const own = new Set([...measures, ...columns].map(({ name }) => name));
    const spreads = await table.spread(table.numbers.filter((name) => own.has(name)));
    write(join(folder, 'spread.csv'), writeTable(spreadColumns(spreads)));
    const shares = await table.shares();
    write(join(folder, 'shares.csv'), writeTable(shareColumns(shares)));
    const source = `From ${basename(feet)}`;
    write(join(folder, 'ranges.html'), await htmlPage(largeRangesPage, { herd: { shares, spreads }, source }));
    const level = {
      wall_level_mm: await table.level('wall_level_mm'),
      heel_level_mm: await table.level('heel_level_mm'),
    };
    write(join(folder, 'level.html'), await htmlPage(largeLevelPage, { herd: level, source }));
  } finally {
    await table.close();
  }
  if (outcome !== undefined) {
    // Which side of level a foot goes to is nobody's question.
    const question = { outcome, size: outcome.includes('_level_') };
    const answer = await largeIntervals(join(folder, 'intervals.parquet'), question, { scratch: folder });
    const page = await htmlPage(largeIntervalsPage, { herd: answer, source: `From ${basename(feet)}` });
    write(join(folder, 'longer-intervals.html'), page);
  }
  print(`Written to ${folder}`);
}

function write(path: string, contents: string | Uint8Array, mode?: number): void {
  try {
    makeFolders(dirname(path));
    writeFileSync(path, contents, { mode });
  } catch (error) {
    throw notMade(`${path} can't be written`, error);
  }
}

function makeFolder(folder: string): void {
  try {
    makeFolders(folder);
  } catch (error) {
    throw notMade(`${folder} can't be made`, error);
  }
}

function notMade(what: string, error: unknown): Unusable {
  const otherwise = 'Choose another place';
  return new Unusable(`${what} (${reason(error, `the system makes no folder there. ${otherwise}`, otherwise)})`);
}

function sizes(feet: number, horses: number, intervals: number): string {
  return `${many(feet, 'reading')} of feet, ${many(horses, 'horse')}, ${many(intervals, 'interval')}`;
}

function many(count: number, one: string, more = `${one}s`): string {
  return `${count} ${count === 1 ? one : more}`;
}

function only(operands: readonly string[], usage: string): string {
  if (operands.length !== 1)
    throw new Unusable(`one file of feet is needed, and ${operands.length || 'none'} given: evenhoof ${usage}`);
  return operands[0];
}

function needed(value: string | undefined, option: string): string {
  if (!value) throw new Unusable(`${option} is missing: say it behind the file of feet`);
  return value;
}

function oneOf<Word extends string>(
  value: string | undefined,
  words: readonly [Word, ...Word[]],
  option: string,
): Word {
  const word = value === undefined ? words[0] : words.find((each) => each === value);
  if (word === undefined)
    throw new Unusable(`${option} is ${value}; it must be ${words.slice(0, -1).join(', ')} or ${words.at(-1)}`);
  return word;
}

process.exitCode = await main(process.argv.slice(2));
