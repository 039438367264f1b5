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
