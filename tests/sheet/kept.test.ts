import { expect, it } from 'vitest';
import { kept } from '../../lib/sheet/kept.ts';

it('makes what is asked for once, also where it is 0', () => {
  const known = new Map<string, number>();
  let made = 0;
  const next = () => made++;
  expect([kept(known, 'a', next), kept(known, 'a', next), kept(known, 'b', next)]).toEqual([0, 0, 1]);
});
