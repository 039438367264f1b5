import { say } from '../words/say.ts';
/** The cautions as they stand, short, at the foot of every page; in full on the page of that name. */
export const cautions: readonly string[] = [
  say`Measure only a horse that stands quietly on level ground, with someone at its head. Never kneel or sit beside a foot.`,
  say`A nail or puncture in the sole or frog, sudden lameness, heat in a foot or a strong pulse: call the vet now. Don’t measure first.`,
  say`Changes of shape are for a qualified farrier together with the vet. Some feet are left as they are on purpose.`,
  say`The ranges are conventions with thin evidence. Most sound horses break one.`,
  say`These pages inform a conversation. They never say how to cut a foot, and they never judge a farrier.`,
];

/** The same in one line, at the foot of a sheet of paper. */
export const cautionOnPaper = say`A nail in the foot, sudden lameness, heat or a strong pulse: the vet, now. Ranges are conventions. Changes of shape are for farrier and vet.`;
