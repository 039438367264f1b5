import {
  type Block,
  citation,
  type DisplayUnits,
  formatQuantity,
  type Herd,
  type HerdPage,
  type Measure,
  type Measured,
  measureDrawing,
  measured,
  measures,
  rangeSentence,
  rangeShares,
  rangeSource,
  rangesToColumns,
  Sheet,
  say,
  shownNumber,
  symbolOf,
} from '../lib/index.ts';

export const page: HerdPage = {
  name: 'columns',
  title: say`Columns`,
  question: say`What is each column, where is it measured, and how firm is what is said of it?`,
  blocks: ({ herd, units }) => {
    const shares = rangeShares(herd.occasions, herd.ranges);
    return [
      {
        kind: 'prose',
        text: say`A **measured** column is typed in. A **computed** one is a formula over other columns: you could have typed it yourself. Ranges are conventions with thin evidence; beside each stands its source, and how many published feet and how many of this herd lie outside it.`,
      },
      { kind: 'heading', level: 2, text: say`Measured`, id: 'measured' },
      ...measured.flatMap((row) => measuredBlocks(row, herd, units)),
      { kind: 'heading', level: 2, text: say`Computed`, id: 'computed' },
      ...measures.flatMap((measure) => computedBlocks(measure, shares, herd, units)),
      { kind: 'heading', level: 2, text: say`Ranges`, id: 'ranges' },
      {
        kind: 'sheet',
        name: 'ranges',
        title: say`Every range as a table`,
        caption: say`Save it, change it, and hand it to the command line with --ranges in place of the built-in ones.`,
        sheet: Sheet.from(rangesToColumns(herd.ranges)),
      },
    ];
  },
};

function measuredBlocks(
  { name, title, unit, landmarks, how, anatomy }: Measured,
  herd: Herd,
  units: DisplayUnits,
): Block[] {
  const error = herd.errors.find((each) => each.name === name);
  const limits = anatomy.map((value) => formatQuantity(value, unit, units)).join(say` to `);
  return entry(
    name,
    title,
    [name],
    [
      `${landmarks} ${how}`,
      say`**${name}**, in ${symbolOf(unit) || say`plain numbers`}. Believed from ${limits}; beyond that it is kept, marked and left out. ${errorWords(error, unit, units)}`,
    ],
  );
}

function errorWords(error: Herd['errors'][number] | undefined, unit: string, units: DisplayUnits): string {
  if (error === undefined || Number.isNaN(error.value)) return say`The error of one reading is not known.`;
  const from = error.from === 'repeats' ? say`from this herd’s own repeats` : citation(error.source ?? 'from memory');
  return say`One reading is off by about ${formatQuantity(error.value, unit, units)} (one standard error; ${from}).`;
}

function computedBlocks(
  measure: Measure,
  shares: ReturnType<typeof rangeShares>,
  herd: Herd,
  units: DisplayUnits,
): Block[] {
  const { name, title, unit, formula, about, sign, source, example } = measure;
  const inputs = measured.map((row) => row.name).filter((input) => new RegExp(`\\b${input}\\b`).test(formula));
  const sheet = measure.table === 'feet' ? herd.occasions : herd.horses;
  const given = Object.entries(example.given).map(
    ([input, value]) => `${input} ${typeof value === 'number' ? shownNumber(value) : value}`,
  );
  const ranges = shares
    .filter((share) => share.measure.name === name)
    .map(({ range, of, outside, beyond }) => {
      const published = (range.publishedOutside ?? []).map(
        (each) => say`${each.outside} of ${each.of} (${citation(each.source)})`,
      );
      return say`**Range:** ${rangeSentence(range, unit, units)}. ${rangeSource(range)}. In this herd ${outside} of ${of} feet lie outside, ${beyond} by more than the error.${published.length > 0 ? say` Published herds: ${published.join('; ')}.` : ''}`;
    });
  return entry(name, title, inputs, [
    `${about}${sign === undefined ? '' : say` Sign: ${sign}.`}`,
    say`**${name}**, in ${symbolOf(unit) || say`plain numbers`}: ${sheet.names.includes(name) ? sheet.sentence(name) : title}. Formula: ${formula}`,
    ...ranges,
    say`Worked case: ${given.join(', ')} gives ${formatQuantity(example.value, unit, units)}. Definition: ${citation(source)}.`,
  ]);
}

function entry(name: string, title: string, drawn: readonly string[], paragraphs: readonly string[]): Block[] {
  const drawing = measureDrawing(drawn);
  const words: Block = { kind: 'prose', text: paragraphs.join('\n\n') };
  return [
    { kind: 'heading', level: 3, text: title, id: name },
    drawing === undefined
      ? words
      : {
          kind: 'group',
          layout: 'side by side',
          blocks: [{ kind: 'drawings', items: [{ title: '', drawing }] }, words],
        },
  ];
}
