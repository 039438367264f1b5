import { parseHTML } from 'linkedom';
import { expect, test } from 'vitest';
import type { Page } from '../../../lib/page/page.ts';
import { htmlPage } from '../../../lib/page/render/html.tsx';
import { smallSheet } from '../everyBlock.ts';

test('in a file nothing can be placed, nothing is fetched for it, and it says where it can be', async () => {
  let fetched = false;
  const page: Page<string> = {
    name: 'picture',
    title: 'Picture',
    question: 'Where?',
    blocks: () => [
      {
        ...{ kind: 'picture', name: 'one', title: 'The picture', table: 'feet', sheet: smallSheet(), photo: 'a' },
        ...{ horses: [], limbs: [], moments: [], inAFile: 'Points are placed in the notebook.' },
        work: async () => {
          fetched = true;
          throw new Error('not in a file');
        },
      },
    ],
  };
  const { document } = parseHTML(await htmlPage(page, { herd: '' }));
  expect(document.querySelector('h2')?.textContent).toBe('The picture');
  expect(document.querySelector('main')?.textContent).toContain('Points are placed in the notebook.');
  expect(document.querySelectorAll('canvas, input, button').length).toBe(0);
  expect(fetched).toBe(false);
});
