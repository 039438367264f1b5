import {
  type Cell,
  type ColumnAbout,
  citation,
  type DisplayUnits,
  formatQuantity,
  type Herd,
  type HerdPage,
  isLimb,
  limbs,
  measureDrawing,
  measured,
  measures,
  rangeSentence,
  rangeSource,
  say,
} from '../lib/index.ts';

const keys = ['horse_id', 'date', 'limb', 'moment', 'repeat'];
const circumstances = ['shod', 'observer', 'method', 'view_quality', 'hair_over_hairline'];
const readings = measured.filter(({ table }) => table === 'feet').map(({ name }) => name);
const computed = measures.filter(({ table }) => table === 'feet').map(({ name }) => name);

export const page: HerdPage = {
  name: 'record',
  title: say`The record`,
  question: say`What was measured, and what follows from it?`,
  blocks: ({ herd, units }) => [
    {
      kind: 'prose',
      text: say`One row is one foot, each time it is measured. What follows from it stands beside it and changes with it. A cell that can’t be read keeps what you typed, is marked, and is left out of everything until you mend it.`,
    },
    {
      kind: 'sheet',
      name: 'feet',
      title: say`Every reading`,
      sheet: herd.feet,
      columns: columnsOf(herd),
      editable: {
        table: 'feet',
        form: [...keys, ...readings, ...circumstances],
        names: ['horse_id', 'limb', 'date', 'moment', 'repeat'],
        lastTime: 'previous',
        next: nextFoot,
        about: (column, inputs) => aboutColumn(column, inputs, herd, units),
      },
    },
  ],
};

/** What is typed first, then the reader's own columns, then the built-in ones; what comes from other tables stands there. */
function columnsOf({ feet, recomputed }: Herd): string[] {
  const typed = [...keys, ...readings, ...circumstances];
  const known = new Set([...typed, ...computed]);
  const own = feet.names.filter((name) => !known.has(name) && feet.describe(name).origin === 'computed');
  return [...typed, ...own, ...computed].filter(
    (name) => feet.names.includes(name) && !(typed.includes(name) && recomputed.includes(name)),
  );
}

/** The next limb of the same horse on the same occasion; after the last one, the next horse of the day. */
function nextFoot({ horse_id, date, limb, moment, observer, method }: Readonly<Record<string, Cell>>) {
  const occasion = { date, moment, observer, method };
  const place = typeof limb === 'string' && isLimb(limb) ? limbs.indexOf(limb) : -1;
  const next = place < 0 ? limb : limbs[place + 1];
  return defined(next === undefined ? { ...occasion, limb: limbs[0] } : { ...occasion, horse_id, limb: next });
}

function defined(row: Readonly<Record<string, Cell | undefined>>): Record<string, Cell> {
  return Object.fromEntries(Object.entries(row).filter((entry): entry is [string, Cell] => entry[1] !== undefined));
}

function aboutColumn(name: string, inputs: readonly string[], herd: Herd, units: DisplayUnits): ColumnAbout {
  const reading = measured.find((row) => row.name === name);
  const measure = measures.find((row) => row.name === name);
  const drawing = measureDrawing(inputs);
  if (reading) {
    const { unit, landmarks, how, anatomy } = reading;
    const believed = anatomy.map((value) => formatQuantity(value, unit, units)).join(say` to `);
    const facts = [
      { label: say`Where`, text: landmarks },
      { label: say`How`, text: how },
      { label: say`Error of one reading`, text: errorWords(name, unit, herd, units) },
      { label: say`Believed`, text: believed },
    ];
    return { drawing, facts };
  }
  if (measure) {
    const { about, sign, unit, ranges, source } = measure;
    const facts = [
      { label: say`What it is`, text: about },
      ...(sign ? [{ label: say`Sign`, text: sign }] : []),
      ...ranges.map((range) => ({
        label: say`Range`,
        text: `${rangeSentence(range, unit, units)}. ${rangeSource(range)}`,
      })),
      { label: say`Definition`, text: citation(source) },
    ];
    return { drawing, facts: distinct(facts) };
  }
  return { drawing, facts: [] };
}

/** Several ranges of one measure stand in one line each, under one label. */
function distinct(facts: readonly { label: string; text: string }[]): { label: string; text: string }[] {
  const texts = new Map<string, string[]>();
  for (const { label, text } of facts) texts.set(label, [...(texts.get(label) ?? []), text]);
  return [...texts].map(([label, all]) => ({ label, text: all.join('; ') }));
}

function errorWords(name: string, unit: string, { errors }: Herd, units: DisplayUnits): string {
  const error = errors.find((one) => one.name === name);
  if (error === undefined || error.from === 'unknown') return say`not known`;
  if (error.from === 'given') return say`as it was given with each reading`;
  const size = say`about ${formatQuantity(error.value, unit, units)} (one standard error; twice as much in a poor view)`;
  if (error.from === 'repeats') return say`${size}, from this herd’s own repeats`;
  return say`${size}, ${citation(error.source ?? 'from memory')}. Repeat a few readings, and it comes from your own herd`;
}
