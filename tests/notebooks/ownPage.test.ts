import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Block, type Herd, type HerdPage, herd, readTable } from '../../lib/index.ts';
import { page, pageCode } from '../../notebooks/ownPage.ts';

const units = { length: 'mm', mass: 'kg' } as const;
let demo: Herd;
let folder = '';
beforeAll(async () => {
  const feet = await readFile(new URL('../../data/feet.csv', import.meta.url));
  demo = herd({ feet: readTable(feet, { schema: 'feet' }).columns });
  // Beside the other pages, so that its imports hold.
  folder = await mkdtemp(fileURLToPath(new URL('../../notebooks/own-', import.meta.url)));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const chartOf = (blocks: readonly Block[]) => {
  const chart = blocks.find(({ kind }) => kind === 'chart');
  if (chart?.kind !== 'chart') throw new Error('no chart');
  return chart;
};

describe('a page of one’s own', () => {
  it('gives TypeScript that shows the very same chart', async () => {
    const controls = { table: 'intervals', kind: 'against', column: 'days', other: 'toe_length_change_mm', by: 'limb' };
    const shown = chartOf(page.blocks({ herd: demo, controls, units }));
    const code = page.blocks({ herd: demo, controls, units }).find(({ kind }) => kind === 'code');
    if (code?.kind !== 'code') throw new Error('no code');
    const file = join(folder, 'myPage.ts');
    await writeFile(file, code.text.replace('../lib/', '../../lib/'));
    const own = (await import(/* @vite-ignore */ pathToFileURL(file).href)) as { page: HerdPage };
    const made = chartOf(own.page.blocks({ herd: demo, controls: {}, units }));
    expect([made.title, made.caption, made.summary]).toEqual([shown.title, shown.caption, shown.summary]);
    expect(made.title).toContain('against');
  });

  it('lets no title become code', () => {
    const title = '"; process.exit(1); //\n';
    const [line] = pageCode('occasions', { kind: 'spread', column: 'toe_angle_deg' }, title).match(/title: .*/)!;
    expect(JSON.parse(line.slice('title: '.length, -1))).toBe(title);
  });

  it('offers to keep what it shows, so that it comes back whatever the defaults are by then', () => {
    const keepOf = (controls: Record<string, string>) => {
      const keep = page.blocks({ herd: demo, controls, units }).find(({ kind }) => kind === 'keep');
      if (keep?.kind !== 'keep' || !keep.page) throw new Error('nothing to keep');
      return keep.page;
    };
    const first = keepOf({});
    expect(first).toEqual({
      title: 'Toe angle, by limb',
      controls: { table: 'occasions', kind: 'spread', column: 'toe_angle_deg', by: 'limb' },
    });
    expect(keepOf({ ...first.controls, title: 'Mine' })).toEqual({ ...first, title: 'Mine' });
    const plain = keepOf({ kind: 'against', other: 'toe_length_mm', by: '' });
    expect(plain.title).toMatch(/^Toe angle against .*toe/);
    expect(keepOf({ ...plain.controls })).toEqual(plain);
  });

  it('says which column of a kept page is gone, and shows the rest without its title', () => {
    const controls = { title: 'My ratio', column: 'ratio_**of**_mine', by: 'paddock', kind: 'over time' };
    const blocks = page.blocks({ herd: demo, controls, units });
    const said = blocks.flatMap((block) => (block.kind === 'prose' ? block.text : [])).join(' ');
    expect(said).toContain('“ratio_\\*\\*of\\*\\*_mine” and “paddock” can’t be shown');
    expect(blocks.some((block) => block.kind === 'heading' && block.text === 'My ratio')).toBe(false);
    expect(chartOf(blocks).title).toMatch(/^Toe angle over time/);
  });

  it('falls back to what the table has where an address asks for what it hasn’t', () => {
    const blocks = page.blocks({
      herd: demo,
      controls: { table: 'nothing', kind: 'odd', column: 'x', by: 'y' },
      units,
    });
    expect(chartOf(blocks).title).toMatch(/^Toe angle: from /);
  });
});
