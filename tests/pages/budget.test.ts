import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { pages } from '../../notebooks/index.ts';
import { languages } from '../../scripts/words/languages.ts';
import { notebook } from './browser.ts';

const site = notebook();
const most = 300_000;

const names = pages.map(({ name }) => name);

test.each([...names, ...languages().flatMap((language) => names.map((name) => `${language}/${name}`))])(
  'the first load of %s is under 300 kB gzipped, before linked charts and workers are asked for',
  async (name) => {
    const fresh = await site.context({ serviceWorkers: 'block', viewport: { width: 1280, height: 200 } });
    const first = await fresh.newPage();
    const sizes = new Map<string, Promise<number>>();
    first.on('response', (response) => {
      const address = response.url();
      if (response.ok() && !/\/(vega-|worker\/)[^/]*\.js$/.test(address))
        sizes.set(
          address,
          response.body().then((body) => gzipSync(body).length),
        );
    });
    await first.goto(`${site.address}${name}.html`, { waitUntil: 'networkidle' });
    // What comes later is no first load, and would be cut off by the closing.
    first.removeAllListeners('response');
    const total = (await Promise.all(sizes.values())).reduce((sum, size) => sum + size, 0);
    await fresh.close();
    expect([...sizes.keys()].some((address) => address.endsWith('feet.csv'))).toBe(true);
    expect(total).toBeLessThan(most);
  },
);
