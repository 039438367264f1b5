import { describe, expect, test } from 'vitest';
import { page, words } from '../../notebooks/firstSheet.ts';
import { gathered } from '../../scripts/words/gather.ts';

const said = gathered();
const own = 'notebooks/firstSheet.ts';
const texts = page
  .blocks({ herd: {} as never, controls: {}, units: { length: 'mm', mass: 'kg' } })
  .flatMap((block) => (block.kind === 'prose' ? block.text : []));

describe('the first steps', () => {
  test.each(Object.values(words))('name “%s” as the notebook itself says it', (word) => {
    expect((said.get(word)?.files ?? []).filter((file) => file !== own)).not.toEqual([]);
    expect(texts.join('\n')).toContain(`“${word}”`);
  });

  test('put nothing else in quotation marks but what stands in the list to try', () => {
    const quoted = [...texts.join('\n').matchAll(/“([^”]+)”/g)].map(([, word]) => word);
    const known: readonly string[] = [...Object.values(words), 'NF angle', 'about 50'];
    expect(quoted.filter((word) => !known.includes(word))).toEqual([]);
  });
});
