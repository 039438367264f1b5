// Writes the demo herd: `npm run demo`. Everything in it is invented; see README.md beside this file.
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type InventedHerd, inventHerd } from './inventHerd.ts';

/** The seed of the herd that is shipped. */
export const demoSeed = 20250901;

type Rows = InventedHerd['feet'];

/** Cells as life has them: what to write instead, and where. Rows are counted from 0. */
const mishaps: readonly {
  readonly row: number;
  readonly column: string;
  readonly cell: string;
  readonly what: string;
}[] = [
  { row: 40, column: 'toe_angle_deg', cell: '520', what: 'a point that was left out: no toe has 520 degrees' },
  { row: 77, column: 'toe_length_mm', cell: '8.5 cm', what: 'another unit: readable, 85 mm' },
  { row: 131, column: 'toe_angle_deg', cell: '51°', what: 'a unit sign: readable' },
  { row: 222, column: 'foot_width_mm', cell: '5 1/8 in', what: 'inches: readable, 130.2 mm' },
  { row: 305, column: 'date', cell: '2025-13-04', what: 'no such month' },
  { row: 410, column: 'limb', cell: 'left', what: 'front or hind?' },
  { row: 533, column: 'heel_angle_deg', cell: 'forty-six', what: 'words for a number' },
  { row: 640, column: 'frog_width_mm', cell: '?', what: 'nobody knows any more' },
  { row: 702, column: 'limb', cell: 'near fore', what: 'other words for a limb: readable' },
];

/** The four files of the demo herd, by name. */
export function demoFiles(): Record<string, string> {
  const { feet, horses, visits, truth } = inventHerd(demoSeed);
  const bent = feet.map((row, at) => {
    const changes = mishaps.filter((mishap) => mishap.row === at);
    return changes.length === 0
      ? row
      : { ...row, ...Object.fromEntries(changes.map(({ column, cell }) => [column, cell])) };
  });
  return {
    'feet.csv': csv(bent),
    'horses.csv': csv(horses),
    'visits.csv': csv(visits),
    'truth.json': `${JSON.stringify({ invented: true, ...truth, mishaps }, undefined, 2)}\n`,
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
