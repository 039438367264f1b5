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

/** Milliseconds that all threads of this process have been at work. */
export function processorTime(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/**
 * Runs several pieces of work in turn, so that whatever else the machine does falls on all alike.
 * @param clock  in milliseconds; by the wall where left out
 * @returns the median time of each in milliseconds, the first round (warming up) left out
 */
export async function interleaved<Name extends string>(
  works: Readonly<Record<Name, Work>>,
  rounds = 9,
  clock: () => number = () => performance.now(),
): Promise<Record<Name, number>> {
  const names = Object.keys(works) as Name[];
  const times = new Map<Name, number[]>(names.map((name) => [name, []]));
  for (let round = 0; round <= rounds; round++) {
    for (const name of names) {
      const start = clock();
      await works[name]();
      if (round > 0) times.get(name)!.push(clock() - start);
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
