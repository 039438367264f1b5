import { expect, test } from 'vitest';
import { blockKeys } from '../../lib/page/blockKeys.ts';
import type { Block } from '../../lib/page/blocks.ts';

const control: Block = { kind: 'control', name: 'horse', label: 'Horse', input: 'text', value: '' };
const prose: Block = { kind: 'prose', text: 'a' };

test('a control keeps its key when blocks come and go around it', () => {
  const [key] = blockKeys([control]);
  expect(blockKeys([prose, control, prose])[1]).toBe(key);
});

test('keys are unique where names are not', () => {
  const keys = blockKeys([prose, prose, control, control, { kind: 'heading', level: 2, text: 'prose 1' }]);
  expect(new Set(keys).size).toBe(keys.length);
});
