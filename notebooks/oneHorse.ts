import {
  type Block,
  changesSince,
  chosen,
  type DisplayUnits,
  type FootAtTime,
  type FootChange,
  footOverTime,
  footShape,
  formatQuantity,
  type Herd,
  type HerdPage,
  isoFromDays,
  type Limb,
  limbName,
  limbs,
  measureLines,
  momentName,
  type OverlaidView,
  say,
  shownDay,
  timeLooks,
} from '../lib/index.ts';

const views: readonly OverlaidView[] = ['side', 'front', 'below'];
const year = 365.25;
const scale = 0.9;
/** How many changes go on paper. */
const shown = 5;

export const page: HerdPage = {
  name: 'one-horse',
  title: say`One horse`,
  question: say`How do this horse’s four feet stand, and what has changed?`,
  blocks: ({ herd, controls, units }) => {
    const names = [...new Set(herd.occasions.column('horse_id').values as readonly string[])]
      .filter((name) => name !== '')
      .sort((a, b) => a.localeCompare(b));
    if (names.length === 0) return [{ kind: 'prose', text: say`No horse has been measured yet.` }];
    const asked = chosen(controls, 'horse', names[0]);
    const horse = names.includes(asked) ? asked : names[0];
    const days = daysOf(herd, horse);
    const askedDay = chosen(controls, 'day', '');
    const day = days.find((each) => isoFromDays(each) === askedDay) ?? days[0];
    return [
      {
        kind: 'group',
        layout: 'side by side',
        blocks: [
          {
            kind: 'control',
            name: 'horse',
            label: say`Which horse`,
            input: 'choice',
            options: names.map((name) => ({ value: name, label: name })),
            value: horse,
          },
          {
            kind: 'control',
            name: 'day',
            label: say`As measured on`,
            input: 'choice',
            options: days.map((each) => ({ value: isoFromDays(each), label: shownDay(each) })),
            value: isoFromDays(day),
          },
        ],
      },
      {
        kind: 'group',
        layout: 'sheet of paper',
        blocks: [
          { kind: 'heading', level: 2, text: say`The feet of ${horse} on ${shownDay(day)}`, id: 'feet' },
          ...drawings(herd, horse, day, units),
          { kind: 'heading', level: 2, text: say`Changed since the last time`, id: 'changed' },
          ...changes(herd, horse, units),
        ],
      },
      {
        kind: 'group',
        layout: 'sheet of paper',
        blocks: [
          { kind: 'heading', level: 2, text: say`${horse} over time`, id: 'time' },
          {
            kind: 'prose',
            text: say`Filled front, hollow hind; marks point to their side, and the right side is dashed. The upright bar is the 95% error of measuring, dashed lines are the limits of the range. Before and after the farrier’s work are both drawn, so lines zigzag where both were measured.`,
          },
          {
            kind: 'group',
            layout: 'small side by side',
            blocks: measureLines(herd.occasions, horse, { ranges: herd.ranges, units }).map((chart) => ({
              kind: 'chart' as const,
              ...chart,
            })),
          },
          { kind: 'heading', level: 2, text: say`Notes`, id: 'notes' },
          {
            kind: 'form',
            name: 'notes',
            title: say`Notes`,
            columns: [],
            rows: [],
            lines: { label: say`${horse}, seen by, and what was agreed`, count: 3 },
          },
        ],
      },
    ];
  },
};

/** The days on which a horse was measured, the latest first. */
function daysOf({ occasions }: Herd, horse: string): number[] {
  const names = occasions.column('horse_id').values;
  const date = occasions.column('date').values as Float64Array;
  return [...new Set(date.filter((day, row) => names[row] === horse && !Number.isNaN(day)))].sort((a, b) => b - a);
}

/** Each foot from three sides, its times laid over each other: over the visits, and over that day's work. */
function drawings(herd: Herd, horse: string, day: number, units: DisplayUnits): Block[] {
  return [
    overlaid(say`The latest over the visit before and a year ago`, herd, horse, day, overTime, units) ?? {
      kind: 'prose',
      text: say`No foot was measured on that day.`,
    },
    overlaid(say`After the farrier’s work over before it`, herd, horse, day, overWork, units) ?? {
      kind: 'prose',
      text: say`No foot was measured both before and after the farrier’s work.`,
    },
    {
      kind: 'prose',
      tone: 'aside',
      text: say`Each foot from the side, from the front and as its print, all to one scale. The print’s outline between its measured width, length and heels is a schematic.`,
    },
  ];
}

type TimesOf = (herd: Herd, horse: string, limb: Limb, day: number) => FootAtTime[];

/** `undefined` where no foot has times to be laid over each other. */
function overlaid(
  title: string,
  herd: Herd,
  horse: string,
  day: number,
  timesOf: TimesOf,
  units: DisplayUnits,
): Block | undefined {
  const feet = limbs.map((limb) => ({ limb, times: timesOf(herd, horse, limb, day) }));
  const known = feet.filter(({ times }) => times.length > 0);
  if (known.length === 0) return undefined;
  const looks = (times: readonly FootAtTime[]) => times.map(({ when }, i) => `${timeLooks[i].word} ${when}`).join(', ');
  const all = new Set(known.map(({ times }) => looks(times)));
  return {
    kind: 'drawings',
    title,
    caption: all.size === 1 ? `${capital([...all][0])}.` : undefined,
    items: known.map(({ limb, times }) => ({
      title: limbName(limb),
      note: all.size === 1 ? undefined : looks(times),
      drawing: views.map((view) => footOverTime(times, view, { mmPerPx: scale, units })),
    })),
  };
}

/** What has changed by more than the error of measuring, in a sentence and a table. */
function changes(herd: Herd, horse: string, units: DisplayUnits): Block[] {
  const { changed, compared, withoutError, once } = changesSince(herd.occasions, horse);
  const sentence =
    compared === 0
      ? say`No foot has been measured twice at the same moment yet, so nothing can have changed.`
      : changed.length === 0
        ? say`Of ${compared} values that were measured at the same moment the time before, none has changed by more than its error of measuring.`
        : say`${changed.length} of ${compared} values have changed by more than their error of measuring; by chance alone about ${Math.max(1, Math.round(0.05 * (compared - withoutError)))} would.${withoutError > 0 ? say` Of ${withoutError} the error isn’t known.` : ''}${once > 0 ? say` ${once} feet were measured only once.` : ''}`;
  if (changed.length === 0) return [{ kind: 'prose', text: sentence }];
  return [
    { kind: 'prose', text: sentence },
    {
      kind: 'form',
      name: 'changed',
      title: say`Changed by more than the error of measuring, the surest first`,
      columns: [say`Foot`, say`What`, say`Before`, say`Now`, say`Change`, say`Since`],
      rows: changed.map((change) => changeRow(change, units)),
      onPaper: shown,
    },
  ];
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

interface Row {
  readonly row: number;
  readonly date: number;
  readonly moment: string;
}

function rowsOf({ occasions }: Herd, horse: string, limb: Limb): Row[] {
  const [names, codes, moments] = ['horse_id', 'limb', 'moment'].map((name) => occasions.column(name).values);
  const date = occasions.column('date').values as Float64Array;
  return Array.from(names.keys())
    .filter((row) => names[row] === horse && codes[row] === limb)
    .map((row) => ({ row, date: date[row], moment: String(moments[row]) }))
    .sort((a, b) => b.date - a.date);
}

/** The foot on that day, the time before, and a year before, all at the same moment. */
function overTime(herd: Herd, horse: string, limb: Limb, day: number) {
  const rows = rowsOf(herd, horse, limb);
  const order = ['before', 'between', 'after'];
  const now = rows
    .filter(({ date }) => date === day)
    .sort((a, b) => order.indexOf(b.moment) - order.indexOf(a.moment))[0];
  if (now === undefined) return [];
  const like = rows.filter(({ moment, date }) => moment === now.moment && date < now.date);
  const last = like[0];
  const yearAgo = like
    .slice(1)
    .filter(({ date }) => Math.abs(now.date - date - year) < 90)
    .sort((a, b) => Math.abs(now.date - a.date - year) - Math.abs(now.date - b.date - year))[0];
  return [now, last, yearAgo].flatMap((each) => (each === undefined ? [] : atTime(herd, each)));
}

/** The foot after the farrier's work and before it, at the last visit up to that day that was measured at both. */
function overWork(herd: Herd, horse: string, limb: Limb, day: number) {
  const rows = rowsOf(herd, horse, limb);
  const at = (moment: string, date: number) => rows.find((each) => each.moment === moment && each.date === date);
  const date = rows.find((each) => each.date <= day && at('after', each.date) && at('before', each.date))?.date;
  if (date === undefined) return [];
  return ['after', 'before'].flatMap((moment) => atTime(herd, at(moment, date)!));
}

function atTime({ occasions }: Herd, { row, date, moment }: Row) {
  const shape = footShape(occasions, row);
  return shape === undefined ? [] : [{ shape, when: `${shownDay(date)} ${momentName(moment)}` }];
}

function changeRow({ foot, measure, before, now, since, change, error }: FootChange, units: DisplayUnits): string[] {
  const quantity = (value: number) =>
    unbroken(formatQuantity(value, measure.unit, units, { digits: measure.unit === '1' ? 2 : 1 }));
  return [
    measure.view === 'pair' ? say`${foot.limb.endsWith('F') ? say`front` : say`hind`} pair` : limbName(foot.limb),
    measure.title,
    quantity(before),
    quantity(now),
    unbroken(formatQuantity(change, measure.unit, units, { error, signed: true })),
    unbroken(`${shownDay(since)}, ${momentName(foot.moment)}`),
  ];
}

/** Words that stay on one line. */
const unbroken = (text: string) => text.replaceAll(' ', '\u00a0');
