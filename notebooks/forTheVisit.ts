import {
  type Block,
  type Columns,
  chosen,
  columnTitle,
  type DisplayUnits,
  dayOrder,
  findingWords,
  fixed,
  footName,
  type Herd,
  type HerdFinding,
  type HerdPage,
  isoFromDays,
  type Limb,
  latestOccasions,
  limbName,
  limbs,
  midSentence,
  parseDate,
  ranking,
  say,
  shownDay,
  toDisplay,
  writeTable,
} from '../lib/index.ts';

/** What is written down for each foot on the day; what a yard never measured is left out unless asked for. */
const usual = [
  'toe_angle_deg',
  'heel_angle_deg',
  'toe_length_mm',
  'heel_length_mm',
  'medial_wall_mm',
  'lateral_wall_mm',
  'medial_heel_mm',
  'lateral_heel_mm',
  'foot_width_mm',
  'foot_length_mm',
];

const layouts = [
  { value: 'page', label: say`A page for each horse` },
  { value: 'line', label: say`A line for each horse` },
];

export const page: HerdPage = {
  name: 'for-the-visit',
  title: say`For the visit`,
  question: say`What is worth a look when the farrier comes, how sure is it, and where do the new numbers go?`,
  blocks: ({ herd, controls, units }) => {
    const names = [...new Set(herd.occasions.column('horse_id').values as readonly string[])].filter(
      (name) => name !== '',
    );
    const asked = chosen(controls, 'horses', names).filter((name) => names.includes(name));
    const horses = asked.length === 0 ? names : asked;
    const layout = chosen(controls, 'layout', 'page') === 'line' ? 'line' : 'page';
    const typed = chosen(controls, 'day', '').trim();
    const day = dayOf(typed);
    const when = Number.isFinite(day) ? shownDay(day) : '';
    const { raise, unsure, onPurpose } = ranking(herd.occasions, herd.ranges);
    const findings = [...raise, ...unsure, ...onPurpose];
    const measuredHere = usual.filter((name) =>
      (herd.occasions.column(name).values as Float64Array).some((value) => !Number.isNaN(value)),
    );
    const partly = measuredHere.length > 0 && measuredHere.length < usual.length;
    const columns = partly && !chosen(controls, 'all', false) ? measuredHere : usual;
    return [
      {
        kind: 'group',
        layout: 'side by side',
        blocks: [
          {
            kind: 'control',
            name: 'day',
            label: say`Day of the visit`,
            help:
              typed === '' || Number.isFinite(day)
                ? say`Such as 2026-12-07; leave it empty to write it by hand.`
                : say`Which day this is can’t be told. Write it as year-month-day, such as 2026-12-07.`,
            input: 'text',
            value: Number.isFinite(day) ? isoFromDays(day) : typed,
          },
          { kind: 'control', name: 'layout', label: say`On paper`, input: 'choice', options: layouts, value: layout },
          {
            kind: 'control',
            name: 'horses',
            label: say`Which horses`,
            input: 'several',
            options: names.map((name) => ({ value: name, label: name })),
            value: horses,
          },
          ...(partly
            ? [
                {
                  kind: 'control' as const,
                  name: 'all',
                  label: say`Room for what was never measured here, too`,
                  input: 'yes-no' as const,
                  value: columns === usual,
                },
              ]
            : []),
        ],
      },
      {
        kind: 'prose',
        text: say`For a talk with the farrier, and with the vet where it needs one: what was measured, and how sure it is. What is done to a foot is theirs to decide with the horse in front of them.`,
      },
      {
        kind: 'prose',
        tone: 'aside',
        text: say`Each foot has two rows in the table to fill in: its moment is **before** the farrier’s work on that day, or **after** it. Fill in the rows of the feet that you measure; rows and cells that stay empty count as not measured.`,
      },
      {
        kind: 'download',
        label: say`The table to fill in, as CSV`,
        filename: `visit${Number.isFinite(day) ? `-${isoFromDays(day)}` : ''}.csv`,
        type: 'text/csv',
        contents: () => writeTable(toFillIn(horses, day, columns)),
      },
      ...(layout === 'line'
        ? [lines(horses, findings, when, units)]
        : horses.map((horse) => sheetOfPaper(herd, horse, findings, when, columns, units))),
    ];
  },
};

/** The day that someone typed, `NaN` where there is none or it could be two. */
function dayOf(typed: string): number {
  const { dmy, mdy } = parseDate(typed) ?? { dmy: Number.NaN, mdy: Number.NaN };
  if (dayOrder !== undefined) return dayOrder === 'dmy' ? dmy : mdy;
  if (Number.isNaN(dmy) || Number.isNaN(mdy)) return Number.isNaN(dmy) ? mdy : dmy;
  return dmy === mdy ? dmy : Number.NaN;
}

function sheetOfPaper(
  herd: Herd,
  horse: string,
  findings: readonly HerdFinding[],
  when: string,
  columns: readonly string[],
  units: DisplayUnits,
): Block {
  const own = findings.filter(({ foot }) => foot.horse === horse);
  return {
    kind: 'group',
    layout: 'sheet of paper',
    blocks: [
      {
        kind: 'heading',
        level: 2,
        text: `${horse}, ${when === '' ? say`on ____________` : when}`,
        id: `visit-${horse}`,
      },
      own.length === 0
        ? {
            kind: 'prose',
            text: seenOnce(herd, horse)
              ? say`Measured on one day so far: with no earlier numbers of this horse beside them, these can’t show a change.`
              : say`Nothing stands out from this herd and this horse’s own past by more than the error of measuring.`,
          }
        : {
            kind: 'form',
            name: `look-${horse}`,
            title: say`Worth a look`,
            columns: [say`Foot`, say`What was measured`, say`How sure`, say`Beside it`],
            rows: own.map((finding) => lookRow(finding, units)),
            onPaper: 6,
          },
      numbers(herd, horse, columns, units),
      {
        kind: 'form',
        name: `notes-${horse}`,
        title: say`Notes`,
        columns: [],
        rows: [],
        lines: { label: say`The farrier’s notes, and what was agreed for next time`, count: 5 },
      },
    ],
  };
}

/** Whether all that is known of a horse is from one day, or from none. */
function seenOnce({ occasions }: Herd, horse: string): boolean {
  const names = occasions.column('horse_id').values;
  const date = occasions.column('date').values as Float64Array;
  return new Set(date.filter((day, row) => names[row] === horse && !Number.isNaN(day))).size < 2;
}

const sure: Readonly<Record<HerdFinding['state'], string>> = {
  raise: say`More than the error of measuring`,
  unsure: say`Can’t tell yet`,
  'on purpose': say`Set so on purpose by vet and farrier`,
};

function lookRow(finding: HerdFinding, units: DisplayUnits): string[] {
  const words = findingWords(finding, units);
  const foot =
    finding.measure.view === 'pair' ? words.subject.split(', ').slice(1).join(', ') : limbName(finding.foot.limb);
  return [foot, words.sentence, sure[finding.state], words.against.slice(1).join(' ')];
}

/** Each foot's latest numbers, and room for those before and after the work. */
function numbers({ occasions }: Herd, horse: string, columns: readonly string[], units: DisplayUnits): Block {
  const names = occasions.column('horse_id').values;
  const codes = occasions.column('limb').values;
  const date = occasions.column('date').values as Float64Array;
  const rows = latestOccasions(occasions).filter((row) => names[row] === horse);
  const of = (limb: Limb) => rows.find((row) => codes[row] === limb);
  const last = rows.reduce((latest, row) => Math.max(latest, date[row]), Number.NEGATIVE_INFINITY);
  const title = (name: string) => {
    const symbol = toDisplay(0, occasions.column(name).unit, units).symbol;
    return `${columnTitle(name)} (${symbol})`;
  };
  const latest = (name: string, limb: Limb) => {
    const row = of(limb);
    const { values, unit } = occasions.column(name);
    const value = row === undefined ? Number.NaN : (values[row] as number);
    return Number.isNaN(value) ? '–' : fixed(toDisplay(value, unit, units).value, units.length === 'mm' ? 1 : 2);
  };
  return {
    kind: 'form',
    name: `numbers-${horse}`,
    title: Number.isFinite(last)
      ? say`Last measured ${shownDay(last)}, and room for the new`
      : say`Room for the new numbers`,
    caption: say`The work is the farrier’s on this day. Before it, fill in every foot; after it, those that were worked on. What wasn’t measured stays empty.`,
    columns: [
      '',
      ...limbs.flatMap((limb) => [say`${limb} last`, say`${limb} before the work`, say`${limb} after the work`]),
    ],
    rows: columns.map((name) => [title(name), ...limbs.flatMap((limb) => [latest(name, limb), '', ''])]),
  };
}

/** One line a horse, for a long day. */
function lines(horses: readonly string[], findings: readonly HerdFinding[], when: string, units: DisplayUnits): Block {
  return {
    kind: 'form',
    name: 'visit-lines',
    title: when === '' ? say`The visit on ____________` : say`The visit on ${when}`,
    columns: [say`Horse`, say`Worth a look`, say`How sure`, say`Notes`],
    rows: horses.map((horse) => {
      const all = findings.filter(({ foot }) => foot.horse === horse);
      const own = all.slice(0, 3);
      if (own.length === 0) return [horse, say`Nothing stands out`, '–', ''];
      const told = (finding: HerdFinding) => {
        const subject = footName(finding.foot).slice(horse.length + 2);
        return `${subject}: ${findingWords(finding, units).value} ${midSentence(finding.measure.title)}`;
      };
      const more = all.length > own.length ? say`; and ${all.length - own.length} more` : '';
      return [horse, own.map(told).join('; ') + more, own.map(({ state }) => midSentence(sure[state])).join('; '), ''];
    }),
  };
}

/** Rows of the feet's table for the day, keys filled in and measurements empty: before and after the work, each foot. */
function toFillIn(horses: readonly string[], day: number, columns: readonly string[]): Columns {
  const rows = horses.flatMap((horse) =>
    ['before', 'after'].flatMap((moment) => limbs.map((limb) => ({ horse, moment, limb }))),
  );
  const empty = () => new Float64Array(rows.length).fill(Number.NaN);
  return {
    horse_id: { values: rows.map(({ horse }) => horse) },
    date: { kind: 'date', values: new Float64Array(rows.length).fill(day) },
    limb: { values: rows.map(({ limb }) => limb) },
    moment: { values: rows.map(({ moment }) => moment) },
    repeat: { values: new Float64Array(rows.length).fill(1) },
    ...Object.fromEntries(columns.map((name) => [name, { values: empty() }])),
  };
}
