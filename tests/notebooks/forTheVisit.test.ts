import { readFile } from 'node:fs/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Block, type Herd, herd, readTable, type TableName } from '../../lib/index.ts';
import { page } from '../../notebooks/forTheVisit.ts';

const units = { length: 'mm', mass: 'kg' } as const;
let demo: Herd;
beforeAll(async () => {
  const read = async (schema: TableName) =>
    readTable(await readFile(new URL(`../../data/${schema}.csv`, import.meta.url)), { schema }).columns;
  demo = herd({ feet: await read('feet'), horses: await read('horses'), visits: await read('visits') });
});

const flat = (blocks: readonly Block[]): Block[] =>
  blocks.flatMap((block) => (block.kind === 'group' ? [block, ...flat(block.blocks)] : [block]));
const shown = (controls = {}) => flat(page.blocks({ herd: demo, controls, units }));

describe('the page for the visit', () => {
  it('begins a sheet of paper for each horse, with its numbers and room for new ones before and after the work', () => {
    const sheets = shown().filter((block) => block.kind === 'group' && block.layout === 'sheet of paper');
    expect(sheets).toHaveLength(demo.horses.rows);
    const numbers = shown({ horses: ['Otter'] }).find(
      (block) => block.kind === 'form' && block.name === 'numbers-Otter',
    );
    if (numbers?.kind !== 'form') throw new Error('no numbers');
    const toe = numbers.rows.find(([title]) => title === 'Toe angle (°)')!;
    expect(toe).toHaveLength(13);
    expect(toe.filter((cell) => cell === '')).toHaveLength(8);
    expect(Number(toe[1])).toBeGreaterThan(40);
  });

  it('fits the whole yard on lines where asked', () => {
    const [lines] = shown({ layout: 'line', day: '2026-12-07' }).filter((block) => block.kind === 'form');
    if (lines?.kind !== 'form') throw new Error('no lines');
    expect(lines.title).toBe('The visit on 2026-12-07');
    expect(lines.rows).toHaveLength(demo.horses.rows);
    expect(lines.rows.every((cells) => cells.at(-1) === '')).toBe(true);
  });

  it('takes a day written either way where it can be only one, and keeps what was typed where it could be two', () => {
    const day = (typed: string) => {
      const [control] = shown({ day: typed }).filter((block) => block.kind === 'control' && block.name === 'day');
      if (control?.kind !== 'control') throw new Error('no day');
      return [control.value, control.help];
    };
    expect(day('16/12/2026')).toEqual(['2026-12-16', day('')[1]]);
    const [kept, help] = day('07/12/2026');
    expect(kept).toBe('07/12/2026');
    expect(help).toContain('can’t be told');
  });

  it('doesn’t say that nothing stands out from the past of a horse that has none', () => {
    const text = 'horse,date,limb,toe angle\nBella,2026-03-09,LF,52\nBella,2026-03-09,RF,52\n';
    const once = herd({ feet: readTable(text, { schema: 'feet' }).columns });
    const said = JSON.stringify(page.blocks({ herd: once, controls: {}, units }));
    expect(said).toContain('Measured on one day so far');
    expect(said).not.toContain('Nothing stands out');
  });

  it('gives a table to fill in that reads back as feet of that day, every foot before and after the work', () => {
    const file = shown({ horses: ['Otter', 'Wren'], day: '2026-12-07' }).find((block) => block.kind === 'download');
    if (file?.kind !== 'download') throw new Error('no file');
    expect(file.filename).toBe('visit-2026-12-07.csv');
    const filled = String(file.contents()).replace(/^(Otter,2026-12-07,RF,after,1),/m, '$1,51.5');
    const read = readTable(filled, { file: file.filename });
    expect(read.schema).toBe('feet');
    expect(read.problems).toEqual([]);
    const { horse_id, limb, moment, toe_angle_deg } = read.columns;
    expect(horse_id.values).toHaveLength(16);
    const at = Array.from(toe_angle_deg.values as Float64Array).findIndex((value) => !Number.isNaN(value));
    expect([horse_id.values[at], limb.values[at], moment.values[at], toe_angle_deg.values[at]]).toEqual([
      ...['Otter', 'RF', 'after', 51.5],
    ]);
  });
});
