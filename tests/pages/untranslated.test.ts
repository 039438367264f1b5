import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { bibliography } from '../../lib/hoof/bibliography.ts';
import { measures } from '../../lib/hoof/measures/index.ts';
import { builtInRanges } from '../../lib/hoof/ranges.ts';
import { rangesToColumns } from '../../lib/hoof/rangeTable.ts';
import { pages } from '../../notebooks/index.ts';
import { notebookOf } from './browser.ts';
import { inGreekLetters } from './inGreekLetters.ts';

const site = notebookOf({ words: inGreekLetters() });

/** What stands on pages and is nobody's to translate: sources, formulas, and what tables hold, as a file of ranges does. */
const oneLine = (text: string) => text.replace(/\s+/g, ' ');
const texts = [...Object.values(bibliography).map(({ text }) => text), ...measures.map(({ formula }) => formula)].map(
  oneLine,
);
const tables = ['feet', 'horses', 'visits'].map((table) =>
  readFileSync(new URL(`../../data/${table}.csv`, import.meta.url), 'utf8'),
);
const ranges = Object.entries(rangesToColumns(builtInRanges)).flatMap(([name, { values }]) => [name, ...values]);
const wordsOf = (text: string) => text.match(/[A-Za-z]{2,}/g) ?? [];
const own = ['Evenhoof', 'English', 'Deutsch', 'mm', 'cm', 'kg', 'lb', 'in', 'csv', 'px'];
const known = new Set([...wordsOf([...tables, ...ranges].join(' ')), ...own]);

test.each(pages.map(({ name }) => name))(
  'no word of the page %s is left that could not be translated',
  async (name) => {
    const { page } = await site.open(`${name}.html`, { viewport: { width: 1280, height: 900 } });
    const found = await page.evaluate(async () => {
      for (const details of document.querySelectorAll('details')) details.open = true;
      await new Promise((resolve) => setTimeout(resolve, 300));
      const said: string[] = [document.title];
      const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      for (let node = walk.nextNode(); node; node = walk.nextNode())
        if (!node.parentElement!.closest('script, style, noscript, code, pre, [lang]:not(html)'))
          said.push(node.textContent!);
      const attributes = ['aria-label', 'title', 'alt', 'placeholder', 'aria-description'];
      for (const element of document.querySelectorAll(attributes.map((name) => `[${name}]`).join(', ')))
        for (const name of attributes) said.push(element.getAttribute(name) ?? '');
      return said;
    });
    const left = found.flatMap((said) => {
      const rest = texts.reduce((others, text) => others.replaceAll(text, ' '), oneLine(said));
      const strange = wordsOf(rest.replace(/\S*[_.]\S*[a-z]\S*/g, ' ')).filter((word) => !known.has(word));
      return strange.length > 0 ? [`${strange.join(', ')} in: ${said.slice(0, 120)}`] : [];
    });
    expect([...new Set(left)]).toEqual([]);
  },
);
