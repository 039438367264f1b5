import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { ColumnInput, Columns } from '../lib/sheet/column.ts';

/** What is true of every invented herd, in the units of the columns; what differs from foot to foot is drawn around it. */
export const effects = {
  /** mm a week by which the inside rises against the outside, seen from the front, within one horse. */
  wallLevelPerWeek: { front: 0.4, hind: 0.1 },
  /** mm a week, seen from behind, all feet. */
  heelLevelPerWeek: 0.15,
  /** What a horse adds to each interval's change of level for every week that its usual interval is longer than 7. */
  betweenHorsesPerWeek: -0.4,
  /** Degrees a week. */
  toeAnglePerWeek: { shod: -0.25, bare: 0.05 },
  /** Degrees a week by which the heel falls behind the toe. */
  toeMinusHeelPerWeek: 0.1,
  /** mm in 30 days, drawn evenly for each horse. */
  growthPerMonth: [6, 10],
  /** Degrees that the second observer reads higher. */
  observerToeAngle: 0.3,
  /** Standard deviations: of one reading, of what the farrier leaves, of a horse's own share and of an interval's rest. */
  reading: { angle: 0.8, length: 0.8, below: 1 },
  left: { toeAngle: 0.7, toeLength: 1.5, wallLevel: 0.8, heelLevel: 0.6 },
  horse: { wallLevelChange: 0.3 },
  interval: { toeAngle: 0.4, toeLength: 0.6, wallLevel: 0.6, heelLevel: 0.5 },
} as const;

type Row = Record<string, number | string>;

/** A foot that was given a fault, and whether it changed, so that it should be found, or was always so. */
export interface Fault {
  readonly horse_id: string;
  readonly limb: string;
  readonly column: string;
  readonly what: string;
  readonly changed: boolean;
  readonly therapeutic?: boolean;
}

export interface InventedHerd {
  readonly feet: readonly Row[];
  readonly horses: readonly Row[];
  readonly visits: readonly Row[];
  readonly truth: {
    readonly seed: number;
    readonly effects: typeof effects;
    readonly faults: readonly Fault[];
    readonly horses: readonly {
      horse_id: string;
      usualWeeks: number;
      growthPerMonth: number;
      shod: boolean;
      weight_kg: number;
    }[];
  };
}

const faults: readonly Fault[] = [
  {
    horse_id: 'Thistle',
    limb: 'RF',
    column: 'wall_level_mm',
    what: 'the inside is 7 mm higher from the last visit but one',
    changed: true,
  },
  {
    horse_id: 'Otter',
    limb: 'RH',
    column: 'heel_level_mm',
    what: 'the outside heel is 6 mm higher from the last visit',
    changed: true,
  },
  {
    horse_id: 'Juniper',
    limb: 'LF',
    column: 'toe_minus_heel_deg',
    what: 'the heel runs under by 1.2 degrees more at each of the last five visits',
    changed: true,
  },
  {
    horse_id: 'Basil',
    limb: 'LH',
    column: 'frog_ratio',
    what: 'the frog was always half as wide as long',
    changed: false,
  },
  {
    horse_id: 'Wren',
    limb: 'LF',
    column: 'toe_angle_left_minus_right_deg',
    what: 'the left toe was always 4 degrees steeper',
    changed: false,
  },
  {
    horse_id: 'Pike',
    limb: 'LF',
    column: 'toe_angle_deg',
    what: 'an upright foot, set on purpose and steeper by 8 degrees from the last visit',
    changed: true,
    therapeutic: true,
  },
];

const roster = [
  ...['Thistle', 'Otter', 'Wren', 'Basil', 'Heron', 'Linnet'].map((name) => [name, 'pony'] as const),
  ...['Juniper', 'Pike', 'Marrow', 'Saffron', 'Cedar', 'Ember', 'Fable', 'Garnet', 'Hazel', 'Indigo'].map(
    (name) => [name, 'riding'] as const,
  ),
  ...['Boulder', 'Quarry', 'Ransom', 'Samson'].map((name) => [name, 'heavy'] as const),
  ...['Tempo', 'Amble', 'Velvet', 'Zephyr'].map((name) => [name, 'gaited'] as const),
];

const sizes = {
  pony: { weight: 290, toe: 70, width: 108, front: 52 },
  riding: { weight: 510, toe: 83, width: 128, front: 50 },
  heavy: { weight: 720, toe: 96, width: 158, front: 49 },
  gaited: { weight: 450, toe: 96, width: 122, front: 50 },
} as const;

const uses = ['school', 'trail', 'show', 'driving', 'young', 'retired'];
const limbs = ['LF', 'RF', 'LH', 'RH'] as const;
const firstDay = 20332; // 2025-09-01
const lastDay = firstDay + 425; // 14 months

/**
 * An invented herd of 24 horses over 14 months, with its true effects. No horse, farrier or number in it is real.
 * @param seed  the same seed makes the same herd
 */
export function inventHerd(seed: number): InventedHerd {
  const random = xoroshiro128plus(seed);
  const uniform = (low: number, high: number): number => low + (high - low) * uniformFloat64(random);
  const normal = (sd: number): number =>
    sd * Math.sqrt(-2 * Math.log(1 - uniformFloat64(random))) * Math.cos(2 * Math.PI * uniformFloat64(random));
  const chance = (share: number): boolean => uniformFloat64(random) < share;

  const feet: Row[] = [];
  const horses: Row[] = [];
  const visits: Row[] = [];
  const trueHorses: InventedHerd['truth']['horses'][number][] = [];

  roster.forEach(([horse_id, build], place) => {
    const size = sizes[build];
    const scale = 1 + normal(0.05);
    const weight = Math.round(size.weight * scale ** 3);
    const shod = build !== 'pony' && place % 3 !== 2;
    const usualWeeks = uniform(5.2, 8.8);
    const growth = uniform(...(effects.growthPerMonth as unknown as [number, number]));
    const ownChange = effects.betweenHorsesPerWeek * (usualWeeks - 7) + normal(effects.horse.wallLevelChange);
    const records =
      place % 8 === 5
        ? 'before'
        : place % 12 === 9
          ? 'after'
          : place === 6
            ? 'between'
            : place === 18
              ? 'unsaid'
              : 'both';
    const farrier = place % 2 === 0 ? 'M. Alder' : 'J. Birch';
    const girth = Math.cbrt((weight * 11900) / 0.92);
    trueHorses.push({ horse_id, usualWeeks, growthPerMonth: growth, shod, weight_kg: weight });
    horses.push({
      horse_id,
      birth_year: 2003 + Math.floor(uniform(0, 20)),
      build,
      use: uses[place % uses.length],
      weight_kg: place % 3 === 0 ? weight : '',
      girth_cm: place % 3 === 0 || place % 11 === 10 ? '' : round(girth + normal(1.5)),
      length_cm: place % 3 === 0 || place % 11 === 10 ? '' : round(girth * 0.92 + normal(2)),
    });

    const days: number[] = [Math.floor(firstDay + uniform(0, 20))];
    for (;;) {
      const weeks = Math.min(10, Math.max(4, usualWeeks + uniform(-1.4, 1.4)));
      const next = days[days.length - 1] + Math.round(weeks * 7);
      if (next > lastDay) break;
      days.push(next);
    }
    const last = days.length - 1;
    days.forEach((day, visit) => {
      visits.push({
        horse_id,
        date: iso(day),
        farrier: chance(0.08) ? (farrier === 'M. Alder' ? 'J. Birch' : 'M. Alder') : farrier,
        work: shod ? (visit % 2 === 0 ? 'shoe' : 'reset') : 'trim',
        therapeutic: horse_id === 'Pike' || (horse_id === 'Marrow' && visit >= 2 && visit <= 4) ? 'yes' : 'no',
      });
    });

    const axis = normal(1.2);
    for (const limb of limbs) {
      const front = limb.endsWith('F');
      const faulty = (column: string): boolean =>
        faults.some((fault) => fault.horse_id === horse_id && fault.limb === limb && fault.column === column);
      const own = {
        toeAngle:
          size.front +
          (front ? 0 : 2) +
          normal(1.6) +
          (faulty('toe_angle_left_minus_right_deg') ? 4 : 0) +
          (faulty('toe_angle_deg') ? 8 : 0),
        gap: 2.5 + normal(1.2),
        toe: size.toe * scale + normal(2),
        wallLevel: normal(1),
        heelLevel: normal(0.8),
        width: (size.width * scale + normal(1.5)) * (front ? 1 : 0.95),
        ratio: (front ? 0.97 : 0.9) + normal(0.015),
        frog: faulty('frog_ratio') ? 0.5 : 0.66 + normal(0.05),
        heels: (front ? 0.6 : 0.63) + normal(0.02),
        slopes: [79 + normal(2), 76 + normal(2)],
      };
      const pastern = own.toeAngle + axis + normal(0.8);

      // What stands at the foot: as the farrier left it, then as it grew.
      const left = (visit: number) => ({
        toeAngle: own.toeAngle + normal(effects.left.toeAngle) + (faulty('toe_angle_deg') && visit === last ? 8 : 0),
        gap: own.gap + normal(0.5) + (faulty('toe_minus_heel_deg') ? 1.2 * Math.max(0, visit - (last - 5)) : 0),
        toe: own.toe + normal(effects.left.toeLength),
        wallLevel:
          own.wallLevel + normal(effects.left.wallLevel) + (faulty('wall_level_mm') && visit >= last - 1 ? 7 : 0),
        heelLevel: own.heelLevel + normal(effects.left.heelLevel) - (faulty('heel_level_mm') && visit === last ? 6 : 0),
      });
      const grown = (from: ReturnType<typeof left>, since: number) => ({
        toeAngle:
          from.toeAngle +
          (effects.toeAnglePerWeek[shod ? 'shod' : 'bare'] * since) / 7 +
          normal(effects.interval.toeAngle),
        gap: from.gap + (effects.toeMinusHeelPerWeek * since) / 7 + normal(0.3),
        toe: from.toe + (growth * since) / 30 + normal(effects.interval.toeLength),
        wallLevel:
          from.wallLevel +
          (effects.wallLevelPerWeek[front ? 'front' : 'hind'] * since) / 7 +
          ownChange +
          normal(effects.interval.wallLevel),
        heelLevel: from.heelLevel + (effects.heelLevelPerWeek * since) / 7 + normal(effects.interval.heelLevel),
      });

      const record = (day: number, moment: string, now: ReturnType<typeof left>, repeats: boolean): void => {
        for (let repeat = 1; repeat <= (repeats ? 2 : 1); repeat++) {
          const poor = chance(0.04);
          const hair = chance(build === 'heavy' ? 0.08 : 0.02);
          const { angle, length, below } = effects.reading;
          const blur = poor || hair ? 2 : 1;
          const maybe = (value: number): number | '' => (chance(0.02) ? '' : round(value));
          const toeAngle = now.toeAngle + (repeat === 2 ? effects.observerToeAngle : 0);
          const wall = now.toe * Math.sin((now.toeAngle * Math.PI) / 180) * 0.82;
          const heel = now.toe * 0.46;
          const footLength = own.width / own.ratio;
          feet.push({
            horse_id,
            date: iso(day),
            limb,
            moment,
            repeat,
            toe_angle_deg: maybe(toeAngle + blur * normal(angle)),
            heel_angle_deg: maybe(now.toeAngle - now.gap + blur * normal(angle)),
            pastern_angle_deg: maybe(pastern + blur * normal(angle)),
            shoulder_angle_deg: front && day === days[0] ? maybe(own.toeAngle - 1 + normal(2)) : '',
            toe_length_mm: maybe(now.toe + blur * normal(length)),
            heel_length_mm: maybe(heel + blur * normal(length)),
            medial_wall_mm: maybe(wall + now.wallLevel / 2 + blur * normal(length)),
            lateral_wall_mm: maybe(wall - now.wallLevel / 2 + blur * normal(length)),
            medial_wall_angle_deg: place % 3 === 1 ? maybe(own.slopes[0] + blur * normal(angle)) : '',
            lateral_wall_angle_deg: place % 3 === 1 ? maybe(own.slopes[1] + blur * normal(angle)) : '',
            medial_heel_mm: maybe(heel * 0.75 + now.heelLevel / 2 + blur * normal(length)),
            lateral_heel_mm: maybe(heel * 0.75 - now.heelLevel / 2 + blur * normal(length)),
            foot_width_mm: maybe(own.width + normal(below)),
            foot_length_mm: maybe(footLength + normal(below)),
            frog_width_mm: maybe(footLength * 0.62 * own.frog + normal(below)),
            frog_length_mm: maybe(footLength * 0.62 + normal(below)),
            heel_width_mm: maybe(own.width * own.heels + normal(below)),
            shod: shod ? 'yes' : 'no',
            observer: repeat === 1 ? 'Ida' : 'Tom',
            method: 'gauge and rule',
            view_quality: poor ? 'poor' : 'good',
            hair_over_hairline: hair ? 'yes' : 'no',
          });
        }
      };

      let standing = left(0);
      days.forEach((day, visit) => {
        const measured = visit === 0 || visit >= last - 1 || !missed(place, visit);
        const twice = (place + visit) % 4 === 0;
        const before = grown(standing, visit === 0 ? usualWeeks * 7 : day - days[visit - 1]);
        if (records === 'between' && visit > 0) {
          const half = Math.round((day - days[visit - 1]) / 2);
          record(days[visit - 1] + half, 'between', grown(standing, half), twice);
        }
        if (measured && (records === 'both' || records === 'before')) record(day, 'before', before, twice);
        if (measured && records === 'unsaid') record(day, '', before, twice);
        standing = left(visit);
        if (measured && (records === 'both' || records === 'after')) record(day, 'after', standing, twice);
      });
    }
  });
  return { feet, horses, visits, truth: { seed, effects, faults, horses: trueHorses } };
}

/** Visits at which nobody measured. */
function missed(place: number, visit: number): boolean {
  return (place * 7 + visit * 5) % 17 === 0;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}

function iso(day: number): string {
  return new Date(day * 86_400_000).toISOString().slice(0, 10);
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
