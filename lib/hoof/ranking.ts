import { group } from 'd3-array';
import type { NumberColumn } from '../sheet/column.ts';
import type { Groups, Table } from '../sheet/table.ts';
import type { Finding, Ranking } from './finding.ts';
import { type FootFacts, footFacts } from './footFacts.ts';
import { history } from './history.ts';
import { latestOccasions } from './latest.ts';
import { sideOf } from './limbs.ts';
import type { Measure, Range } from './measure.ts';
import { measures } from './measures/index.ts';
import { oppositeRows } from './oppositeRows.ts';
import { beyond, type Ranges, rangeFor } from './ranges.ts';
import { against, type Readings, type Usual, usualOf } from './usual.ts';
import { errorsBeyond, verdict } from './verdict.ts';

/** From how many robust standard deviations a value counts as unusual for the herd. Common practice, no source. */
export const unusual = 2;
/** The same for a foot against its own past; larger, because each foot is asked about a dozen measures. */
export const unusualForItself = 2.5;

/**
 * What is worth raising, foot by foot: not broken rules, which nearly every foot has, but what is unusual for this herd
 * and for this foot, lies further from the herd than before, and changed by more than the error of measuring.
 * @param occasions  one row a foot, day and moment, with the computed columns; see `herd().occasions`
 * @returns at most one finding a foot, the most unusual first; the foot's others stand in its `also`. A pair's
 *   difference is told of the left foot. Therapeutic feet are apart and never ranked. The farrier plays no part.
 * @source median and MAD: Hampel 1974, JASA 69:383–393; the rule itself is ours
 */
export function ranking(occasions: Table, ranges: Ranges, ranked: readonly Measure[] = measures): Ranking {
  const feet = feetOf(occasions);
  const found = ranked
    .filter(({ ranked, table, name }) => ranked && table === 'feet' && occasions.names.includes(name))
    .flatMap((measure) => findingsOf(measure, feet, ranges));
  const order = { raise: 0, 'on purpose': 0, unsure: 1 };
  const byFoot = group(found, ({ row }) => feet.readings.feet.codes[row]);
  const leading = Array.from(byFoot.values(), (list) => {
    const [first, ...also] = list.sort((a, b) => order[a.state] - order[b.state] || b.score - a.score);
    return { ...first, also };
  });
  leading.sort((a, b) => b.score - a.score);
  const of = (state: Finding['state']): Finding[] => leading.filter((finding) => finding.state === state);
  return {
    raise: of('raise'),
    unsure: of('unsure'),
    onPurpose: of('on purpose'),
    feet: feet.latest.length,
    once: feet.latest.filter(({ row }) => feet.like(row).length === 1).length,
  };
}

interface Feet {
  readonly occasions: Table;
  /** The row of each foot's latest occasion, and what is known of the foot there. */
  readonly latest: readonly { readonly row: number; readonly foot: FootFacts }[];
  /** Rows of the same foot at the same moment. */
  readonly like: (row: number) => readonly number[];
  readonly readings: Readings;
}

function feetOf(occasions: Table): Feet {
  const like = occasions.groups(['horse_id', 'limb', 'moment']);
  const rowsOfEach = rowsOfGroups(like);
  const facts = footFacts(occasions);
  const therapeutic = occasions.column('therapeutic').values as Float64Array;
  return {
    occasions,
    latest: latestOccasions(occasions).map((row) => ({ row, foot: facts(row) })),
    like: (row) => rowsOfEach[like.codes[row]],
    readings: { rowsOfEach, feet: occasions.groups(['horse_id', 'limb']), leaveOut: (row) => therapeutic[row] === 1 },
  };
}

function rowsOfGroups({ codes, count }: Groups): number[][] {
  const rowsOfEach: number[][] = Array.from({ length: count }, () => []);
  codes.forEach((code, row) => {
    rowsOfEach[code].push(row);
  });
  return rowsOfEach;
}

function findingsOf(measure: Measure, { occasions, latest, like, readings }: Feet, ranges: Ranges): Finding[] {
  const { values, error } = occasions.column(measure.name) as NumberColumn;
  const date = occasions.column('date').values as Float64Array;
  const sameMoment = occasions.groups(['end', 'moment']);
  const anyMoment = occasions.groups(['end']);
  const usual = usualOf(values, sameMoment, readings);
  let ofAnyMoment: readonly Usual[] | undefined;
  const usualAnyMoment = (row: number): Usual => {
    ofAnyMoment ??= usualOf(values, anyMoment, readings);
    return ofAnyMoment[anyMoment.codes[row]];
  };
  const opposite = oppositeRows(occasions);
  const at = (row: number) => ({ value: values[row], error: error?.[row] ?? Number.NaN, date: date[row] });
  const found: Finding[] = [];
  for (const { row, foot } of latest) {
    const { value, error } = at(row);
    if (Number.isNaN(value) || (measure.view === 'pair' && sideOf(foot.limb) === 'right')) continue;
    const expected = usual[sameMoment.codes[row]];
    const herd = against(value, expected, false) ?? against(value, usualAnyMoment(row), true);
    const earlier = like(row)
      .filter((other) => date[other] < date[row] && !Number.isNaN(values[other]))
      .map(at);
    const own = history(value, error, earlier, expected.ownSpread);
    const range = rangeFor(ranges.get(measure.name) ?? [], foot);
    if (range !== undefined && leavesTheOnlyLimit(range, value, own?.change)) continue;
    const judged = judge(herd, own, error, foot.readings);
    if (judged === undefined) continue;
    const other = measure.view === 'pair' || opposite[row] < 0 ? undefined : values[opposite[row]];
    found.push({
      ...judged,
      state: foot.therapeutic ? 'on purpose' : judged.state,
      foot,
      row,
      measure,
      value,
      error,
      herd,
      own,
      other: Number.isNaN(other) ? undefined : other,
      verdict: verdict(value, error, range, foot.readings),
      also: [],
    });
  }
  return found;
}

/** Inside a range with one limit, and moving away from it: nothing to raise. */
function leavesTheOnlyLimit(range: Range, value: number, change: number | undefined): boolean {
  if (beyond(range, value) !== 0 || (range.atLeast !== undefined) === (range.atMost !== undefined)) return false;
  return change === undefined || (range.atMost !== undefined ? change < 0 : change > 0);
}

/** Whether the two together are worth a word; `undefined` where they are not. */
function judge(
  herd: Finding['herd'],
  own: Finding['own'],
  se: number,
  readings: number,
): Pick<Finding, 'state' | 'score' | 'repeats'> | undefined {
  const fromHerd = herd === undefined ? Number.NaN : Math.abs(herd.distance);
  if (own === undefined) return fromHerd >= 1.5 * unusual ? { state: 'unsure', score: fromHerd } : undefined;
  if (fromHerd < unusual || (herd !== undefined && Math.sign(herd.distance) !== Math.sign(own.change)))
    return undefined;
  const ownDistance = Math.abs(own.distance);
  const score = herd === undefined ? ownDistance : Math.sqrt(fromHerd * ownDistance);
  // That distance is counted in the change's own error at least, so a known error is passed as well.
  if (ownDistance >= unusualForItself) return { state: Number.isNaN(own.changeError) ? 'unsure' : 'raise', score };
  const size = Math.abs(own.change);
  if (herd === undefined || !(size > own.changeError && size <= errorsBeyond * own.changeError)) return undefined;
  // Only this visit's readings can still be repeated.
  const past = own.changeError ** 2 - se ** 2;
  const room = (size / errorsBeyond) ** 2 - past;
  const repeats = room > 0 ? Math.floor((readings * se ** 2) / room) + 1 : undefined;
  return { state: 'unsure', score, repeats };
}
