import * as Plot from '@observablehq/plot';
import { rollups } from 'd3-array';
import { formatQuantity } from '../sheet/display.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { kendallTau, median } from '../stats/index.ts';
import { cellWord } from '../words/cellWord.ts';
import { counted } from '../words/counted.ts';
import { fixed } from '../words/fixed.ts';
import { midSentence } from '../words/midSentence.ts';
import { say } from '../words/say.ts';
import { shownNumber } from '../words/shownNumber.ts';
import {
  axis,
  type ChartDescription,
  extent,
  leftOut,
  millimetres,
  nameRoom,
  nothingToDraw,
  sentences,
  shortened,
  shownIn,
  tip,
  utc,
} from './chart.ts';
import { accents, chartSizes, grounds, inks, strokes } from './theme.ts';

/** A chart as someone puts it together from the columns of a table. */
export interface ChosenChart {
  /** `spread`: values of each group in a row. `over time`: values by date. `against`: values by another column. */
  readonly kind: 'spread' | 'over time' | 'against';
  /** The column of numbers that is shown. */
  readonly column: string;
  /** The column of numbers along the bottom of `against`. */
  readonly other?: string;
  /** A column of words, dates or yes and no that parts the rows. */
  readonly by?: string;
  readonly units?: Parameters<typeof formatQuantity>[2];
}

interface Point {
  readonly group: string;
  readonly value: number;
  readonly other: number;
}

/** Told apart by shape first; more groups than shapes share the last, plain one. */
const looks = [
  { symbol: 'circle', colour: accents.pond, filled: true },
  { symbol: 'square', colour: accents.ochre, filled: false },
  { symbol: 'triangle', colour: accents.heather, filled: true },
  { symbol: 'diamond', colour: accents.brick, filled: false },
  { symbol: 'cross', colour: accents.pond, filled: false },
  { symbol: 'star', colour: accents.stone, filled: true },
] as const;

/** With more points an order of all pairs takes too long to be worth its number. */
const mostPairs = 5000;

/**
 * The chart that someone has put together, its title stating what it shows.
 * @param sheet  any table; rows without the value are left out and counted
 * @returns a chart in the reader's units; words in place of one where nothing can be drawn
 * @throws TypeError for a column that the table lacks or that holds no numbers
 */
export function chosenChart(sheet: Sheet, chart: ChosenChart): ChartDescription {
  const { kind, column, by, units = millimetres } = chart;
  const value = numbersOf(sheet, column);
  const along = kind === 'spread' ? undefined : kind === 'over time' ? dateOf(sheet) : (chart.other ?? column);
  const other = along === undefined ? undefined : numbersOf(sheet, along);
  const group = by === undefined ? undefined : sheet.column(by);
  const points: Point[] = [];
  for (let row = 0; row < sheet.rows; row++) {
    const point = {
      value: value.values[row],
      other: other === undefined ? 0 : other.values[row],
      group: group === undefined ? '' : groupWord(group, row, by!),
    };
    if (!Number.isNaN(point.value + point.other)) points.push(point);
  }
  const name = `chosen-${kind.replaceAll(' ', '-')}-${column.replaceAll('_', '-')}`;
  const title = sheet.describe(column).title;
  const left = leftOut(sheet.rows - points.length, 'rows');
  if (points.length === 0) return nothingToDraw(name, say`${title}: no row has a value to draw`, left);
  const drawn = kind === 'spread' ? spread : kind === 'over time' ? overTime : againstOther;
  return { name, ...drawn(sheet, chart, points, units, left) };
}

type Drawn = Omit<ChartDescription, 'name'>;
type Units = NonNullable<ChosenChart['units']>;

function spread(
  sheet: Sheet,
  { column, by }: ChosenChart,
  points: readonly Point[],
  units: Units,
  left: string,
): Drawn {
  const { title, unit } = sheet.describe(column);
  const { times, label } = shownIn(unit, units);
  const groups = groupsOf(points);
  const quantity = (value: number) => formatQuantity(value, unit, units);
  const ordered = groups.toSorted((a, b) => a.middle - b.middle);
  const [low, high] = [ordered[0], ordered[ordered.length - 1]];
  const summary = say`${title}, medians: ${groups.map(({ group, middle, count }) => say`${group || 'all'} ${quantity(middle)} of ${count}`).join(', ')}.`;
  const names = groups.map(({ group }) => group);
  return {
    title:
      groups.length < 2
        ? counted(points.length, {
            one: say`${title}: ${quantity(low.middle)} at the median of ${points.length} row`,
            other: say`${title}: ${quantity(low.middle)} at the median of ${points.length} rows`,
          })
        : say`${title}: from ${quantity(low.middle)} (${low.group}) to ${quantity(high.middle)} (${high.group}) at the median by ${midSentence(sheet.describe(by!).title)}`,
    caption: sentences(say`Each dot is a row, the upright line the median of its group.`, left),
    summary,
    options: {
      width: chartSizes.width,
      height: 60 + chartSizes.row * groups.length,
      marginLeft: nameRoom(names),
      marginBottom: 38,
      x: { domain: extent(points.map(({ value }) => value * times)), nice: true },
      y: { domain: names },
      marks: [
        axis.gridX(),
        axis.x(label(title)),
        axis.names(),
        Plot.dot(points, {
          x: (d) => d.value * times,
          y: 'group',
          r: 2.5,
          fill: accents.pond,
          fillOpacity: 0.35,
          title: (d) => `${d.group === '' ? '' : `${d.group}: `}${quantity(d.value)}`,
          tip,
        }),
        Plot.tickX(groups, {
          x: (d) => d.middle * times,
          y: 'group',
          stroke: inks.ink,
          strokeWidth: strokes.strong,
        }),
      ],
    },
  };
}

function overTime(sheet: Sheet, chart: ChosenChart, points: readonly Point[], units: Units, left: string): Drawn {
  const { title, unit } = sheet.describe(chart.column);
  const { times, label } = shownIn(unit, units);
  const quantity = (value: number) => formatQuantity(value, unit, units);
  const tau = together(points);
  return {
    title: say`${title} over time: ${quantity(median(points.map(({ value }) => value)))} at the median, ${tau.words(say`later`, say`higher`, say`lower`)}`,
    caption: sentences(keyOf(points), tau.note, left),
    summary: counted(points.length, {
      one: say`${title} of ${points.length} row by date.`,
      other: say`${title} of ${points.length} rows by date.`,
    }),
    options: {
      ...frame,
      x: { type: 'utc' },
      y: { domain: extent(points.map(({ value }) => value * times)), nice: true },
      marks: [
        axis.gridY(),
        axis.x(null),
        axis.y(label(title)),
        ...dots(
          points,
          (d) => utc(d.other),
          (d) => d.value * times,
          (d) => quantity(d.value),
        ),
      ],
    },
  };
}

function againstOther(sheet: Sheet, chart: ChosenChart, points: readonly Point[], units: Units, left: string): Drawn {
  const [a, b] = [chart.column, chart.other ?? chart.column].map((name) => ({
    ...sheet.describe(name),
    ...shownIn(sheet.describe(name).unit, units),
  }));
  const tau = together(points);
  const quantity = ({ unit }: typeof a, value: number) => formatQuantity(value, unit, units);
  return {
    title: say`${a.title} against ${midSentence(b.title)}: ${tau.words(say`larger`, say`larger`, say`smaller`)}`,
    caption: sentences(keyOf(points), tau.note, left),
    summary: counted(points.length, {
      one: say`${a.title} against ${midSentence(b.title)}, ${points.length} row.`,
      other: say`${a.title} against ${midSentence(b.title)}, ${points.length} rows.`,
    }),
    options: {
      ...frame,
      x: { domain: extent(points.map(({ other }) => other * b.times)), nice: true },
      y: { domain: extent(points.map(({ value }) => value * a.times)), nice: true },
      marks: [
        axis.gridX(),
        axis.gridY(),
        axis.x(b.label(b.title)),
        axis.y(a.label(a.title)),
        ...dots(
          points,
          (d) => d.other * b.times,
          (d) => d.value * a.times,
          (d) => `${quantity(b, d.other)}, ${quantity(a, d.value)}`,
        ),
      ],
    },
  };
}

const frame = { width: chartSizes.width, height: chartSizes.height, marginLeft: 52, marginBottom: 40 } as const;

function dots(
  points: readonly Point[],
  x: (point: Point) => number | Date,
  y: (point: Point) => number,
  said: (point: Point) => string,
) {
  return groupsOf(points).map(({ group }, place) => {
    const { symbol, colour, filled } = looks[Math.min(place, looks.length - 1)];
    return Plot.dot(
      points.filter((point) => point.group === group),
      {
        ...{ x, y, symbol, r: 3.5, stroke: colour },
        fill: filled ? colour : grounds.card,
        fillOpacity: 0.6,
        title: (d: Point) => `${group === '' ? '' : `${group}: `}${said(d)}`,
        tip,
      },
    );
  });
}

/** Which shape stands for which group. */
function keyOf(points: readonly Point[]): string {
  const groups = groupsOf(points);
  if (groups.length < 2) return '';
  const own = groups.slice(0, looks.length - 1).map(({ group }, i) => {
    const { symbol, filled } = looks[i];
    return `${filled ? say`filled` : say`hollow`} ${symbol}: ${shortened(group)}`;
  });
  const rest = groups.length - own.length;
  return `${[...own, ...(rest > 0 ? [counted(rest, { one: say`star: ${rest} other`, other: say`star: ${rest} others` })] : [])].join('; ')}.`;
}

const rowsInWords = (rows: number) => counted(rows, { one: say`${rows} row`, other: say`${rows} rows` });

/** How two columns go together, said without saying why. */
function together(points: readonly Point[]) {
  if (points.length < 3 || points.length > mostPairs) return { words: () => rowsInWords(points.length), note: '' };
  const { tau } = kendallTau(
    Float64Array.from(points, ({ other }) => other),
    Float64Array.from(points, ({ value }) => value),
  );
  const note = Number.isNaN(tau)
    ? ''
    : say`Kendall’s tau ${fixed(tau, 2)}: of all pairs of rows, those in the same order less those in the other. Rows of one horse go together by themselves, so this is no test.`;
  const words = (more: string, up: string, down: string) =>
    Number.isNaN(tau)
      ? rowsInWords(points.length)
      : Math.abs(tau) < 0.1
        ? say`in no order to speak of`
        : say`${more} goes with ${tau > 0 ? up : down} (tau ${fixed(tau, 2)})`;
  return { words, note };
}

function groupsOf(points: readonly Point[]) {
  return rollups(
    points,
    (own) => ({ middle: median(own.map(({ value }) => value)), count: own.length }),
    ({ group }) => group,
  ).map(([group, summary]) => ({ group, ...summary }));
}

function numbersOf(sheet: Sheet, name: string) {
  const column = sheet.column(name);
  if (column.kind === 'text') throw new TypeError(`${name} holds words; a chart needs a column of numbers there`);
  return column;
}

function dateOf(sheet: Sheet): string {
  const name = sheet.names.find((each) => sheet.describe(each).kind === 'date');
  if (name === undefined) throw new TypeError('The table has no column of dates; choose another kind of chart');
  return name;
}

function groupWord(column: ReturnType<Sheet['column']>, row: number, name: string): string {
  if (column.kind === 'text') return cellWord(name, column.at(row)) || say`not known`;
  const value = column.values[row];
  if (Number.isNaN(value)) return say`not known`;
  return column.kind === 'boolean' ? (value === 1 ? say`yes` : say`no`) : shownNumber(value);
}
