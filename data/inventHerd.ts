import type { ColumnInput, Columns } from '../lib/sheet/column.ts';
import { type Random, random } from '../lib/stats/random.ts';
import { effects, type Fault, faults } from './effects.ts';
import { type InventedHorse, inventFoot, isoDate, type Row } from './inventFoot.ts';

export interface InventedHerd {
  readonly feet: readonly Row[];
  readonly horses: readonly Row[];
  readonly visits: readonly Row[];
  readonly truth: {
    readonly seed: number;
    readonly effects: typeof effects;
    readonly faults: readonly Fault[];
    readonly horses: readonly {
      readonly horse_id: string;
      readonly usualWeeks: number;
      readonly growthPerMonth: number;
      readonly shod: boolean;
      readonly weight_kg: number;
    }[];
  };
}

const roster: Readonly<Record<InventedHorse['build'], readonly string[]>> = {
  pony: ['Thistle', 'Otter', 'Wren', 'Basil', 'Heron', 'Linnet'],
  riding: ['Juniper', 'Pike', 'Marrow', 'Saffron', 'Cedar', 'Ember', 'Fable', 'Garnet', 'Hazel', 'Indigo'],
  heavy: ['Boulder', 'Quarry', 'Ransom', 'Samson'],
  gaited: ['Tempo', 'Amble', 'Velvet', 'Zephyr'],
};
const usualWeight = { pony: 290, riding: 510, heavy: 720, gaited: 450 } as const;
const uses = ['school', 'trail', 'show', 'driving', 'young', 'retired'];
const farriers = ['M. Alder', 'J. Birch'];
const firstDay = 20332; // 2025-09-01
const lastDay = firstDay + 425; // 14 months

/** At which moments a horse is measured: most before and after the work, some otherwise. */
function momentsOf(place: number): readonly string[] {
  if (place === 6) return ['between'];
  if (place === 18) return [''];
  if (place % 8 === 5) return ['before'];
  if (place % 12 === 9) return ['after'];
  return ['before', 'after'];
}

/** Visits at which nobody measured. */
function missed(place: number, visit: number): boolean {
  return (place * 7 + visit * 5) % 17 === 0;
}

/**
 * An invented herd of 24 horses over 14 months, with its true effects. No horse, farrier or number in it is real.
 * @param seed  any whole number; the same one makes the same herd
 */
export function inventHerd(seed: number): InventedHerd {
  const draw = random(seed);
  const feet: Row[] = [];
  const horses: Row[] = [];
  const visits: Row[] = [];
  const trueHorses: InventedHerd['truth']['horses'][number][] = [];
  const all = Object.entries(roster).flatMap(([build, names]) => names.map((name) => [name, build] as const));
  all.forEach(([horse_id, build], place) => {
    const usualWeeks = 5.2 + 3.6 * draw.uniform();
    const horse = inventHorse(draw, horse_id, build as InventedHorse['build'], place, usualWeeks);
    const { shod, growthPerMonth } = horse;
    const weight_kg = Math.round(usualWeight[horse.build] * horse.scale ** 3);
    trueHorses.push({ horse_id, usualWeeks, growthPerMonth, shod, weight_kg });
    horses.push(horseRow(draw, horse, place, weight_kg));
    visits.push(...visitRows(draw, horse, place));
    for (const limb of ['LF', 'RF', 'LH', 'RH']) feet.push(...footRows(draw, horse, limb, place, usualWeeks));
  });
  return { feet, horses, visits, truth: { seed, effects, faults, horses: trueHorses } };
}

function inventHorse(
  draw: Random,
  horse_id: string,
  build: InventedHorse['build'],
  place: number,
  usualWeeks: number,
): InventedHorse {
  const [slow, fast] = effects.growthPerMonth;
  const days = [firstDay + draw.below(20)];
  for (let next = days[0]; next <= lastDay; ) {
    const weeks = Math.min(10, Math.max(4, usualWeeks + 2.8 * (draw.uniform() - 0.5)));
    next += Math.round(weeks * 7);
    if (next <= lastDay) days.push(next);
  }
  return {
    horse_id,
    build,
    shod: build !== 'pony' && place % 3 !== 2,
    scale: 1 + 0.05 * draw.normal(),
    growthPerMonth: slow + (fast - slow) * draw.uniform(),
    ownChange: effects.betweenHorsesPerWeek * (usualWeeks - 7) + effects.horse.wallLevelChange * draw.normal(),
    axis: 1.2 * draw.normal(),
    slopes: place % 3 === 1,
    days,
  };
}

function horseRow(draw: Random, { horse_id, build }: InventedHorse, place: number, weight: number): Row {
  const weighed = place % 3 === 0;
  const taped = !weighed && place % 11 !== 10;
  const girth = Math.cbrt((weight * 11900) / 0.92);
  const tape = (value: number, sd: number): number | '' =>
    taped ? Math.round((value + sd * draw.normal()) * 10) / 10 : '';
  return {
    horse_id,
    birth_year: 2003 + draw.below(20),
    build,
    use: uses[place % uses.length],
    weight_kg: weighed ? weight : '',
    girth_cm: tape(girth, 1.5),
    length_cm: tape(girth * 0.92, 2),
  };
}

function visitRows(draw: Random, { horse_id, shod, days }: InventedHorse, place: number): Row[] {
  return days.map((day, visit) => ({
    horse_id,
    date: isoDate(day),
    farrier: farriers[(place + Number(draw.uniform() < 0.08)) % 2],
    work: shod ? ['shoe', 'reset'][visit % 2] : 'trim',
    therapeutic: horse_id === 'Pike' || (horse_id === 'Marrow' && visit >= 2 && visit <= 4) ? 'yes' : 'no',
  }));
}

function footRows(draw: Random, horse: InventedHorse, limb: string, place: number, usualWeeks: number): Row[] {
  const foot = inventFoot(draw, horse, limb);
  const moments = momentsOf(place);
  const { days } = horse;
  const rows: Row[] = [];
  let standing = foot.left(0);
  days.forEach((day, visit) => {
    const readings = (place + visit) % 4 === 0 ? [1, 2] : [1];
    const measure = (state: typeof standing, on: number, moment: string): void => {
      if (moments.includes(moment)) rows.push(...readings.map((repeat) => foot.reading(state, on, moment, repeat)));
    };
    const since = visit === 0 ? Math.round(usualWeeks * 7) : day - days[visit - 1];
    const half = Math.round(since / 2);
    if (visit > 0) measure(foot.grown(standing, half), day - since + half, 'between');
    const before = foot.grown(standing, since);
    standing = foot.left(visit);
    // The first visit and the last two are never missed.
    if (visit > 0 && visit < days.length - 2 && missed(place, visit)) return;
    measure(before, day, 'before');
    measure(before, day, '');
    measure(standing, day, 'after');
  });
  return rows;
}

/** Rows as the columns that a herd is made from. */
export function toColumns(rows: readonly Row[]): Columns {
  const columns: Record<string, ColumnInput> = {};
  for (const name of Object.keys(rows[0])) {
    const cells = rows.map((row) => row[name]);
    columns[name] = cells.every((cell) => cell === '' || typeof cell === 'number')
      ? { values: Float64Array.from(cells, (cell) => (cell === '' ? Number.NaN : Number(cell))) }
      : { values: cells.map(String) };
  }
  return columns;
}
