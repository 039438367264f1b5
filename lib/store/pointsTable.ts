import { problemSentence } from '../files/problems.ts';
import { readTable } from '../files/readTable.ts';
import type { ColumnSchema, TableSchema } from '../files/schemas.ts';
import { schemas } from '../files/schemas.ts';
import { writeTable } from '../files/writeTable.ts';
import { cellAt } from '../sheet/cell.ts';
import { type Columns, TextColumn, toColumn } from '../sheet/column.ts';
import { daysFromIso, isoFromDays } from '../sheet/days.ts';
import { counted } from '../words/counted.ts';
import { say } from '../words/say.ts';

/** The points of one picture, with what they need to be read again. */
export interface PhotoPoints {
  readonly photo: string;
  readonly subject: {
    readonly horse: string;
    readonly limb: string;
    /** `2026-03-09`; `''` where it is not known. */
    readonly date: string;
    readonly moment: string;
    readonly view: string;
  };
  readonly size:
    | { readonly kind: 'bar'; readonly length: number }
    | { readonly kind: 'board'; readonly width: number; readonly height: number }
    | { readonly kind: 'none' };
  /** Of the picture, in px. */
  readonly width: number;
  readonly height: number;
  /** In px right and down, by landmark; the second of many on one landmark has its number behind a space. */
  readonly points: ReadonlyMap<string, readonly [x: number, y: number]>;
  /** Landmarks that were left out on purpose: a row each, without a place. */
  readonly skipped: readonly string[];
  /** Which reading of the foot the measures were entered as. */
  readonly entered?: { readonly repeat: number; readonly values: Readonly<Record<string, number>> };
}

const text = (name: string): ColumnSchema => {
  const known = schemas.feet.columns.find((column) => column.name === name);
  return known ?? { name, title: name, kind: 'text', unit: '1', headings: [] };
};
const number = (name: string, unit: string): ColumnSchema => ({
  name,
  title: name,
  kind: 'number',
  unit,
  headings: [],
});

/** The table `points`: one row a point, tidy. What belongs to the picture stands in each of its rows. */
export const pointsSchema: TableSchema = {
  name: 'points',
  columns: [
    ...['photo', 'horse_id', 'date', 'limb', 'moment'].map(text),
    number('repeat', '1'),
    text('view'),
    text('point'),
    ...['x_px', 'y_px', 'photo_width_px', 'photo_height_px'].map((name) => number(name, '1')),
    ...['bar_mm', 'board_width_mm', 'board_height_mm'].map((name) => number(name, 'mm')),
  ],
  required: ['photo', 'view', 'point', 'x_px', 'y_px'],
  keys: [],
};

/**
 * The points of pictures as the table `points`.
 * @returns places in px from the upper left corner of the upright picture, the many of one landmark in their order; a
 *   landmark that was left out has a row without a place
 */
export function pointsTable(pictures: readonly PhotoPoints[]): Columns {
  const rows = pictures.flatMap((picture) => [
    ...[...picture.points].sort(byNumber).map(([slot, spot]) => ({ picture, point: codeOf(slot), spot })),
    ...picture.skipped.map((point) => ({ picture, point, spot: [Number.NaN, Number.NaN] as const })),
  ]);
  type Row = (typeof rows)[number];
  const words = (of: (row: Row) => string) => TextColumn.from(rows.map(of));
  const numbers = (unit: string, of: (row: Row) => number) => ({ unit, values: Float64Array.from(rows, of) });
  const sized = (kind: 'bar' | 'board', name: string) =>
    numbers('mm', ({ picture: { size } }) =>
      size.kind === kind ? (size as unknown as Record<string, number>)[name] : Number.NaN,
    );
  return {
    photo: words(({ picture }) => picture.photo),
    horse_id: words(({ picture }) => picture.subject.horse),
    date: {
      kind: 'date',
      unit: 'd',
      values: Float64Array.from(rows, ({ picture }) => daysFromIso(picture.subject.date)),
    },
    limb: words(({ picture }) => picture.subject.limb),
    moment: words(({ picture }) => picture.subject.moment),
    repeat: numbers('1', ({ picture }) => picture.entered?.repeat ?? Number.NaN),
    view: words(({ picture }) => picture.subject.view),
    point: words(({ point }) => point),
    x_px: numbers('1', ({ spot }) => spot[0]),
    y_px: numbers('1', ({ spot }) => spot[1]),
    photo_width_px: numbers('1', ({ picture }) => picture.width),
    photo_height_px: numbers('1', ({ picture }) => picture.height),
    bar_mm: sized('bar', 'length'),
    board_width_mm: sized('board', 'width'),
    board_height_mm: sized('board', 'height'),
  };
}

/** The table `points` as tidy CSV. */
export function pointsToCsv(pictures: readonly PhotoPoints[]): string {
  return writeTable(pointsTable(pictures));
}

/**
 * Pictures and their points out of a table `points`, the inverse of `pointsToCsv`. A cell that can't be read is missing:
 * the point has no place then.
 * @throws Error in words for the reader where the file is no such table
 */
export function pointsFromCsv(source: string | Uint8Array, file = say`the file`): PhotoPoints[] {
  const { columns, problems } = readTable(source, { file, schema: pointsSchema });
  const missing = pointsSchema.required.filter((name) => !Object.hasOwn(columns, name));
  if (missing.length > 0) {
    const said = problems[0] ? `. ${problemSentence(problems[0])}` : '';
    const [required, lacking] = [pointsSchema.required, missing].map((names) => names.join(', '));
    throw new Error(
      counted(missing.length, {
        one: say`${file} is no table of points: the columns ${required} were expected, and ${lacking} is not there${said}`,
        other: say`${file} is no table of points: the columns ${required} were expected, and ${lacking} are not there${said}`,
      }),
    );
  }
  const at = (name: string, row: number) => {
    const column = columns[name];
    return column && cellAt(toColumn(column), row);
  };
  const said = (name: string, row: number) => String(at(name, row) ?? '');
  const numberIn = (name: string, row: number) => Number(at(name, row) ?? Number.NaN);
  const found = new Map<string, PhotoPoints & { points: Map<string, readonly [number, number]>; skipped: string[] }>();
  const rows = toColumn(columns.photo).values.length;
  for (let row = 0; row < rows; row++) {
    const [photo, point] = [said('photo', row), said('point', row)];
    if (photo === '' || point === '') continue;
    let picture = found.get(photo);
    if (!picture) {
      const repeat = numberIn('repeat', row);
      picture = {
        photo,
        subject: {
          horse: said('horse_id', row),
          limb: said('limb', row),
          date: isoFromDays(numberIn('date', row)),
          moment: said('moment', row) || 'between',
          view: said('view', row),
        },
        size: sizeOf((name) => numberIn(name, row)),
        width: numberIn('photo_width_px', row),
        height: numberIn('photo_height_px', row),
        points: new Map(),
        skipped: [],
        ...(repeat >= 1 && { entered: { repeat, values: {} } }),
      };
      found.set(photo, picture);
    }
    const [x, y] = [numberIn('x_px', row), numberIn('y_px', row)];
    if (Number.isFinite(x) && Number.isFinite(y)) picture.points.set(freeSlot(picture.points, point), [x, y]);
    else picture.skipped.push(point);
  }
  return [...found.values()];
}

function sizeOf(of: (name: string) => number): PhotoPoints['size'] {
  const [length, width, height] = [of('bar_mm'), of('board_width_mm'), of('board_height_mm')];
  if (length > 0) return { kind: 'bar', length };
  return width > 0 && height > 0 ? { kind: 'board', width, height } : { kind: 'none' };
}

function freeSlot(points: ReadonlyMap<string, unknown>, point: string): string {
  for (let count = 1; ; count++) {
    const slot = count === 1 ? point : `${point} ${count}`;
    if (!points.has(slot)) return slot;
  }
}

const codeOf = (slot: string) => slot.replace(/ \d+$/, '');
const numberOf = (slot: string) => Number(/ (\d+)$/.exec(slot)?.[1] ?? 1);

/** Of one landmark the first before the second; else as they were placed. */
const byNumber = ([a]: readonly [string, unknown], [b]: readonly [string, unknown]) =>
  codeOf(a) === codeOf(b) ? numberOf(a) - numberOf(b) : 0;
