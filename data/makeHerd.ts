// Writes the demo herd: `npm run demo`. Everything in it is invented; see README.md beside this file.
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type InventedHerd, inventHerd } from './inventHerd.ts';

/** The seed of the herd that is shipped. */
export const demoSeed = 20250901;

type Rows = InventedHerd['feet'];

/** Cells as life has them: what stands there instead, and in which row, counted from 0. */
const mishaps: readonly {
  readonly row: number;
  readonly column: string;
  readonly write: (cell: string) => string;
  readonly what: string;
}[] = [
  {
    row: 40,
    column: 'toe_angle_deg',
    write: (cell) => Number(cell).toFixed(1).replace('.', ''),
    what: 'a point left out: no toe is so steep',
  },
  {
    row: 77,
    column: 'toe_length_mm',
    write: (cell) => `${(Number(cell) / 10).toFixed(1)} cm`,
    what: 'another unit: readable',
  },
  { row: 131, column: 'toe_angle_deg', write: (cell) => `${cell}°`, what: 'a unit sign: readable' },
  {
    row: 222,
    column: 'foot_width_mm',
    write: (cell) => `${Math.floor(Number(cell) / 25.4)} 1/4 in`,
    what: 'inches: readable',
  },
  { row: 305, column: 'date', write: (cell) => cell.replace(/-\d\d-/, '-13-'), what: 'no such month' },
  { row: 410, column: 'limb', write: () => 'left', what: 'front or hind?' },
  { row: 533, column: 'heel_angle_deg', write: () => 'forty-six', what: 'words for a number' },
  { row: 640, column: 'frog_width_mm', write: () => '?', what: 'nobody knows any more' },
  {
    row: 702,
    column: 'limb',
    write: (cell) => ({ LF: 'near fore', RF: 'off fore', LH: 'near hind', RH: 'off hind' })[cell] ?? cell,
    what: 'other words for a limb: readable',
  },
];

/** The four files of the demo herd, by name. */
export function demoFiles(): Record<string, string> {
  const { feet, horses, visits, truth } = inventHerd(demoSeed);
  const spoilt = feet.map((row) => ({ ...row }));
  const written = mishaps.map(({ row, column, write, what }) => {
    const cell = write(String(feet[row][column]));
    spoilt[row][column] = cell;
    return { row: row + 2, column, cell, meant: feet[row][column], what };
  });
  return {
    'feet.csv': csv(spoilt),
    'horses.csv': csv(horses),
    'visits.csv': csv(visits),
    'truth.json': `${JSON.stringify({ invented: true, ...truth, mishaps: written }, undefined, 2)}\n`,
  };
}

function csv(rows: Rows): string {
  const names = Object.keys(rows[0]);
  const lines = rows.map((row) => names.map((name) => row[name]).join(','));
  return `${[names.join(','), ...lines].join('\n')}\n`;
}

const here = fileURLToPath(import.meta.url);
if (process.argv[1] === here)
  for (const [name, text] of Object.entries(demoFiles())) writeFileSync(join(dirname(here), name), text);
