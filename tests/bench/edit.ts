import { table as arquero, type ColumnTable, op } from 'arquero';
import { FootSheet } from '../../lib/hoof/footSheet.ts';
import type { Sheet } from '../../lib/sheet/sheet.ts';
import { against, type BenchRow, interleaved } from './interleaved.ts';

/** Twelve computed columns, eight of them by the row. */
const formulas = {
  axis: 'toe - pastern',
  under: 'toe - heel',
  round: 'width / length',
  level: 'medial - lateral',
  level_share: '(medial - lateral) / ((medial + lateral) / 2)',
  steep: 'toe > 55 ? 1 : 0',
  tilt: 'atan2(medial - lateral, width)',
  area: 'width * length * 0.7854',
  horse_mean: 'mean(toe, horse_id)',
  off_horse: 'toe - mean(toe, horse_id)',
  score: '(toe - mean(toe)) / sd(toe)',
  pair: 'toe - opposite(toe)',
};
type Computed = keyof typeof formulas;
const names = Object.keys(formulas) as Computed[];

/** A hundred rows a horse: four feet at each of 25 visits. */
const perHorse = 100;
const inputs = ['toe', 'heel', 'pastern', 'width', 'length', 'medial', 'lateral'] as const;
type Numbers = Record<string, Float64Array>;

function readings(rows: number): Record<(typeof inputs)[number], Float64Array> {
  let state = 7;
  const reading = (low: number, high: number) =>
    Float64Array.from({ length: rows }, () => {
      state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
      return low + ((high - low) * state) / 0x7fffffff;
    });
  return {
    toe: reading(45, 60),
    heel: reading(40, 55),
    pastern: reading(45, 60),
    width: reading(110, 140),
    length: reading(110, 150),
    medial: reading(55, 65),
    lateral: reading(55, 65),
  };
}

function sheetOf(rows: number, numbers: Numbers): Sheet {
  const units = (name: string) => (['toe', 'heel', 'pastern'].includes(name) ? 'deg' : 'mm');
  const sheet: Sheet = FootSheet.from({
    horse_id: { values: Array.from({ length: rows }, (_, row) => `horse ${Math.floor(row / perHorse)}`) },
    date: {
      kind: 'date',
      values: Float64Array.from({ length: rows }, (_, row) => 19000 + 42 * (Math.floor(row / 4) % 25)),
    },
    limb: { values: Array.from({ length: rows }, (_, row) => ['LF', 'RF', 'LH', 'RH'][row % 4]) },
    ...Object.fromEntries(inputs.map((name) => [name, { unit: units(name), values: numbers[name] }])),
  });
  return sheet.addAll(names.map((name) => ({ name, formula: formulas[name] })));
}

/** The same by hand, for this table and these columns alone: sums kept, rows known. */
class ByHand {
  readonly out = Object.fromEntries(names.map((name) => [name, new Float64Array(0)])) as Record<Computed, Float64Array>;
  readonly numbers: Numbers;
  #sum = 0;
  #squares = 0;
  #horses: Float64Array;

  constructor(rows: number, numbers: Numbers) {
    this.numbers = numbers;
    this.#horses = new Float64Array(rows / perHorse);
    for (const name of names) this.out[name] = new Float64Array(rows);
    this.full();
  }

  full(): void {
    const { toe } = this.numbers;
    this.#sum = 0;
    this.#squares = 0;
    this.#horses = new Float64Array(toe.length / perHorse);
    for (let row = 0; row < toe.length; row++) {
      this.#sum += toe[row];
      this.#squares += (toe[row] - 52) ** 2;
      this.#horses[(row / perHorse) | 0] += toe[row];
    }
    for (let row = 0; row < toe.length; row++) this.#row(row);
    for (let horse = 0; horse < this.#horses.length; horse++) this.#horse(horse);
    this.#scores();
  }

  set(row: number, value: number): void {
    const { toe } = this.numbers;
    const horse = (row / perHorse) | 0;
    this.#sum += value - toe[row];
    this.#squares += (value - 52) ** 2 - (toe[row] - 52) ** 2;
    this.#horses[horse] += value - toe[row];
    toe[row] = value;
    this.#row(row);
    this.out.pair[row ^ 1] = toe[row ^ 1] - value;
    this.#horse(horse);
    this.#scores();
  }

  #row(row: number): void {
    const { toe, heel, pastern, width, length, medial, lateral } = this.numbers;
    const { out } = this;
    out.axis[row] = toe[row] - pastern[row];
    out.under[row] = toe[row] - heel[row];
    out.round[row] = width[row] / length[row];
    out.level[row] = medial[row] - lateral[row];
    out.level_share[row] = (medial[row] - lateral[row]) / ((medial[row] + lateral[row]) / 2);
    out.steep[row] = toe[row] > 55 ? 1 : 0;
    out.tilt[row] = (Math.atan2(medial[row] - lateral[row], width[row]) * 180) / Math.PI;
    out.area[row] = width[row] * length[row] * 0.7854;
    out.pair[row] = toe[row] - toe[row ^ 1];
  }

  #horse(horse: number): void {
    const mean = this.#horses[horse] / perHorse;
    for (let row = horse * perHorse; row < (horse + 1) * perHorse; row++) {
      this.out.horse_mean[row] = mean;
      this.out.off_horse[row] = this.numbers.toe[row] - mean;
    }
  }

  #scores(): void {
    const { toe } = this.numbers;
    const { score } = this.out;
    const mean = this.#sum / toe.length;
    const sd = Math.sqrt((this.#squares - toe.length * (mean - 52) ** 2) / (toe.length - 1));
    for (let row = 0; row < toe.length; row++) score[row] = (toe[row] - mean) / sd;
  }
}

type Row = Record<string, number>;

/** All twelve columns by Arquero, which has no other way than afresh. */
function byArquero(table: ColumnTable): ColumnTable {
  return table
    .derive({
      axis: (d: Row) => d.toe - d.pastern,
      under: (d: Row) => d.toe - d.heel,
      round: (d: Row) => d.width / d.length,
      level: (d: Row) => d.medial - d.lateral,
      level_share: (d: Row) => (d.medial - d.lateral) / ((d.medial + d.lateral) / 2),
      steep: (d: Row) => (d.toe > 55 ? 1 : 0),
      tilt: (d: Row) => (op.atan2(d.medial - d.lateral, d.width) * 180) / Math.PI,
      area: (d: Row) => d.width * d.length * 0.7854,
      score: (d: Row) => (d.toe - op.mean(d.toe)) / op.stdev(d.toe),
    })
    .groupby('horse')
    .derive({ horse_mean: (d: Row) => op.mean(d.toe), off_horse: (d: Row) => d.toe - op.mean(d.toe) })
    .groupby('pair_id')
    .derive({ pair: (d: Row) => 2 * d.toe - op.sum(d.toe) })
    .ungroup();
}

function expectAlike(sheet: Sheet, hand: ByHand): void {
  for (const name of names) {
    const ours = sheet.column(name).values as Float64Array;
    for (let row = 0; row < ours.length; row++)
      if (!(Math.abs(ours[row] - hand.out[name][row]) <= 1e-9 * Math.max(1, Math.abs(ours[row]))))
        throw new Error(`${name} of row ${row} is ${ours[row]} in the sheet and ${hand.out[name][row]} by hand`);
  }
}

async function of(rows: number, goal: string): Promise<BenchRow[]> {
  const numbers = readings(rows);
  const sheet = sheetOf(rows, numbers);
  const hand = new ByHand(rows, { ...numbers, toe: numbers.toe.slice() });
  const afresh = new ByHand(rows, { ...numbers, toe: numbers.toe.slice() });
  let edits = 0;
  const edit = () => ({ row: (edits * 7919) % rows, value: 45 + ((edits * 31) % 150) / 10 });
  const ours = () => {
    edits++;
    const { row, value } = edit();
    sheet.set('toe', row, value);
    for (const name of names) sheet.column(name);
  };
  const byHand = () => {
    const { row, value } = edit();
    hand.set(row, value);
  };
  const what = `one cell edited, twelve computed columns, ${rows.toLocaleString('en')} rows`;

  const incremental = await interleaved({ ours, 'by hand, incremental': byHand }, 60);
  expectAlike(sheet, hand);
  const full = await interleaved({ ours, 'by hand, afresh': () => afresh.full() }, 12);
  const found = [...against(what, incremental, { 'by hand, incremental': goal }), ...against(what, full)];
  if (rows > 100_000) return found;

  const table = arquero({
    ...numbers,
    horse: Int32Array.from({ length: rows }, (_, row) => Math.floor(row / perHorse)),
    pair_id: Int32Array.from({ length: rows }, (_, row) => row >> 1),
  });
  return [...found, ...against(what, await interleaved({ ours, Arquero: () => byArquero(table) }, 3))];
}

/** A sheet against code written for one table, the same afresh, and Arquero, in one run. */
export async function bench(): Promise<BenchRow[]> {
  return [...(await of(100_000, 'under 1 ms')), ...(await of(1_000_000, 'under 3 ms'))];
}
