import AxeBuilder from '@axe-core/playwright';
import { describe, expect, test } from 'vitest';
import { pages } from '../../notebooks/index.ts';
import { axeRules, notebook, type Opened, overflow, paperFile, shot } from './browser.ts';

const site = notebook();
const widths = [360, 768, 1280];

/** Scrolls through the page, so that what is drawn when it comes near is drawn. */
async function scrolledThrough({ page }: Opened): Promise<void> {
  await page.evaluate(async () => {
    for (let y = 0; y < document.body.scrollHeight; y += 400) {
      scrollTo(0, y);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    scrollTo(0, 0);
  });
  const linked = await page.locator('figure.linked').count();
  for (let index = 0; index < linked; index++)
    await page.locator('figure.linked').nth(index).locator('svg').first().waitFor();
}

describe.each(pages.map(({ name, title, question }) => ({ name, title, question })))(
  '$title',
  ({ name, title, question }) => {
    test('opens by its address, says its question, and runs without an error, a violation or a foreign request, clean by axe', async () => {
      const opened = await site.open(`${name}.html`);
      await scrolledThrough(opened);
      const { page, wrongs } = opened;
      expect(await page.title()).toBe(`${title} · Evenhoof`);
      expect(await page.textContent('h1')).toBe(title);
      expect(await page.textContent('.question')).toBe(question);
      expect(await page.textContent('.whose')).toContain('Invented demo herd');
      expect(await page.locator('.trouble').count()).toBe(0);
      expect(wrongs).toEqual([]);
      const { violations } = await new AxeBuilder({ page: opened.page }).withTags(axeRules).analyze();
      expect(
        violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 200)).join('\n')}`),
      ).toEqual([]);
    });

    test.each(widths)('fits a window %i px wide, and its controls are large enough to touch', async (width) => {
      const touch = width < 1000;
      const opened = await site.open(`${name}.html`, {
        viewport: { width, height: 800 },
        hasTouch: touch,
        isMobile: touch,
      });
      await scrolledThrough(opened);
      expect(await overflow(opened.page)).toEqual({ over: 0, out: [] });
      await shot(opened.page, `${name}-${width}`);
      if (!touch) return;
      const small = await opened.page.evaluate(() => {
        const parts = document.querySelectorAll('button, select, summary, nav a, .chooser, input:not([type=file])');
        const size = (part: Element) =>
          part.matches('input') && part.closest('label') ? part.closest('label')! : part;
        return [...parts]
          .filter((part) => part.checkVisibility())
          .filter((part) => size(part).getBoundingClientRect().height < 43.5)
          .map((part) => part.outerHTML.slice(0, 120));
      });
      expect(small).toEqual([]);
    });

    test('every control is reached with the Tab key, and the focus can be seen', async () => {
      const { page } = await site.open(`${name}.html`, { viewport: { width: 1280, height: 800 } });
      await page.evaluate(() => {
        // Of the answers to one question only the one that stands is a stop.
        const wanted = 'a[href], button, select, input:not([type=radio]:not(:checked)), summary, [tabindex="0"]';
        for (const element of document.querySelectorAll(wanted))
          if (element.checkVisibility() && !(element as HTMLButtonElement).disabled) element.classList.add('unreached');
      });
      const stops = await page.locator('.unreached').count();
      const unseen: string[] = [];
      for (let stop = 0; stop < stops; stop++) {
        await page.keyboard.press('Tab');
        const trouble = await page.evaluate(() => {
          const element = document.activeElement!;
          element.classList.remove('unreached');
          const { outlineStyle, outlineWidth } = getComputedStyle(
            element.matches('.chooser input') ? element.parentElement! : element,
          );
          return outlineStyle === 'none' || Number.parseFloat(outlineWidth) < 2 ? element.outerHTML.slice(0, 120) : '';
        });
        if (trouble) unseen.push(trouble);
      }
      expect(unseen).toEqual([]);
      expect(
        await page.locator('.unreached').evaluateAll((left) => left.map(({ outerHTML }) => outerHTML.slice(0, 120))),
      ).toEqual([]);
    });

    test.each(['A4', 'Letter'])(
      'prints on %s with its title, its words and its cautions, and without what only a screen can use',
      async (format) => {
        const opened = await site.open(`${name}.html`, { viewport: { width: 680, height: 900 } });
        await scrolledThrough(opened);
        const { page } = opened;
        await page.emulateMedia({ media: 'print' });
        expect(await overflow(opened.page)).toEqual({ over: 0, out: [] });
        expect(await page.locator('h1').isVisible()).toBe(true);
        expect(await page.locator('.cautions:visible').count()).toBeGreaterThan(0);
        expect(await page.getByText('Invented demo herd').isVisible()).toBe(true);
        for (const part of ['nav', '.units', '.opening', 'button'])
          for (const one of await page.locator(part).all()) expect(await one.isVisible()).toBe(false);
        const paper = await page.pdf({ format, path: paperFile(`${name}-${format}`) });
        expect(paper.subarray(0, 5).toString()).toBe('%PDF-');
      },
    );

    test('every link within the notebook leads somewhere', async () => {
      const { page } = await site.open(`${name}.html`);
      const links = await page
        .locator('a[href]:not([hreflang])')
        .evaluateAll((all) => all.map((link) => (link as HTMLAnchorElement).getAttribute('href')!));
      const known = new Set(pages.map((one) => `${one.name}.html`));
      const broken = links
        .filter((link) => !/^(https:|mailto:)/.test(link))
        .filter((link) => {
          const [file] = link.split('#');
          return file !== '' && !known.has(file);
        });
      expect(broken).toEqual([]);
      const anchors = links.filter((link) => /^#[^=]+$/.test(link)).map((link) => link.slice(1));
      for (const anchor of anchors) expect(await page.locator(`[id="${anchor}"]`).count()).toBe(1);
    });
  },
);

test('the notebook opens with its first page', async () => {
  const { page } = await site.open('');
  expect(await page.textContent('h1')).toBe(pages[0].title);
});
