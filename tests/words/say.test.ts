import { expect, test } from 'vitest';
import { say } from '../../lib/words/say.ts';

test('English is said as it is written, with what is filled in', () => {
  expect(say`${3} feet of ${'Ada'} measured`).toBe('3 feet of Ada measured');
  expect(say`a “quoted”\nline`).toBe('a “quoted”\nline');
});
