/** One comparison: medians of the same work by us and by another, in milliseconds. */
export interface BenchRow {
  readonly what: string;
  readonly peer: string;
  readonly ours: number;
  readonly theirs: number;
  /** What we hold ourselves to, in words: `at most 1.5 × by hand`. */
  readonly goal?: string;
}

export type Work = () => unknown | Promise<unknown>;

/**
 * Runs several pieces of work in turn, so that whatever else the machine does falls on all alike.
 * @returns the median time of each in milliseconds, the first round (warming up) left out
 */
export async function interleaved<Name extends string>(
  works: Readonly<Record<Name, Work>>,
  rounds = 9,
): Promise<Record<Name, number>> {
  const names = Object.keys(works) as Name[];
  const times = new Map<Name, number[]>(names.map((name) => [name, []]));
  for (let round = 0; round <= rounds; round++) {
    for (const name of names) {
      const start = performance.now();
      await works[name]();
      if (round > 0) times.get(name)!.push(performance.now() - start);
    }
  }
  return Object.fromEntries(names.map((name) => [name, median(times.get(name)!)])) as Record<Name, number>;
}

function median(times: number[]): number {
  times.sort((a, b) => a - b);
  return times[times.length >> 1];
}

/** A row for each peer of `ours`. */
export function against<Name extends string>(
  what: string,
  medians: Readonly<Record<Name | 'ours', number>>,
  goals: Partial<Record<Name, string>> = {},
): BenchRow[] {
  return (Object.keys(medians) as Name[])
    .filter((peer) => peer !== 'ours')
    .map((peer) => ({ what, peer, ours: medians.ours, theirs: medians[peer], goal: goals[peer] }));
}
