import { describe, expect, test } from 'vitest';
import { pages } from '../../notebooks/index.ts';
import { languages, wordsOf } from '../../scripts/words/languages.ts';
import { drawn, notebook, overflow, shot } from './browser.ts';

const site = notebook();

/** Sentences that are other in the language: none of them may be left on a page. */
const english = (language: string) =>
  Object.entries(wordsOf(language))
    .filter(([key, text]) => key !== text && !key.includes('{') && key.trim().split(' ').length >= 3)
    .map(([key]) => key.trim());

describe.each(languages())('the notebook in %s', (language) => {
  const sentences = english(language);
  const words = wordsOf(language);

  test.each(pages.map(({ name, title }) => ({ name, title })))(
    'says the page $name in its own words, and fits a narrow window',
    async ({ name, title }) => {
      const { page, wrongs } = await site.open(`${language}/${name}.html`, { viewport: { width: 360, height: 800 } });
      expect(await page.getAttribute('html', 'lang')).toBe(language);
      expect(await page.textContent('h1')).toBe(words[title]);
      const text = await page.evaluate(() => {
        const labels = [...document.querySelectorAll('[aria-label], [title]')].map(
          (element) => `${element.getAttribute('aria-label') ?? ''}\n${element.getAttribute('title') ?? ''}`,
        );
        return `${document.body.textContent}\n${labels.join('\n')}`;
      });
      expect(sentences.filter((sentence) => text.includes(sentence))).toEqual([]);
      expect(await overflow(page)).toEqual({ over: 0, out: [] });
      await shot(page, `${language}-${name}`);
      expect(wrongs).toEqual([]);
    },
  );

  test('is one step from the same page in English, and back', async () => {
    const { page } = await site.open('level.html');
    await page.click(`header a[hreflang="${language}"]`);
    await drawn(page);
    expect(page.url()).toBe(`${site.address}${language}/level.html`);
    await page.click('header a[hreflang="en"]');
    await drawn(page);
    expect(page.url()).toBe(`${site.address}level.html`);
  });
});

test('German writes a decimal comma and days before months', async () => {
  const { page } = await site.open('de/herd.html');
  const text = await page.textContent('#blocks');
  expect(text).toMatch(/\d,\d ± \d,\d mm/);
  expect(text).toMatch(/\b\d{2}\.\d{2}\.20\d{2}\b/);
  expect(text).not.toMatch(/\d\.\d mm/);
});

test('a cell shows and takes a decimal comma, and a day before its month, in German', async () => {
  const { page } = await site.open('de/record.html');
  const cell = page
    .locator('[role="gridcell"]')
    .filter({ hasText: /^\d+,[1-9]/ })
    .first();
  await cell.dblclick();
  const field = page.locator('[role="grid"] input');
  expect(await field.inputValue()).toMatch(/^\d+,\d+$/);
  await field.fill('51,5');
  await field.press('Enter');
  await page.getByText('51,5').first().waitFor();
  const day = page
    .locator('[role="gridcell"]')
    .filter({ hasText: /^\d{2}\.\d{2}\.20\d{2}$/ })
    .first();
  await day.dblclick();
  await field.fill('03.04.2026');
  await field.press('Enter');
  await page.getByText('03.04.2026').first().waitFor();
  expect(await page.locator('[role="gridcell"] .unread-text').count()).toBe(0);
});
