import { parseHTML } from 'linkedom';
import { expect, it } from 'vitest';
import { herd, readTable } from '../../lib/index.ts';
import { htmlPage } from '../../lib/report.ts';
import { pages } from '../../notebooks/index.ts';
import { hostileFeet } from '../hostileNames.ts';

const made = herd({ feet: readTable(hostileFeet(), { file: 'feet.csv' }).columns });

it.each(pages)('$name as a file says hostile names and runs nothing of them', async (page) => {
  const html = await htmlPage(page, { herd: made });
  const { document } = parseHTML(html);
  expect(document.querySelectorAll('script, iframe, object, img[src="x"]').length).toBe(0);
  for (const element of document.querySelectorAll('*'))
    for (const { name, value } of element.attributes) {
      expect(name).not.toMatch(/^on/);
      if (name === 'href') expect(value).not.toMatch(/^\s*javascript/i);
    }
  // What looked like a tag and was let through would be gone from the words.
  if (document.body.textContent.includes('taken = 1'))
    expect(document.body.textContent).toContain('<script>globalThis.taken = 1</script>');
});
