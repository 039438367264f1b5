import {
  type Block,
  calendar,
  chosen,
  columnTitle,
  counted,
  type DisplayUnits,
  type DueData,
  type DueHorse,
  type DueList,
  deferred,
  dueData,
  dueEvents,
  dueTable,
  dueTask,
  fixed,
  formatQuantity,
  type HerdPage,
  limbName,
  say,
  shownDay,
  writeTable,
} from '../lib/index.ts';

const outcomes = ['toe_length_mm', 'toe_angle_deg'];

export const page: HerdPage = {
  name: 'when-next',
  title: say`When is the next visit due?`,
  short: say`When next`,
  question: say`When will each horse’s feet have changed as much as the herd’s usual foot does by the yard’s own rule?`,
  blocks: ({ herd, controls, units }) => {
    const asked = chosen(controls, 'outcome', outcomes[0]);
    const outcome = outcomes.includes(asked) ? asked : outcomes[0];
    const weeks = Math.min(16, Math.max(1, chosen(controls, 'weeks', 6)));
    const data = dueData(herd, outcome);
    return [
      {
        kind: 'group',
        layout: 'side by side',
        blocks: [
          {
            kind: 'control',
            name: 'weeks',
            label: say`The yard’s own rule: a visit every`,
            input: 'number',
            value: weeks,
            least: 1,
            most: 16,
            step: 0.5,
            unit: 'wk',
          },
          {
            kind: 'control',
            name: 'outcome',
            label: say`Judged by`,
            input: 'choice',
            options: outcomes.map((value) => ({ value, label: columnTitle(value) })),
            value: outcome,
          },
        ],
      },
      {
        kind: 'prose',
        tone: 'caution',
        text: say`The yard’s rule and what farrier and vet have agreed come first. A slow pace is no reason to put a visit off: a loose or shifted shoe, a crack, lameness, heat or a strong pulse don’t wait for a date.`,
      },
      deferred({
        name: 'due',
        label: say`Working out each foot’s pace`,
        task: dueTask,
        input: { data, weeks },
        blocks: (list) => listBlocks(list, data, weeks, units),
      }),
    ];
  },
};

function listBlocks(list: DueList, data: DueData, weeks: number, units: DisplayUnits): Block[] {
  const { horses, usual, reason } = list;
  const pace = (value: number) => formatQuantity(value, `${data.unit}/wk`, units, { signed: true });
  return [
    {
      kind: 'prose',
      text:
        reason === undefined
          ? say`In this herd a front foot changes by ${pace(usual.front)} and a hind foot by ${pace(usual.hind)} at the middle, from one visit’s work to the next. Each day below is when the first foot of that horse will have changed since its last work as much as such a foot does in ${weekWords(weeks)}. In brackets: where the day would lie if the foot’s pace were off by its error. A foot measured over few intervals is taken to be more like the herd.`
          : say`Only the rule can be said yet: ${reason}.`,
    },
    {
      kind: 'form',
      name: 'due',
      title: say`The next visits, the earliest first`,
      columns: [
        say`Horse`,
        say`Last work`,
        say`By the rule (${weekWords(weeks)})`,
        say`By its own pace`,
        say`Which foot`,
      ],
      rows: horses.map((due) => dueRow(due, data, units)),
    },
    {
      kind: 'prose',
      tone: 'aside',
      text: say`What this doesn’t know: the season to come (feet grow slower in winter: common practice, no source), new shoes, a change of ground or of feed. It follows one column; a foot can be due for another reason.`,
    },
    {
      kind: 'download',
      label: say`The list as CSV`,
      filename: 'when-next.csv',
      type: 'text/csv',
      contents: () => writeTable(dueTable(list)),
    },
    {
      kind: 'download',
      label: say`The days as a calendar`,
      filename: 'when-next.ics',
      type: 'text/calendar',
      contents: () => calendar(dueEvents(list), Date.now()),
    },
  ];
}

function dueRow({ horse, lastWork, rule, foot }: DueHorse, data: DueData, units: DisplayUnits): string[] {
  if (Number.isNaN(lastWork)) return [horse, say`not known`, say`not known`, say`not known`, '–'];
  const day = (days: number) => (Number.isFinite(days) ? shownDay(Math.round(lastWork + days)) : say`open`);
  if (foot === undefined) return [horse, shownDay(lastWork), shownDay(Math.round(rule)), say`too little measured`, '–'];
  const { limb, perWeek, error, intervals, days, earliest, latest } = foot;
  return [
    horse,
    shownDay(lastWork),
    shownDay(Math.round(rule)),
    say`${day(days)} (${day(earliest)} to ${day(latest)})`,
    `${limbName(limb)}, ${formatQuantity(perWeek, `${data.unit}/wk`, units, { error, signed: true })}, ${counted(intervals, { one: say`${intervals} interval`, other: say`${intervals} intervals` })}`,
  ];
}

const weekWords = (weeks: number) =>
  counted(weeks, { one: say`one week`, other: say`${fixed(weeks, Number.isInteger(weeks) ? 0 : 1)} weeks` });
