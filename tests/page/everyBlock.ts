import * as Plot from '@observablehq/plot';
import type { Block, SheetBlock } from '../../lib/page/blocks.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';
import { svg } from '../../lib/views/svg.ts';

export const hostile = '<script>alert("x")</script> & __proto__';

/** A small table with one measured and one computed column, as a sheet would show it. */
export function smallSheet(rows = 3): SheetBlock['sheet'] {
  const table = plainTable({
    horse_id: { values: Array.from({ length: rows }, (_, row) => (row === 0 ? hostile : `Horse ${row}`)) },
    toe_length_mm: { unit: 'mm', values: Float64Array.from({ length: rows }, (_, row) => 80 + row) },
    half: {
      unit: 'mm',
      values: Float64Array.from({ length: rows }, (_, row) => (row === 2 ? Number.NaN : 40 + row / 2)),
      error: new Float64Array(rows).fill(0.8),
    },
  });
  const columns = {
    horse_id: { kind: 'text', unit: '1', title: 'Horse', origin: 'measured' },
    toe_length_mm: { kind: 'number', unit: 'mm', title: 'Toe length', origin: 'measured' },
    half: { kind: 'number', unit: 'mm', title: 'Half of the toe', origin: 'computed', formula: 'toe_length_mm / 2' },
  };
  return Object.assign(table, {
    describe: (name: keyof typeof columns) => ({ name, ...columns[name] }),
    sentence: () => 'half of the toe length',
  }) as unknown as SheetBlock['sheet'];
}

/** One block of every kind, with names that must stay text. */
export function everyBlock(): Block[] {
  return [
    { kind: 'heading', level: 2, text: hostile, id: 'first' },
    { kind: 'keep', name: 'own', keeper: () => Promise.reject(new Error('nothing is kept in a file')) },
    { kind: 'prose', text: 'Plain **strong** [words](columns.html)' },
    { kind: 'prose', tone: 'caution', text: 'Careful' },
    {
      kind: 'form',
      name: 'to-fill',
      title: 'To fill in',
      columns: ['Foot', 'Last', 'New'],
      rows: [[hostile, '52.0°', '']],
      lines: { label: 'Notes', count: 2 },
    },
    { kind: 'code', name: 'as-code', title: 'As code', text: hostile },
    { kind: 'figures', items: [{ label: 'Feet', value: '96', note: '4 missing' }] },
    {
      kind: 'finding',
      id: 'one',
      subject: hostile,
      sentence: 'The inside is higher',
      state: 'raise',
      value: '4.2 ± 0.8 mm',
      against: ['this foot’s own last visit'],
      notes: ['a poor view'],
      drawing: svg('svg', { viewBox: '0 0 10 10', width: 10, height: 10 }, svg('circle', { r: 3 })),
    },
    {
      kind: 'chart',
      name: 'toes',
      title: 'Toes',
      summary: 'Three dots that rise',
      options: { marks: [Plot.dot([1, 2, 3], { x: (x: number) => x, y: (x: number) => x, title: () => hostile })] },
    },
    {
      kind: 'linked',
      name: 'both',
      title: 'Both',
      summary: 'Three bars',
      specification: {
        data: { values: [1, 2, 3].map((x) => ({ x })) },
        mark: 'bar',
        encoding: { x: { field: 'x', type: 'ordinal' }, y: { field: 'x', type: 'quantitative' } },
      },
    },
    {
      kind: 'drawings',
      title: 'Feet',
      items: [{ title: hostile, href: 'herd.html', drawing: svg('svg', { viewBox: '0 0 1 1' }) }],
    },
    { kind: 'sheet', name: 'small', title: 'Small', sheet: smallSheet() },
    { kind: 'download', label: 'Take it', filename: 'a.txt', type: 'text/plain', contents: () => 'a, b & c' },
    {
      kind: 'group',
      layout: 'side by side',
      blocks: [
        {
          kind: 'control',
          name: 'weeks',
          label: 'Weeks',
          input: 'number',
          value: 6,
          least: 4,
          most: 10,
          step: 1,
          unit: '1',
        },
        {
          kind: 'control',
          name: 'gap',
          label: 'Gap',
          input: 'number',
          value: 25.4,
          least: 0,
          most: 254,
          step: 2.54,
          unit: 'mm',
        },
        { kind: 'control', name: 'shod', label: 'Shod only', input: 'yes-no', value: true },
        { kind: 'control', name: 'words', label: 'Words', input: 'text', value: hostile },
        {
          kind: 'control',
          name: 'limb',
          label: 'Limb',
          input: 'choice',
          value: 'RF',
          options: [
            { value: 'LF', label: 'left fore' },
            { value: 'RF', label: 'right fore' },
          ],
        },
        {
          kind: 'control',
          name: 'limbs',
          label: 'Limbs',
          input: 'several',
          value: ['LF'],
          options: [
            { value: 'LF', label: 'left fore' },
            { value: 'RF', label: 'right fore' },
          ],
        },
      ],
    },
  ];
}
