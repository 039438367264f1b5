import { random } from '../../lib/stats/random.ts';

/** Invented intervals: horses with four limbs each, their lengths around each horse's own habit. */
export function inventedIntervals(horses: number, visits: number) {
  const { normal } = random(11);
  const n = horses * 4 * visits;
  const columns = {
    horse: new Array<string>(n),
    limb: new Array<string>(n),
    within: new Float64Array(n),
    between: new Float64Array(n),
    y: new Float64Array(n),
  };
  let row = 0;
  for (let h = 0; h < horses; h++) {
    const habit = 42 + 6 * normal();
    const horse = 1.4 * normal();
    for (const limb of ['LF', 'RF', 'LH', 'RH']) {
      const foot = 0.9 * normal();
      for (let visit = 0; visit < visits; visit++, row++) {
        const within = 5 * normal();
        columns.horse[row] = `h${h}`;
        columns.limb[row] = limb;
        columns.within[row] = within;
        columns.between[row] = habit;
        columns.y[row] = 0.05 * within + 0.02 * habit + horse + foot + 1.5 * normal();
      }
    }
  }
  return columns;
}

/** A horse, and a foot of it, each with a level of its own. */
export const nestedModel = {
  response: 'y',
  fixed: ['within', 'between', 'limb'],
  random: [{ by: ['horse'] }, { by: ['horse', 'limb'] }],
};
