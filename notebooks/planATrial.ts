import {
  type Block,
  calendar,
  chosen,
  type DisplayUnits,
  daysFromIso,
  deferred,
  formatQuantity,
  type Herd,
  type HerdPage,
  intervalData,
  isoFromDays,
  longestEver,
  planEvents,
  planTable,
  powerCurve,
  Sheet,
  type SimulatedPower,
  say,
  type TrialDesign,
  trialPlan,
  trialPower,
  trialTask,
  usualChangeSpread,
  writeTable,
} from '../lib/index.ts';

const unit = 'mm';

export const page: HerdPage = {
  name: 'plan-a-trial',
  title: say`Plan a trial`,
  question: say`How many horses and visits would it take to know what a longer interval does, and who is seen when?`,
  blocks: ({ herd, controls, units }) => {
    const horses = horsesFree(herd);
    const usual = usualChangeSpread(intervalData(herd, { outcome: 'wall_level_mm', size: true }));
    const number = (name: string, first: number, least: number, most: number, step = 1) => {
      const value = chosen(controls, name, first);
      return Math.min(most, Math.max(least, step === 1 ? Math.round(value) : value));
    };
    const asked = chosen(controls, 'taking', horses).filter((name) => horses.includes(name));
    const taking = asked.length === 0 ? horses : asked;
    const design: TrialDesign = {
      // A trial has two horses at least; with fewer to hand, what eight would tell.
      horses: taking.length < 2 ? 8 : taking.length,
      intervals: number('intervals', 6, 2, 24),
      feet: number('feet', 4, 1, 4),
      shorter: number('shorter', 5, 1, longestEver, 0.5),
      longer: number('longer', 7, 1, longestEver, 0.5),
      effect: number('effect', 0.3, 0.01, 10, 0.05),
      changeSd: number('scatter', Number.isFinite(usual) ? Math.round(usual * 10) / 10 : 2, 0.1, 20, 0.1),
    };
    const slopeSd = number('differ', 0, 0, 5, 0.05);
    const limits = { least: number('least', 4, 1, longestEver, 0.5), most: number('most', 8, 1, longestEver, 0.5) };
    const seed = number('seed', 1, 0, 1e9);
    const start = startDay(chosen(controls, 'start', ''), herd);
    return [
      {
        kind: 'prose',
        tone: 'caution',
        text: say`Ask your farrier and your vet first, and plan only intervals that both accept for each of these horses. A horse that is lame, sore or under treatment is not part of a trial. If a foot looks wrong before its day, it is seen then: the horse comes before the plan, and what was missed is written down as missing.`,
      },
      { kind: 'heading', level: 2, text: say`How large a trial`, id: 'size' },
      {
        kind: 'prose',
        text: say`Every horse has shorter and longer intervals in turn, in an order by lot, and is compared with itself. What follows is about the size of the difference between inside and outside, seen from the front; it holds for any outcome if effect and scatter are given in its unit.`,
      },
      {
        kind: 'group',
        layout: 'side by side',
        blocks: [
          {
            kind: 'control',
            name: 'taking',
            label: say`Horses that take part`,
            help: say`Horses with a foot that vet and farrier have set so on purpose are not offered.`,
            input: 'several',
            options: horses.map((name) => ({ value: name, label: name })),
            value: taking,
          },
          numberControl('intervals', say`Intervals of each horse`, design.intervals, 2, 24, 1, '1'),
          {
            ...numberControl('feet', say`Feet measured of each`, design.feet, 1, 4, 1, '1'),
            help: say`Counted as if they changed by themselves; where a horse’s feet change together, four tell less.`,
          },
          numberControl('shorter', say`The shorter interval`, design.shorter, 1, longestEver, 0.5, 'wk'),
          numberControl('longer', say`The longer interval`, design.longer, 1, longestEver, 0.5, 'wk'),
          numberControl('effect', say`Effect of a week worth knowing`, design.effect, 0.01, 10, 0.05, unit),
          {
            ...numberControl('scatter', say`Scatter of a single change`, design.changeSd, 0.1, 20, 0.1, unit),
            help: Number.isFinite(usual)
              ? say`A standard deviation. In this herd it is ${formatQuantity(usual, unit, units)}.`
              : say`A standard deviation. This herd has too few intervals to say; 2 mm is a guess.`,
          },
          {
            ...numberControl('differ', say`How much horses differ in the effect`, slopeSd, 0, 5, 0.05, unit),
            help: say`A standard deviation, for one week. Zero: every horse reacts alike.`,
          },
        ],
      },
      { kind: 'chart', ...powerCurve(design, unit, { units }) },
      { kind: 'prose', text: powerWords(design, units) },
      deferred({
        name: 'simulation',
        label: say`Running this trial 400 times`,
        task: trialTask,
        input: { design, slopeSd, replicates: 400, seed: 1 },
        blocks: (result) => simulationBlocks(result, slopeSd),
      }),
      { kind: 'heading', level: 2, text: say`Who is seen when`, id: 'plan' },
      {
        kind: 'group',
        layout: 'side by side',
        blocks: [
          {
            kind: 'control',
            name: 'start',
            label: say`First interval from`,
            help: say`A day such as 2027-03-01, on which the farrier comes to all of them.`,
            input: 'text',
            value: isoFromDays(start),
          },
          numberControl('least', say`Never shorter than`, limits.least, 1, longestEver, 0.5, 'wk'),
          {
            ...numberControl('most', say`Never longer than`, limits.most, 1, longestEver, 0.5, 'wk'),
            help: say`What your farrier and vet accept for these horses.`,
          },
          {
            ...numberControl('seed', say`Number of the lot`, seed, 0, 1e9, 1, '1'),
            help: say`The same number gives the same plan. Choose it once, before you have seen a plan.`,
          },
        ],
      },
      ...planBlocks(trialPlan({ ...design, ...limits, horses: taking, start, seed }), seed),
      {
        kind: 'prose',
        text: say`Measure every foot before and after the farrier’s work at every visit, twice, the same person if you can; who measures should not know which interval it was. Write down what did not go as planned. Then ask [whether a longer interval costs balance](longer-intervals.html) again: with lots drawn, what went together may at last be called an effect of the interval.`,
      },
    ];
  },
};

function numberControl(
  name: string,
  label: string,
  value: number,
  least: number,
  most: number,
  step: number,
  of: string,
) {
  return { kind: 'control' as const, name, label, input: 'number' as const, value, least, most, step, unit: of };
}

/** Horses of whom no foot was set so on purpose when it was last seen. */
function horsesFree({ occasions }: Herd): string[] {
  const horse = occasions.column('horse_id').values as readonly string[];
  const date = occasions.column('date').values as Float64Array;
  const onPurpose = occasions.column('therapeutic').values as Float64Array;
  const last = new Map<string, { date: number; onPurpose: boolean }>();
  for (const [row, name] of horse.entries()) {
    const before = last.get(name);
    if (before === undefined || date[row] > before.date)
      last.set(name, { date: date[row], onPurpose: onPurpose[row] === 1 });
    else if (date[row] === before.date && onPurpose[row] === 1) before.onPurpose = true;
  }
  return [...last].filter(([name, { onPurpose: treated }]) => name !== '' && !treated).map(([name]) => name);
}

function startDay(text: string, { occasions }: Herd): number {
  const given = daysFromIso(text);
  if (Number.isFinite(given)) return given;
  const dates = occasions.column('date').values as Float64Array;
  const last = dates.reduce((latest, day) => Math.max(latest, day), Number.NEGATIVE_INFINITY);
  return Number.isFinite(last) ? last + 14 : daysFromIso('2027-01-04');
}

function powerWords(design: TrialDesign, units: DisplayUnits): string {
  const { power, detectable } = trialPower(design);
  if (!Number.isFinite(detectable))
    return say`The two intervals must differ, and there must be more than one measurement, for a trial to tell anything.`;
  return say`${design.horses} horses with ${design.intervals} intervals and ${design.feet} feet each: ${Math.round(100 * power)} of 100 such trials would tell ${formatQuantity(design.effect, unit, units)} a week from none. Eight of ten would see an effect of ${formatQuantity(detectable, unit, units, { digits: 2 })} a week. Intervals further apart tell more than more horses do, as far as farrier and vet accept them; and a trial that sees nothing has not shown that there is nothing.`;
}

function simulationBlocks({ power, lower, upper, replicates, singular }: SimulatedPower, slopeSd: number): Block[] {
  const of100 = (share: number) => Math.round(100 * share);
  const differ = slopeSd > 0 ? say`with horses that differ in the effect` : say`with horses alike in the effect`;
  return [
    {
      kind: 'figures',
      items: [
        {
          label: say`trials of 100 that would show it, ${differ}`,
          value: String(of100(power)),
          note: say`${of100(lower)} to ${of100(upper)}, from ${replicates} simulated trials; ${singular} of them with a variance at zero`,
        },
      ],
    },
  ];
}

function planBlocks(plan: ReturnType<typeof trialPlan>, seed: number): Block[] {
  if (typeof plan === 'string')
    return [{ kind: 'finding', id: 'plan', subject: say`No plan`, sentence: `${plan}.`, state: 'unsure' }];
  const table = planTable(plan);
  return [
    {
      kind: 'sheet',
      name: 'trial-plan',
      title: say`The plan by lot`,
      caption: say`Of every two intervals of a horse one is shorter and one longer; in every pair half of the horses have the shorter one first, so both fall in every season alike.`,
      sheet: Sheet.from({
        ...table,
        interval: { ...table.interval, title: say`Interval` },
        which: { ...table.which, title: say`Shorter or longer` },
      }),
    },
    {
      kind: 'download',
      label: say`The plan as tidy CSV, one row an interval`,
      filename: 'trial-plan.csv',
      type: 'text/csv',
      contents: () => writeTable(planTable(plan)),
    },
    {
      kind: 'download',
      label: say`The plan as a calendar file`,
      filename: 'trial-plan.ics',
      type: 'text/calendar',
      contents: () => calendar(planEvents(plan, seed), Date.now()),
    },
  ];
}
