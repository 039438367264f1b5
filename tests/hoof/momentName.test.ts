import { expect, test } from 'vitest';
import { momentName } from '../../lib/hoof/momentName.ts';

test('a moment is said in one word, and one of the reader’s own as it stands', () => {
  expect(['before', 'after', 'between', 'toString', 'on grass'].map(momentName)).toEqual([
    'before',
    'after',
    'between',
    'toString',
    'on grass',
  ]);
});
