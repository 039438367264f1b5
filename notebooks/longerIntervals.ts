import {
  answerWords,
  type Block,
  betweenSentence,
  type Columns,
  type Control,
  cellWord,
  checkSentences,
  chosen,
  type DisplayUnits,
  deferred,
  effectSentence,
  errorSentence,
  explanationSentences,
  fixed,
  type Herd,
  type HerdPage,
  horseTable,
  type IntervalData,
  type IntervalFit,
  type IntervalWorkDone,
  intervalData,
  intervalEffectChart,
  intervalSpread,
  intervalTable,
  intervalTask,
  type Limb,
  limbName,
  limbs,
  measured,
  measures,
  modelSentence,
  type OtherEffect,
  outcomeWords,
  pWords,
  residualQuantiles,
  Sheet,
  say,
  singularSentence,
  termTable,
  termWordsTable,
  withoutEachHorse,
  writeTable,
} from '../lib/index.ts';

/** Outcomes that people ask about first, as the size of a difference where its direction doesn't matter. */
const first = ['wall_level_mm', 'heel_level_mm', 'toe_angle_deg', 'toe_minus_heel_deg', 'toe_length_mm'];

export const page: HerdPage = {
  name: 'longer-intervals',
  title: say`Does a longer interval cost balance?`,
  short: say`Longer intervals`,
  question: say`Within one horse, does a foot drift further when the next visit comes later, and how sure is that?`,
  blocks: ({ herd, controls, units }) => {
    const outcomes = outcomesOf(herd.occasions);
    const wanted = chosen(controls, 'outcome', 'wall_level_mm');
    const outcome = outcomes.some(({ value }) => value === wanted) ? wanted : outcomes[0].value;
    const differs = /_level_|left_minus_right/.test(outcome);
    const size = differs && chosen(controls, 'size', true);
    const asked = chosen(controls, 'feet', limbs).filter((limb): limb is Limb => limbs.includes(limb as Limb));
    const feet = asked.length === 0 ? limbs : asked;
    const ownSlopes = chosen(controls, 'slopes', false);
    const more = chosen(controls, 'others', []).filter(
      (name) => name !== outcome && outcomes.some(({ value }) => value === name),
    );
    const data = intervalData(herd, { outcome, size, limbs: feet });
    const others = more.map((name) => intervalData(herd, { outcome: name, size: /_level_/.test(name), limbs: feet }));
    const questions: Control[] = [
      {
        kind: 'control',
        name: 'outcome',
        label: say`What may change`,
        input: 'choice',
        options: outcomes,
        value: outcome,
      },
      {
        kind: 'control',
        name: 'feet',
        label: say`Which feet`,
        input: 'several',
        options: limbs.map((limb) => ({ value: limb, label: limbName(limb) })),
        value: feet,
      },
      {
        kind: 'control',
        name: 'slopes',
        label: say`Every horse with its own slope`,
        help: say`Allows for horses that differ in how much a longer interval does; the interval of the effect grows wider.`,
        input: 'yes-no',
        value: ownSlopes,
      },
    ];
    if (differs)
      questions.splice(1, 0, {
        kind: 'control',
        name: 'size',
        label: say`Only how large the difference is, not to which side`,
        input: 'yes-no',
        value: size,
      });
    return [
      { kind: 'group', layout: 'side by side', blocks: questions },
      { kind: 'heading', level: 2, text: say`What the intervals are`, id: 'data' },
      ...dataBlocks(data),
      deferred({
        name: 'model',
        label: say`Fitting the model and checking it`,
        task: intervalTask,
        input: { data, others, options: { ownSlopes, seed: 1 } },
        blocks: (done) => answerBlocks(data, done, units),
      }),
      { kind: 'heading', level: 2, text: say`Several outcomes at once`, id: 'several' },
      {
        kind: 'prose',
        text: say`Who asks about ten columns will find something in one of them by chance. Choose the others here, and each p is raised for how many were asked (Benjamini and Hochberg 1995).`,
      },
      {
        kind: 'control',
        name: 'others',
        label: say`Ask about these as well`,
        input: 'several',
        options: outcomes.filter(({ value }) => first.includes(value) && value !== outcome),
        value: more,
      },
    ];
  },
};

/** Columns of numbers that can change between visits: measured and computed ones, the usual questions first. */
function outcomesOf(feet: Herd['occasions']) {
  const titles = new Map([...measured, ...measures].map(({ name, title }) => [name, title]));
  const known = feet.names.filter((name) => titles.has(name) && feet.column(name).kind === 'number');
  const ordered = [...first.filter((name) => known.includes(name)), ...known.filter((name) => !first.includes(name))];
  return ordered.map((name) => ({ value: name, label: titles.get(name) ?? name }));
}

function dataBlocks(data: IntervalData): Block[] {
  const spread = intervalSpread(data);
  const { unmeasured, therapeutic, otherMoments } = data.leftOut;
  const days = (value: number) =>
    Number.isNaN(value) ? say`not known` : say`${fixed(value, value < 10 ? 1 : 0)} days`;
  const without = [
    unmeasured > 0 ? say`${unmeasured} not measured at both ends` : '',
    otherMoments > 0 ? say`${otherMoments} compared at other moments` : '',
    therapeutic > 0 ? say`${therapeutic} of feet that vet and farrier have set so on purpose` : '',
  ].filter((words) => words !== '');
  const disturbed =
    data.compared === 'after to before'
      ? say`Each runs from what was measured **after** the farrier’s work to what was measured **before** the next, so nothing but time lies between.`
      : say`Too few were measured from after the work to before the next, so like moments are compared (${cellWord('compared', data.compared)}): the farrier’s work lies between, and an effect of the interval is blurred by it.`;
  return [
    {
      kind: 'figures',
      items: [
        { label: say`horses`, value: String(spread.horses) },
        { label: say`feet`, value: String(spread.feet) },
        { label: say`intervals`, value: String(spread.intervals), note: say`${spread.rows} with each foot counted` },
        {
          label: say`usual length`,
          value: days(spread.middle),
          note: say`${days(spread.shortest)} to ${days(spread.longest)}`,
        },
        {
          label: say`spread within a horse`,
          value: days(spread.withinHorses),
          note: say`this is what the answer comes from`,
        },
        { label: say`spread between horses`, value: days(spread.betweenHorses), note: say`of their usual lengths` },
      ],
    },
    {
      kind: 'prose',
      text: `${disturbed}${without.length > 0 ? say` Left out: ${without.join('; ')}.` : ''}`,
    },
  ];
}

function answerBlocks(data: IntervalData, { answer, several }: IntervalWorkDone, units: DisplayUnits): Block[] {
  if (answer.kind === 'too little')
    return [
      {
        kind: 'finding',
        id: 'answer',
        subject: say`Too little to go by yet`,
        sentence: `${answer.reason}.`,
        state: 'unsure',
        notes: [
          say`Measure each foot after the farrier’s work and before the next; the page Plan a trial says how many would tell.`,
        ],
      },
    ];
  const singular = singularSentence(answer);
  return [
    { kind: 'heading', level: 2, text: say`The picture`, id: 'picture' },
    { kind: 'chart', ...intervalEffectChart(data, answer, { units }) },
    { kind: 'heading', level: 2, text: say`The answer`, id: 'answer' },
    { kind: 'finding', id: 'answer', ...answerWords(answer, data, units) },
    { kind: 'prose', text: betweenSentence(answer, data, units) },
    { kind: 'heading', level: 2, text: say`Is that more than the error of measuring?`, id: 'error' },
    { kind: 'prose', text: errorSentence(answer, data, units) },
    { kind: 'heading', level: 2, text: say`The model`, id: 'model' },
    { kind: 'prose', text: modelSentence(answer, data) },
    ...(singular === '' ? [] : [{ kind: 'prose' as const, text: singular }]),
    ...(answer.dropped.length > 0
      ? [
          {
            kind: 'prose' as const,
            text: say`Left out of the model because others say the same: ${answer.dropped.filter((term) => !term.startsWith('farrier')).join(', ') || say`a farrier`}.`,
          },
        ]
      : []),
    table(
      'terms',
      say`The model’s table`,
      termWordsTable(data, answer, units),
      say`Estimates are for one week more where the term is a length of interval. What it gives for single farriers is not listed.`,
    ),
    {
      kind: 'prose',
      tone: 'aside',
      text: say`The fixed effects account for ${share(answer.rSquared.marginal)} of the variation, with the differences between horses and feet ${share(answer.rSquared.conditional)} (Nakagawa and Schielzeth 2013).`,
    },
    { kind: 'heading', level: 2, text: say`The checks`, id: 'checks' },
    { kind: 'prose', text: checkSentences(answer, data, units).join('\n\n') },
    {
      kind: 'group',
      layout: 'side by side',
      blocks: [
        { kind: 'chart', ...withoutEachHorse(data, answer, { units }) },
        { kind: 'chart', ...residualQuantiles(answer, data.unit, { units }) },
      ],
    },
    { kind: 'heading', level: 2, text: say`What could explain it`, id: 'explanations' },
    { kind: 'prose', text: explanationSentences(answer, data, units).join('\n\n') },
    { kind: 'heading', level: 2, text: say`What it doesn’t show`, id: 'limits' },
    {
      kind: 'prose',
      tone: 'caution',
      text: say`These are records, not a trial: nobody drew lots for who was seen when. So they show what went together, not what would happen if the interval were changed, nothing about a horse that is not here, and nothing about how a foot should be trimmed. What to do about an interval is for the farrier and the vet; the page [Plan a trial](plan-a-trial.html) says what it would take to know.`,
    },
    ...severalBlocks(several, units),
    { kind: 'heading', level: 2, text: say`To take away`, id: 'take-away' },
    ...tablesToTake(data, answer),
  ];
}

function severalBlocks(several: readonly OtherEffect[], units: DisplayUnits): Block[] {
  if (several.length === 0) return [];
  const lines = several.map((effect) => {
    const words = outcomeWords(effect);
    if (effect.kind === 'too little') return say`**${words}**: too little to go by.`;
    const sentence = effectSentence({ within: effect.within } as IntervalFit, effect, units);
    return say`**${words}**: ${sentence}; p ${pWords(effect.within.p)}, raised for ${several.length} questions ${pWords(effect.adjustedP)}.`;
  });
  return [
    { kind: 'heading', level: 2, text: say`All outcomes that were asked about`, id: 'asked' },
    { kind: 'prose', text: lines.join('\n\n') },
  ];
}

function table(name: string, title: string, columns: Columns, caption?: string): Block {
  const titled = Object.entries(columns).map(([column, input]) => [column, { ...input, title: titleOf(column) }]);
  return { kind: 'sheet', name, title, caption, sheet: Sheet.from(Object.fromEntries(titled)) };
}

const titles: Readonly<Record<string, string>> = {
  horse_id: say`horse`,
  feet: say`feet`,
  intervals: say`intervals`,
  rows: say`rows`,
  usual_interval: say`usual interval`,
  spread_of_intervals: say`spread of intervals`,
  effect_without_this_horse: say`effect without this horse`,
  its_standard_error: say`its standard error`,
  limb: say`limb`,
  start_date: say`start date`,
  end_date: say`end date`,
  interval_within: say`interval within`,
  interval_mean: say`interval mean`,
  change: say`change`,
  season: say`season`,
  shod: say`shod`,
  farrier: say`farrier`,
  fitted: say`fitted`,
  left_over: say`left over`,
};

/** A result's name in words; its unit stands beside it. @example titleOf('usual_interval_weeks') // 'usual interval' */
const titleOf = (column: string) => {
  const name = column.replace(/_(mm|cm|deg|percent|cm2|kg|kg_per_cm2|weeks)$/, '');
  return titles[name] ?? name.replaceAll('_', ' ');
};

function tablesToTake(data: IntervalData, answer: IntervalFit): Block[] {
  const tables = [
    [say`one row a term`, 'terms', termTable(data, answer)],
    [say`one row a horse`, 'horses', horseTable(data, answer)],
    [say`one row an interval`, 'intervals', intervalTable(data, answer)],
  ] as const;
  const about = () =>
    [modelSentence(answer, data), singularSentence(answer), say`Computed by Evenhoof; terms as in terms.csv.`]
      .filter((words) => words !== '')
      .join('\n\n');
  return [
    table('horses', say`Every horse`, horseTable(data, answer)),
    table('intervals', say`Every interval`, intervalTable(data, answer)),
    ...tables.map(
      ([label, name, columns]): Block => ({
        kind: 'download',
        label: say`The results as tidy CSV, ${label}`,
        filename: `longer-intervals-${name}.csv`,
        type: 'text/csv',
        contents: () => writeTable(columns),
      }),
    ),
    {
      kind: 'download',
      label: say`The model in words`,
      filename: 'longer-intervals-model.txt',
      type: 'text/plain',
      contents: () => `${about()}\n`,
    },
  ];
}

const share = (part: number) => say`${fixed(100 * part, 0)} percent`;
