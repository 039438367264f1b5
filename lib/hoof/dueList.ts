import { conditionalModes, mixedModel } from '../stats/index.ts';
import { counted } from '../words/counted.ts';
import { say } from '../words/say.ts';
import type { DueData } from './dueData.ts';
import { endOf, type Limb } from './limbs.ts';

/** One foot's pace and what follows from it. */
export interface DueFoot {
  readonly horse: string;
  readonly limb: Limb;
  readonly intervals: number;
  /** Change a week, drawn towards the herd's where the foot has few intervals; one standard error. */
  readonly perWeek: number;
  readonly error: number;
  /** Days after the work at which it will have changed as much as the herd's usual foot does by the rule; `Infinity`: never at this pace. */
  readonly days: number;
  readonly earliest: number;
  readonly latest: number;
}

/** A horse's foot that comes first, beside the yard's rule. Days since 1970-01-01. */
export interface DueHorse {
  readonly horse: string;
  readonly lastWork: number;
  /** By the yard's rule. */
  readonly rule: number;
  /** The foot that comes first; left out where none has an interval to go by. */
  readonly foot?: DueFoot;
}

export interface DueList {
  readonly horses: readonly DueHorse[];
  readonly feet: readonly DueFoot[];
  /** The herd's usual change a week, front and hind. */
  readonly usual: { readonly front: number; readonly hind: number };
  /** Why nothing but the rule can be said, where that is so. */
  readonly reason?: string;
}

/**
 * When each horse's next visit is worth booking: the day on which the first of its feet will have changed as much since
 * the work as this herd's usual foot of that end does in the weeks of the yard's own rule.
 * A foot's pace is its own, drawn towards the herd's the more, the fewer intervals it has (a mixed model with horse and
 * limb within horse); the range is where 1.96 standard errors of that pace would put the day, rather too wide, as what is
 * the horse's and what is the foot's are taken as unsure independently.
 * @param weeks  the yard's rule, above zero
 * @returns one entry a horse, the earliest first; a pace of none or of the other direction gives no day
 * @throws TypeError where `weeks` is not above zero
 * @source Bates, Mächler, Bolker & Walker 2015, J Stat Softw 67(1), for the drawing together
 */
export function dueList({ horse, limb, days, change, lastWork }: DueData, weeks: number): DueList {
  if (!(weeks > 0)) throw new TypeError(`The yard’s rule must be above zero weeks, found ${weeks}`);
  const rule = 7 * weeks;
  const { feet, usual, reason } = paces(horse, limb, days, change, rule);
  const horses = [...lastWork].map(([name, last]): DueHorse => {
    const own = feet.filter((foot) => foot.horse === name && Number.isFinite(foot.days));
    const foot = own.length === 0 ? undefined : own.reduce((first, each) => (each.days < first.days ? each : first));
    return { horse: name, lastWork: last, rule: last + rule, ...(foot && { foot }) };
  });
  const day = (due: DueHorse) => Math.min(due.rule, due.lastWork + (due.foot?.days ?? Number.POSITIVE_INFINITY));
  const last = (due: DueHorse) => (Number.isNaN(day(due)) ? Number.POSITIVE_INFINITY : day(due));
  horses.sort((a, b) => last(a) - last(b) || a.horse.localeCompare(b.horse));
  return { horses, feet, usual, ...(reason !== undefined && { reason }) };
}

/** With fewer feet or intervals, what is one foot's own can't be told from chance. */
const least = { feet: 4, intervals: 12 };

function paces(
  horse: readonly string[],
  limb: readonly string[],
  days: Float64Array,
  change: Float64Array,
  rule: number,
): Omit<DueList, 'horses'> {
  const perWeek = change.map((value, row) => (7 * value) / days[row]);
  const ends = limb.map((code) => endOf(code as Limb));
  const foot = horse.map((name, row) => JSON.stringify([name, limb[row]]));
  const counts = new Map<string, number>();
  for (const name of foot) counts.set(name, (counts.get(name) ?? 0) + 1);
  const nothing = { feet: [], usual: { front: Number.NaN, hind: Number.NaN } };
  if (counts.size < least.feet || foot.length < least.intervals || counts.size === foot.length)
    return {
      ...nothing,
      reason: say`${feetInWords(counts.size)} with ${intervalsInWords(foot.length)} measured from work to work are too few to tell one foot’s pace from another’s; ${least.feet} feet and ${least.intervals} intervals are needed, some foot with two`,
    };
  const both = new Set(ends).size === 2;
  const model = mixedModel(
    { perWeek, end: ends, horse, limb },
    { response: 'perWeek', fixed: both ? ['end'] : [], random: [{ by: ['horse'] }, { by: ['horse', 'limb'] }] },
  );
  const [first, hindMore] = model.fixed;
  const usual = both
    ? { front: first.estimate, hind: first.estimate + hindMore.estimate }
    : { front: first.estimate, hind: first.estimate };
  const modes = conditionalModes(model.fit).map(({ levels, modes, sds }) => ({
    place: new Map(levels.map((level, i) => [level, i])),
    modes,
    sds,
  }));
  const seen = new Set<string>();
  const feet: DueFoot[] = [];
  for (const [row, name] of foot.entries()) {
    if (seen.has(name)) continue;
    seen.add(name);
    const found = [horse[row], `${horse[row]}:${limb[row]}`].map((level, factor) => {
      const at = modes[factor].place.get(level)!;
      return { mode: modes[factor].modes[at][0], sd: modes[factor].sds[at][0] };
    });
    const pace = usual[ends[row]] + found[0].mode + found[1].mode;
    const error = Math.hypot(found[0].sd, found[1].sd, first.se);
    const until = (speed: number) =>
      Math.sign(speed) === Math.sign(usual[ends[row]]) && speed !== 0
        ? (rule * usual[ends[row]]) / speed
        : Number.POSITIVE_INFINITY;
    const direction = Math.sign(usual[ends[row]]);
    feet.push({
      horse: horse[row],
      limb: limb[row] as Limb,
      intervals: counts.get(name)!,
      perWeek: pace,
      error,
      days: until(pace),
      earliest: until(pace + 1.96 * direction * error),
      latest: until(pace - 1.96 * direction * error),
    });
  }
  return { feet, usual };
}

const feetInWords = (n: number) => counted(n, { one: say`${n} foot`, other: say`${n} feet` });
const intervalsInWords = (n: number) => counted(n, { one: say`${n} interval`, other: say`${n} intervals` });
