import type { Relation } from '../sheet/relation.ts';
import { say } from '../words/say.ts';

/** Rows that belong to one moment of one horse: the same visit, before or after the work, the same repeat. */
const sameMoment = { match: ['horse_id', 'date'], optional: ['moment', 'repeat'] } as const;

/**
 * The other feet that a formula over `feet` may look at. A foot has no partner, and the result is missing, where that
 * other foot was not measured; and where the words lead to no other foot: `front_of` a front foot, `hind_of` a hind foot.
 */
export const footRelations: readonly Relation[] = [
  {
    name: 'opposite',
    words: say`the other side's`,
    ...sameMoment,
    swap: { limb: { LF: 'RF', RF: 'LF', LH: 'RH', RH: 'LH' } },
  },
  { name: 'front_of', words: say`the same side's front`, ...sameMoment, swap: { limb: { LH: 'LF', RH: 'RF' } } },
  { name: 'hind_of', words: say`the same side's hind`, ...sameMoment, swap: { limb: { LF: 'LH', RF: 'RH' } } },
  {
    name: 'previous',
    words: say`the last visit's`,
    match: ['horse_id', 'limb'],
    optional: ['moment', 'repeat'],
    before: 'date',
  },
];
