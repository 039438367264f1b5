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

/** A foot that was given a fault, and whether it changed, so that it should be found, or was always so. */
export interface Fault {
  readonly horse_id: string;
  readonly limb: string;
  readonly column: string;
  readonly what: string;
  readonly changed: boolean;
  readonly therapeutic?: boolean;
}

/** The faults of single feet, the same in every invented herd. */
export const faults: readonly Fault[] = [
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
    what: 'the heel runs under by 2 degrees more at each of the last five visits',
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
