import type { Random } from '../lib/stats/random.ts';
import { effects, faults } from './effects.ts';

export type Row = Record<string, number | string>;

/** What is true of a horse and shows in its feet. */
export interface InventedHorse {
  readonly horse_id: string;
  readonly build: 'pony' | 'riding' | 'heavy' | 'gaited';
  readonly shod: boolean;
  /** Against others of its build, 1 for the usual. */
  readonly scale: number;
  readonly growthPerMonth: number;
  /** mm that each interval adds to its change of level, whatever its length. */
  readonly ownChange: number;
  /** Degrees that its pasterns are steeper than its toes. */
  readonly axis: number;
  /** Whether somebody measured the slopes of its walls. */
  readonly slopes: boolean;
  readonly days: readonly number[];
}

/** What stands at a foot on one day. */
interface State {
  readonly toeAngle: number;
  /** Degrees that the heel is flatter than the toe. */
  readonly gap: number;
  readonly toe: number;
  readonly wallLevel: number;
  readonly heelLevel: number;
}

export interface InventedFoot {
  /** As the farrier leaves it at a visit. */
  left(visit: number): State;
  /** As it is some days later. */
  grown(from: State, days: number): State;
  /** As somebody measures it. */
  reading(now: State, day: number, moment: string, repeat: number): Row;
}

const sizes = {
  pony: { toe: 70, width: 108, front: 52 },
  riding: { toe: 83, width: 128, front: 50 },
  heavy: { toe: 96, width: 158, front: 49 },
  gaited: { toe: 96, width: 122, front: 50 },
} as const;

/** One foot of an invented horse: how it stands, how it grows, and what is read off it. */
export function inventFoot(draw: Random, horse: InventedHorse, limb: string): InventedFoot {
  const { horse_id, build, shod, scale, days } = horse;
  const size = sizes[build];
  const front = limb.endsWith('F');
  const last = days.length - 1;
  const about = (middle: number, sd: number): number => middle + sd * draw.normal();
  const faulty = (column: string): boolean =>
    faults.some((fault) => fault.horse_id === horse_id && fault.limb === limb && fault.column === column);

  const upright = (faulty('toe_angle_left_minus_right_deg') ? 4 : 0) + (faulty('toe_angle_deg') ? 8 : 0);
  const own = {
    toeAngle: about(size.front + (front ? 0 : 2) + upright, 1.6),
    gap: faulty('toe_minus_heel_deg') ? 3.5 : about(2.5, 1.2),
    toe: about(size.toe * scale, 2),
    wallLevel: faulty('wall_level_mm') ? 0.5 : about(0, 1),
    heelLevel: faulty('heel_level_mm') ? -0.5 : about(0, 0.8),
    width: about(size.width * scale, 1.5) * (front ? 1 : 0.95),
    ratio: about(front ? 0.97 : 0.9, 0.015),
    frog: faulty('frog_ratio') ? 0.5 : about(0.66, 0.05),
    heels: about(front ? 0.6 : 0.63, 0.02),
    medialSlope: about(79, 2),
    lateralSlope: about(76, 2),
  };
  const pastern = about(own.toeAngle + horse.axis, 0.8);

  return {
    left: (visit) => ({
      toeAngle: about(own.toeAngle, effects.left.toeAngle) + (faulty('toe_angle_deg') && visit === last ? 8 : 0),
      gap: about(own.gap, 0.5) + (faulty('toe_minus_heel_deg') ? 2 * Math.max(0, visit - (last - 5)) : 0),
      toe: about(own.toe, effects.left.toeLength),
      wallLevel: about(own.wallLevel, effects.left.wallLevel) + (faulty('wall_level_mm') && visit >= last - 1 ? 7 : 0),
      heelLevel: about(own.heelLevel, effects.left.heelLevel) - (faulty('heel_level_mm') && visit === last ? 6 : 0),
    }),

    grown(from, since) {
      const weeks = since / 7;
      const { toeAnglePerWeek, toeMinusHeelPerWeek, wallLevelPerWeek, heelLevelPerWeek, interval } = effects;
      const level = from.wallLevel + wallLevelPerWeek[front ? 'front' : 'hind'] * weeks + horse.ownChange;
      return {
        toeAngle: about(from.toeAngle + toeAnglePerWeek[shod ? 'shod' : 'bare'] * weeks, interval.toeAngle),
        gap: about(from.gap + toeMinusHeelPerWeek * weeks, 0.3),
        toe: about(from.toe + (horse.growthPerMonth * since) / 30, interval.toeLength),
        wallLevel: about(level, interval.wallLevel),
        heelLevel: about(from.heelLevel + heelLevelPerWeek * weeks, interval.heelLevel),
      };
    },

    reading(now, day, moment, repeat) {
      const poor = draw.uniform() < 0.04;
      const hair = draw.uniform() < (build === 'heavy' ? 0.08 : 0.02);
      const blur = poor || hair ? 2 : 1;
      const read = (value: number, sd: number): number | '' =>
        draw.uniform() < 0.02 ? '' : Math.round(about(value, sd) * 2) / 2;
      const angle = (value: number): number | '' => read(value, blur * effects.reading.angle);
      const length = (value: number): number | '' => read(value, blur * effects.reading.length);
      const below = (value: number): number | '' => read(value, effects.reading.below);
      const wall = now.toe * Math.sin((now.toeAngle * Math.PI) / 180) * 0.82;
      const heel = now.toe * 0.46;
      const footLength = own.width / own.ratio;
      return {
        horse_id,
        date: isoDate(day),
        limb,
        moment,
        repeat,
        toe_angle_deg: angle(now.toeAngle + (repeat === 2 ? effects.observerToeAngle : 0)),
        heel_angle_deg: angle(now.toeAngle - now.gap),
        pastern_angle_deg: angle(pastern),
        shoulder_angle_deg: front && day === days[0] ? read(own.toeAngle - 1, 2) : '',
        toe_length_mm: length(now.toe),
        heel_length_mm: length(heel),
        medial_wall_mm: length(wall + now.wallLevel / 2),
        lateral_wall_mm: length(wall - now.wallLevel / 2),
        medial_wall_angle_deg: horse.slopes ? angle(own.medialSlope) : '',
        lateral_wall_angle_deg: horse.slopes ? angle(own.lateralSlope) : '',
        medial_heel_mm: length(heel * 0.75 + now.heelLevel / 2),
        lateral_heel_mm: length(heel * 0.75 - now.heelLevel / 2),
        foot_width_mm: below(own.width),
        foot_length_mm: below(footLength),
        frog_width_mm: below(footLength * 0.62 * own.frog),
        frog_length_mm: below(footLength * 0.62),
        heel_width_mm: below(own.width * own.heels),
        shod: shod ? 'yes' : 'no',
        observer: repeat === 1 ? 'Ida' : 'Tom',
        method: 'gauge and rule',
        view_quality: poor ? 'poor' : 'good',
        hair_over_hairline: hair ? 'yes' : 'no',
      };
    },
  };
}

/** A day number as an ISO date. */
export function isoDate(day: number): string {
  return new Date(day * 86_400_000).toISOString().slice(0, 10);
}
