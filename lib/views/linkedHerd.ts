import { endOf, isLimb, limbs, sideOf } from '../hoof/limbs.ts';
import { dayMs } from '../sheet/days.ts';
import { say } from '../words/say.ts';
import { type ChartOptions, columnTitle, extent, leftOut, millimetres, sentences, shownIn } from './chart.ts';
import { numbersOf, textOf } from './footMeans.ts';
import type { Readable } from './footShape.ts';
import { accents, dashes, fonts, grounds, inks, roles, sizes, strokes, tissues } from './theme.ts';

/** Charts that select each other, ready for a page. */
export interface LinkedDescription {
  readonly name: string;
  readonly title: string;
  readonly caption: string;
  readonly summary: string;
  /** For Vega-Lite 6; the data stand in it. */
  readonly specification: object;
}

export interface LinkedOptions extends ChartOptions {
  /** Any number column of the feet; `wall_level_mm` where left out. */
  readonly column?: string;
  /** Width of the drawing area of each chart in px. */
  readonly width?: number;
}

/**
 * Dates, limbs and horses of one column, linked: a span of dates drawn across the first chart, limbs clicked in the
 * second and horses clicked in the third each filter the other two. Nothing chosen means all.
 * @param feet  with `horse_id`, `limb`, `date` and the column
 */
export function linkedHerd(feet: Readable, options: LinkedOptions = {}): LinkedDescription {
  const { column = 'wall_level_mm', units = millimetres, rows, width = 520 } = options;
  const title = columnTitle(column);
  const { unit } = feet.column(column);
  const { times, label } = shownIn(unit, units);
  const { points, missing } = pointsOf(feet, column, rows, times);
  const horses = new Set(points.map(({ horse }) => horse)).size;
  // The scale of all the data, so that nothing jumps when a choice takes some away.
  const scale = { domain: extent(points.map((point) => point.value)), zero: false, nice: true };
  const value = { field: 'value', type: 'quantitative', title: label(title), scale };
  const only = (...others: string[]) => [{ filter: { and: others.map((param) => ({ param })) } }];
  const limbColour = {
    field: 'end',
    scale: { domain: ['front', 'hind'], range: [roles.front, roles.hind] },
    legend: null,
  };
  return {
    name: `linked-${column.replaceAll('_', '-')}`,
    title: say`${title}: choose dates, limbs or horses in one chart and the others follow`,
    caption: sentences(
      say`Drag across the dates; click limbs or horses, click again to let go, double-click to let all go. Marks point to the foot’s side, front filled, hind hollow.`,
      leftOut(missing, 'rows'),
    ),
    summary: say`${title} of ${points.length} measurements of ${horses} horses: by date, by limb with the middle half and median, and by horse with the median.`,
    specification: {
      $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
      description: say`${title} by date, limb and horse`,
      data: { name: 'feet', values: points },
      spacing: 18,
      vconcat: [
        {
          width,
          height: 190,
          params: [
            {
              name: 'span',
              select: {
                type: 'interval',
                encodings: ['x'],
                mark: { fill: inks.soft, fillOpacity: 0.12, stroke: inks.edge },
              },
            },
          ],
          transform: only('limb', 'horse'),
          mark: { type: 'point', size: 46, strokeWidth: strokes.line },
          encoding: {
            x: {
              field: 'date',
              type: 'temporal',
              scale: { type: 'utc' },
              title: null,
              axis: { format: '%b %Y', labelOverlap: true },
            },
            y: value,
            shape: {
              field: 'side',
              scale: { domain: ['left', 'right'], range: ['triangle-left', 'triangle-right'] },
              legend: null,
            },
            stroke: limbColour,
            fill: {
              field: 'end',
              scale: { domain: ['front', 'hind'], range: [roles.front, grounds.card] },
              legend: null,
            },
            opacity: { condition: { param: 'span', value: 1 }, value: 0.25 },
            tooltip: [
              { field: 'horse', title: say`Horse` },
              { field: 'limb', title: say`Limb` },
              { field: 'date', type: 'temporal', title: say`Date`, format: '%Y-%m-%d', timeUnit: 'utcyearmonthdate' },
              { field: 'value', title, type: 'quantitative', format: '.2f' },
            ],
          },
        },
        {
          width,
          height: { step: 24 },
          encoding: { y: { field: 'limb', type: 'nominal', sort: limbs, title: null } },
          layer: [
            rowsToClick('limb'),
            {
              transform: only('span', 'horse'),
              mark: { type: 'tick', thickness: strokes.thin, height: 16 },
              encoding: { x: value, color: limbColour },
            },
            {
              transform: only('span', 'horse'),
              mark: { type: 'bar', height: 8, opacity: 0.35 },
              encoding: { ...middleHalf(scale), color: limbColour },
            },
            { transform: only('span', 'horse'), ...medianTick(18, scale) },
          ],
        },
        {
          width,
          height: { step: 17 },
          encoding: { y: { field: 'horse', type: 'nominal', title: null, axis: { labelLimit: 110 } } },
          layer: [
            rowsToClick('horse'),
            {
              transform: only('span', 'limb'),
              mark: { type: 'tick', thickness: strokes.thin, height: 11, color: accents.stone },
              encoding: { x: value },
            },
            { transform: only('span', 'limb'), ...medianTick(13, scale) },
          ],
        },
      ],
      config: {
        background: null,
        font: fonts.label,
        view: { stroke: null },
        axis: {
          labelFontSize: sizes.mark,
          titleFontSize: sizes.mark,
          titleFontWeight: 'normal',
          labelColor: inks.ink,
          titleColor: inks.ink,
          gridColor: inks.rule,
          domainColor: inks.edge,
          tickColor: inks.edge,
        },
        rule: { strokeDash: dashes.level.split(' ').map(Number) },
      },
    },
  };
}

/** The whole row can be clicked, not only its thin marks; it stays where another choice empties it. */
function rowsToClick(name: 'limb' | 'horse') {
  return {
    params: [{ name, select: { type: 'point', fields: [name], toggle: 'true', on: 'click', clear: 'dblclick' } }],
    transform: [{ aggregate: [{ op: 'count', as: 'count' }], groupby: [name] }],
    mark: { type: 'bar', cursor: 'pointer', color: tissues.horn },
    encoding: {
      x: { value: 0 },
      x2: { value: 'width' },
      fillOpacity: { condition: { param: name, empty: false, value: 1 }, value: 0.01 },
    },
  };
}

function middleHalf(scale: object) {
  return {
    x: { aggregate: 'q1', field: 'value', type: 'quantitative', scale },
    x2: { aggregate: 'q3', field: 'value' },
  };
}

function medianTick(height: number, scale: object) {
  return {
    mark: { type: 'tick', thickness: 3, height, color: roles.beyond },
    encoding: { x: { aggregate: 'median', field: 'value', type: 'quantitative', scale } },
  };
}

interface Point {
  readonly horse: string;
  readonly limb: string;
  readonly end: string;
  readonly side: string;
  /** Milliseconds since 1970-01-01. */
  readonly date: number;
  readonly value: number;
}

function pointsOf(feet: Readable, column: string, rows: Iterable<number> | undefined, times: number) {
  const horse = textOf(feet, 'horse_id');
  const limb = textOf(feet, 'limb');
  const date = numbersOf(feet, 'date').values;
  const { values } = numbersOf(feet, column);
  const points: Point[] = [];
  let missing = 0;
  for (const row of rows ?? Array(feet.rows).keys()) {
    const code = limb.at(row);
    if (!isLimb(code) || Number.isNaN(values[row]) || Number.isNaN(date[row])) missing++;
    else
      points.push({
        horse: horse.at(row),
        limb: code,
        end: endOf(code),
        side: sideOf(code),
        date: date[row] * dayMs,
        value: values[row] * times,
      });
  }
  return { points, missing };
}
