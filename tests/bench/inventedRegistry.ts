import type { Columns } from '../../lib/sheet/column.ts';
import { random } from '../../lib/stats/random.ts';

const limbs = ['LF', 'RF', 'LH', 'RH'];
const comparable = 'after to before';

/**
 * Invented tables of intervals, some horses at a time, the same at each run: four feet a horse, seen together, their levels read
 * to a tenth of a millimetre.
 */
export function* inventedRegistry(horses: number, visits: number, atOnce = 1000): Generator<Columns> {
  const { normal, below } = random(23);
  for (let first = 0; first < horses; first += atOnce) {
    const some = Math.min(atOnce, horses - first);
    const n = some * visits * limbs.length;
    const words = { horse_id: new Array<string>(n), limb: new Array<string>(n) };
    const numbers = () => new Float64Array(n);
    const [start, end, shod, before, after] = [numbers(), numbers(), numbers(), numbers(), numbers()];
    let row = 0;
    for (let h = first; h < first + some; h++) {
      const habit = 45 + 6 * normal();
      const horse = 0.8 * normal();
      const feet = limbs.map(() => 0.5 * normal());
      const iron = below(2);
      let day = 18_000 + below(365);
      for (let visit = 0; visit < visits; visit++) {
        const days = Math.max(14, Math.round(habit + 7 * normal()));
        const shared = 0.4 * normal();
        for (const [foot, limb] of limbs.entries()) {
          words.horse_id[row] = `horse ${h}`;
          words.limb[row] = limb;
          start[row] = day;
          end[row] = day + days;
          shod[row] = iron;
          before[row] = Math.round(20 * normal()) / 10;
          const change = 0.15 * ((days - habit) / 7) + horse + feet[foot] + shared + 1.2 * normal();
          after[row] = Math.round(10 * (before[row] + change)) / 10;
          row++;
        }
        day += days;
      }
    }
    const error = numbers().fill(1.5);
    yield {
      horse_id: { values: words.horse_id },
      limb: { values: words.limb },
      start_date: { kind: 'date', values: start },
      end_date: { kind: 'date', values: end },
      compared: { values: new Array<string>(n).fill(comparable) },
      shod: { kind: 'boolean', values: shod },
      wall_level_start_mm: { unit: 'mm', values: before, error },
      wall_level_end_mm: { unit: 'mm', values: after, error },
    };
  }
}
