import type { IntervalData } from '../../lib/hoof/intervalData.ts';
import { random } from '../../lib/stats/random.ts';

export interface Invented {
  readonly seed?: number;
  readonly horses?: number;
  readonly visits?: number;
  /** mm a week within a horse, and between horses. */
  readonly within?: number;
  readonly between?: number;
  readonly noise?: number;
  readonly limbs?: readonly string[];
  readonly farriers?: number;
}

/** Intervals of an invented yard, as `intervalData` gives them. */
export function intervalRows({
  seed = 1,
  horses = 8,
  visits = 6,
  within = 0.5,
  between = 0,
  noise = 1,
  limbs = ['LF', 'RF'],
  farriers = 2,
}: Invented = {}): IntervalData {
  const { normal, uniform, below } = random(seed);
  const words = () => [] as string[];
  const numbers = () => [] as number[];
  const rows = { horse: words(), limb: words(), shod: words(), farrier: words(), season: words() };
  const values = { start: numbers(), end: numbers(), change: numbers(), atStart: numbers() };
  for (let h = 0; h < horses; h++) {
    const usual = 6 + 2 * uniform();
    let day = 20_500 + below(30);
    for (let visit = 0; visit < visits; visit++) {
      const weeks = usual + 3 * (uniform() - 0.5);
      const end = day + Math.round(7 * weeks);
      for (const limb of limbs) {
        rows.horse.push(`h${h}`);
        rows.limb.push(limb);
        rows.shod.push(h % 2 === 0 ? 'shod' : 'bare');
        rows.farrier.push(`farrier ${below(farriers)}`);
        rows.season.push(visit % 2 === 0 ? 'Jan–Mar' : 'Apr–Jun');
        values.start.push(day);
        values.end.push(end);
        values.change.push(within * ((end - day) / 7 - usual) + between * usual + noise * normal());
        values.atStart.push(Math.abs(normal()));
      }
      day = end;
    }
  }
  const numbersOf = (name: keyof typeof values) => Float64Array.from(values[name]);
  return {
    outcome: 'wall_level_mm',
    unit: 'mm',
    size: true,
    ...rows,
    start: numbersOf('start'),
    end: numbersOf('end'),
    change: numbersOf('change'),
    atStart: numbersOf('atStart'),
    changeError: new Float64Array(values.change.length).fill(1.2),
    compared: 'after to before',
    leftOut: { unmeasured: 0, therapeutic: 0, otherMoments: 0 },
  };
}

/** The same rows with some of their columns put in place of the old. */
export function changed(data: IntervalData, columns: Partial<IntervalData>): IntervalData {
  return { ...data, ...columns };
}
