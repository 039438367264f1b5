import type { Columns } from '../sheet/column.ts';
import { say } from '../words/say.ts';
import { shownDay } from '../words/shownDay.ts';
import type { DueFoot, DueHorse, DueList } from './dueList.ts';
import { limbName } from './limbs.ts';

/** The list as a table: one row a horse, the yard's rule beside what the feet say. */
export function dueTable({ horses }: DueList): Columns {
  const days = (of: (due: DueHorse) => number) => ({
    kind: 'date' as const,
    values: Float64Array.from(horses, (due) => {
      const day = Math.round(of(due));
      return Number.isFinite(day) ? day : Number.NaN;
    }),
  });
  const afterWork = (of: (foot: DueFoot) => number) =>
    days(({ lastWork, foot }) => (foot === undefined ? Number.NaN : lastWork + of(foot)));
  const number = (of: (foot: DueFoot) => number) =>
    Float64Array.from(horses, ({ foot }) => (foot === undefined ? Number.NaN : of(foot)));
  return {
    horse_id: { values: horses.map(({ horse }) => horse) },
    last_work: days(({ lastWork }) => lastWork),
    rule_date: days(({ rule }) => rule),
    first_limb: { values: horses.map(({ foot }) => foot?.limb ?? '') },
    foot_date: afterWork(({ days }) => days),
    foot_date_earliest: afterWork(({ earliest }) => earliest),
    foot_date_latest: afterWork(({ latest }) => latest),
    intervals: { values: number(({ intervals }) => intervals) },
  };
}

/** The list as days for a calendar: the yard's rule for every horse, what the feet say in the description. */
export function dueEvents({ horses }: DueList) {
  return horses
    .filter(({ lastWork }) => !Number.isNaN(lastWork))
    .map(({ horse, lastWork, rule, foot }) => {
      const own = foot && Math.round(lastWork + foot.days);
      return {
        date: Math.round(rule),
        title: say`Farrier by the yard’s rule: ${horse}`,
        description: say`${
          own === undefined
            ? say`Too few measurements to say more.`
            : say`By its own pace the ${limbName(foot!.limb)} will have changed as much by ${shownDay(own)}.`
        } A horse that is lame or sore is seen by the vet now.`,
        key: `due ${horse} ${Math.round(lastWork)}`,
      };
    });
}
