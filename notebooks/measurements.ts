import {
  agreementChart,
  type Block,
  type ColumnRepeatability,
  chosen,
  counted,
  type DisplayUnits,
  fixed,
  formatQuantity,
  type Herd,
  type HerdPage,
  measured,
  measures,
  observerAgreement,
  repeatabilities,
  repeatsWorth,
  Sheet,
  say,
  smallestChange,
  writeTable,
} from '../lib/index.ts';

export const page: HerdPage = {
  name: 'measurements',
  title: say`How good are my measurements?`,
  short: say`Measurements`,
  question: say`When the same foot is read twice, how far apart are the readings, and how many are worth taking?`,
  blocks: ({ herd, controls, units }) => {
    const titles = new Map([...measured, ...measures].map(({ name, title }) => [name, title]));
    const rows = repeatabilities(herd.feet, columnsOf(herd));
    if (rows.length === 0)
      return [
        {
          kind: 'finding',
          id: 'none',
          subject: say`No repeats yet`,
          sentence: say`No foot was read twice at one moment, so nothing can be said of the error from this herd.`,
          state: 'unsure',
          notes: [
            say`Read each foot twice in one sitting, a few feet at every visit; give the second reading its own row with repeat 2.`,
          ],
        },
      ];
    const wanted = chosen(controls, 'column', 'toe_angle_deg');
    const row = rows.find(({ column }) => column === wanted) ?? rows[0];
    const pair = observerAgreement(herd.feet, row.column);
    return [
      {
        kind: 'prose',
        text: say`Two readings of one foot at one moment differ by the error of measuring and by nothing else. Their spread says what a single number is worth, and what no change between visits can be told from.`,
      },
      {
        kind: 'control',
        name: 'column',
        label: say`Which column`,
        input: 'choice',
        options: rows.map(({ column }) => ({ value: column, label: titles.get(column) ?? column })),
        value: row.column,
      },
      ...figures(row, units),
      { kind: 'heading', level: 2, text: say`Do two readings agree?`, id: 'agreement' },
      ...(pair === undefined
        ? []
        : [
            { kind: 'chart' as const, ...agreementChart(pair, { units }) },
            { kind: 'prose' as const, text: pairWords(pair.first, pair.second, pair.n) },
          ]),
      { kind: 'heading', level: 2, text: say`How many readings are worth it?`, id: 'repeats' },
      { kind: 'chart', ...repeatsWorth(row, { units }) },
      { kind: 'prose', text: worthWords(row) },
      { kind: 'heading', level: 2, text: say`Every column`, id: 'columns' },
      {
        kind: 'sheet',
        name: 'repeatability',
        title: say`What a reading of each column is worth`,
        caption: say`Spread: standard deviation of readings of one foot. Repeatability: two readings differ by less than this 95 times in 100. Reliability: how much of what differs between readings is the feet, 1 at best (one-way intraclass correlation, with 95% limits).`,
        sheet: Sheet.from(shownTable(rows, titles, units)),
      },
      {
        kind: 'download',
        label: say`The same as tidy CSV, one row a column`,
        filename: 'repeatability.csv',
        type: 'text/csv',
        contents: () => writeTable(tidyTable(rows)),
      },
      {
        kind: 'prose',
        tone: 'aside',
        text: say`Bland and Altman 1986, 1996 and 1999; Shrout and Fleiss 1979. Where two people read, their own differences are in the spread. Where the herd has ten repeats or more to spare, the other pages take a column’s error from here; else from the table of measured columns.`,
      },
    ];
  },
};

/** What is read off a foot, or computed from that and nothing else. */
function columnsOf({ feet }: Herd): string[] {
  const ofFeet = [...measured, ...measures].filter(({ table, name }) => table === 'feet' && !/guide|_load_/.test(name));
  const names = new Set(ofFeet.map(({ name }) => name));
  return feet.names.filter((name) => names.has(name) && feet.column(name).kind === 'number');
}

function figures(row: ColumnRepeatability, units: DisplayUnits): Block[] {
  const said = (value: number) => formatQuantity(value, row.unit, units);
  return [
    {
      kind: 'figures',
      items: [
        { label: say`feet read twice or more`, value: String(row.feet), note: say`${row.readings} readings` },
        { label: say`spread of one foot’s readings`, value: said(row.withinSd) },
        { label: say`two readings differ by less than`, value: said(row.repeatability), note: say`95 times in 100` },
        {
          label: say`reliability of one reading`,
          value: fixed(row.icc.value, 2),
          note: say`95% interval ${fixed(row.icc.lower, 2)} to ${fixed(row.icc.upper, 2)}`,
        },
      ],
    },
  ];
}

function pairWords(first: string, second: string, n: number): string {
  const few = n < 30 ? say` There are few pairs: the bands round the limits are wide for that reason.` : '';
  return first === 'first reading'
    ? say`No observers are named, so the first reading of a foot is held against the second.${few}`
    : say`A bias between two people matters where one measures before and the other after: it then looks like a change. It is nobody’s fault, and whether ${plain(first)} or ${plain(second)} is right these numbers can’t say.${few}`;
}

const plain = (name: string) => name.replace(/[\\*[\]]/g, '\\$&');

function worthWords({ worthwhile, withinSd }: ColumnRepeatability): string {
  if (!(withinSd > 0))
    return say`The readings never differed, so one is enough, or the second was copied from the first.`;
  if (Number.isNaN(worthwhile))
    return say`Readings of one foot differ as much as feet do, so no number of readings tells these feet apart by this column.`;
  return counted(worthwhile, {
    one: say`One reading is enough to tell this herd’s feet apart with a reliability of 0.9. Whether one foot changed is the harder question: there the curve above counts.`,
    other: say`${worthwhile} readings averaged are enough to tell this herd’s feet apart with a reliability of 0.9. Whether one foot changed is the harder question: there the curve above counts.`,
  });
}

function shownTable(rows: readonly ColumnRepeatability[], titles: ReadonlyMap<string, string>, units: DisplayUnits) {
  const said = (of: (row: ColumnRepeatability) => number) => ({
    values: rows.map((row) => formatQuantity(of(row), row.unit, units)),
  });
  return {
    [say`column`]: { values: rows.map(({ column }) => titles.get(column) ?? column) },
    [say`feet read twice`]: { values: Float64Array.from(rows, ({ feet }) => feet) },
    [say`spread`]: said(({ withinSd }) => withinSd),
    [say`repeatability`]: said(({ repeatability }) => repeatability),
    [say`reliability`]: {
      values: rows.map(({ icc }) => say`${fixed(icc.value, 2)} (${fixed(icc.lower, 2)} to ${fixed(icc.upper, 2)})`),
    },
    [say`change that two readings a day show`]: said(({ withinSd }) => smallestChange(withinSd, 2)),
    [say`readings worth taking`]: { values: Float64Array.from(rows, ({ worthwhile }) => worthwhile) },
  };
}

function tidyTable(rows: readonly ColumnRepeatability[]) {
  const numbers = (of: (row: ColumnRepeatability) => number) => ({ values: Float64Array.from(rows, of) });
  return {
    column: { values: rows.map(({ column }) => column) },
    unit: { values: rows.map(({ unit }) => unit) },
    feet: numbers(({ feet }) => feet),
    readings: numbers(({ readings }) => readings),
    within_foot_sd: numbers(({ withinSd }) => withinSd),
    repeatability_coefficient: numbers(({ repeatability }) => repeatability),
    icc: numbers(({ icc }) => icc.value),
    icc_lower: numbers(({ icc }) => icc.lower),
    icc_upper: numbers(({ icc }) => icc.upper),
    readings_worth_taking: numbers(({ worthwhile }) => worthwhile),
  };
}
