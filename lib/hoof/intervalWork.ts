import { benjaminiHochberg } from '../stats/index.ts';
import type { IntervalData } from './intervalData.ts';
import {
  type IntervalAnswer,
  type IntervalEstimate,
  type IntervalOptions,
  intervalEffect,
  intervalModel,
  type Progress,
} from './intervalModel.ts';

export interface IntervalWork {
  readonly data: IntervalData;
  /** Other outcomes that are asked about at once. */
  readonly others: readonly IntervalData[];
  readonly options: IntervalOptions;
}

/** One of several outcomes: its effect of a week, and the p that allows for how many were asked. */
export type OtherEffect = Pick<IntervalData, 'outcome' | 'unit' | 'size'> &
  (
    | { readonly kind: 'fitted'; readonly within: IntervalEstimate; readonly adjustedP: number }
    | { readonly kind: 'too little'; readonly reason: string }
  );

export interface IntervalWorkDone {
  readonly answer: IntervalAnswer;
  /** The outcome itself first, where others were asked about; else none. */
  readonly several: readonly OtherEffect[];
}

/** The work behind the question whether a longer interval costs balance. */
export function intervalWork({ data, others, options }: IntervalWork, progress: Progress): IntervalWorkDone {
  const answer = intervalModel(data, options, progress);
  if (others.length === 0) return { answer, several: [] };
  const asked = [data, ...others];
  const effects = asked.map((each) => intervalEffect(each, options));
  // By outcome: those without an effect have no p, and don't count as asked.
  const adjusted = benjaminiHochberg(effects.map((effect) => ('p' in effect ? effect.p : Number.NaN)));
  const several = effects.map((effect, i): OtherEffect => {
    const { outcome, unit, size } = asked[i];
    if ('reason' in effect) return { outcome, unit, size, kind: 'too little', reason: effect.reason };
    return { outcome, unit, size, kind: 'fitted', within: effect, adjustedP: adjusted[i] };
  });
  return { answer, several };
}
