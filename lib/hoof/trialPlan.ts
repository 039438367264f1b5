import type { Columns } from '../sheet/column.ts';
import { isoFromDays } from '../sheet/days.ts';
import { random } from '../stats/index.ts';
import { say } from '../words/say.ts';

export interface TrialRules {
  readonly horses: readonly string[];
  /** The day of the visit from which the first interval counts, days since 1970-01-01. */
  readonly start: number;
  /** How many intervals each horse gets, 2 or more. */
  readonly intervals: number;
  /** Weeks of the shorter and of the longer interval. */
  readonly shorter: number;
  readonly longer: number;
  /** What the user's farrier and vet accept, in weeks: nothing is ever planned outside. */
  readonly least: number;
  readonly most: number;
  readonly seed: number;
}

/** One interval of one horse: the farrier comes on `date`. */
export interface PlannedVisit {
  readonly horse: string;
  /** 1 for the first interval. */
  readonly interval: number;
  readonly which: 'shorter' | 'longer';
  readonly weeks: number;
  /** Days since 1970-01-01. */
  readonly date: number;
}

/** No interval beyond this is ever planned, whatever anyone types: ten weeks, common practice, no source. */
export const longestEver = 10;

/**
 * A plan of shorter and longer intervals by lot. Each horse's intervals come in pairs of a shorter and a longer one, in an
 * order by lot, so that both fall in every season alike; and in every pair half of the horses have the shorter one first, so
 * that at any time both are under way.
 * @returns the visits horse by horse in order of date; or a sentence without a full stop that says why there is no such plan
 * @source Altman & Bland 1999, BMJ 319:703–704, for lots in blocks
 */
export function trialPlan(rules: TrialRules): readonly PlannedVisit[] | string {
  const refusal = refuse(rules);
  if (refusal !== undefined) return refusal;
  const { horses, start, intervals, shorter, longer, seed } = rules;
  const { below } = random(seed);
  const orders = horses.map(() => [] as PlannedVisit['which'][]);
  for (let pair = 0; 2 * pair < intervals; pair++) {
    const lots = shuffled(horses.length, below);
    const turn = below(2);
    for (const [place, horse] of lots.entries()) {
      const shortFirst = (place + turn) % 2 === 0;
      orders[horse].push(...(shortFirst ? (['shorter', 'longer'] as const) : (['longer', 'shorter'] as const)));
    }
  }
  return horses.flatMap((horse, h) => {
    let date = start;
    return orders[h].slice(0, intervals).map((which, i) => {
      const weeks = which === 'shorter' ? shorter : longer;
      date += Math.round(7 * weeks);
      return { horse, interval: i + 1, which, weeks, date };
    });
  });
}

function refuse({ horses, intervals, shorter, longer, least, most }: TrialRules): string | undefined {
  if (horses.length === 0) return say`A plan needs a horse`;
  if (!(intervals >= 2)) return say`A plan needs two intervals a horse, one shorter and one longer`;
  if (!(shorter < longer))
    return say`The shorter interval (${shorter} weeks) must be shorter than the longer one (${longer} weeks)`;
  if (!(shorter >= least))
    return say`An interval of ${shorter} weeks is below the ${least} weeks that farrier and vet accept`;
  if (!(longer <= most))
    return say`An interval of ${longer} weeks passes the ${most} weeks that farrier and vet accept`;
  if (!(longer <= longestEver))
    return say`An interval of ${longer} weeks passes ${longestEver} weeks, and nothing longer is planned here`;
  return undefined;
}

/** The numbers below n in an order by lot (Fisher & Yates). */
function shuffled(n: number, below: (n: number) => number): number[] {
  const order = Array.from({ length: n }, (_, i) => i);
  for (let i = n - 1; i > 0; i--) {
    const j = below(i + 1);
    [order[i], order[j]] = [order[j], order[i]];
  }
  return order;
}

/** The plan as a table: one row an interval of a horse. */
export function planTable(plan: readonly PlannedVisit[]): Columns {
  return {
    horse_id: { values: plan.map(({ horse }) => horse) },
    interval: { values: Float64Array.from(plan, ({ interval }) => interval) },
    which: { values: plan.map(({ which }) => which) },
    interval_weeks: { unit: 'wk', values: Float64Array.from(plan, ({ weeks }) => weeks) },
    date: { kind: 'date', values: Float64Array.from(plan, ({ date }) => date) },
  };
}

/** The plan as days for a calendar: measure before and after the work, every time. */
export function planEvents(plan: readonly PlannedVisit[], seed: number) {
  return plan.map(({ horse, interval, which, weeks, date }) => ({
    date,
    title: say`Farrier: ${horse}`,
    description: say`After a ${which} interval of ${weeks} weeks (number ${interval}). Measure before the work and after it, twice each. If the horse is lame or a foot looks wrong, call the vet and leave the plan.`,
    key: `plan ${seed} ${horse} ${interval} ${isoFromDays(date)}`,
  }));
}
