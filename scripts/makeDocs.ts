// Writes docs/columns.md, docs/bibliography.md and data/ranges.csv from the rows in lib/hoof, and the guide and the first
// steps with their drawings from the pages of those names: `npm run docs`.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { writeTable } from '../lib/files/writeTable.ts';
import { bibliography, citation } from '../lib/hoof/bibliography.ts';
import { type Context, context } from '../lib/hoof/context.ts';
import { type Derived, ownDerived } from '../lib/hoof/derived.ts';
import { ofIntervals } from '../lib/hoof/intervalMeasures.ts';
import type { Measure, Measured } from '../lib/hoof/measure.ts';
import { measured } from '../lib/hoof/measured.ts';
import { measures } from '../lib/hoof/measures/index.ts';
import { builtInRanges } from '../lib/hoof/ranges.ts';
import { rangesToColumns } from '../lib/hoof/rangeTable.ts';
import { rangeSentence, rangeSource } from '../lib/hoof/sentences.ts';
import type { HerdPage } from '../lib/index.ts';
import { page as firstSheet } from '../notebooks/firstSheet.ts';
import { page as guide } from '../notebooks/guide.ts';
import { pageAsMarkdown } from './pageAsMarkdown.ts';

const metric = { length: 'mm', mass: 'kg' } as const;
const generated = 'Written by `npm run docs` from the rows in `lib/hoof`; change those, not this page.';

/** The generated files by their path from the root. */
export function generatedDocs(): Record<string, string> {
  return {
    'docs/columns.md': columns(),
    'docs/bibliography.md': sources(),
    'data/ranges.csv': writeTable(rangesToColumns(builtInRanges)),
    ...pageFiles(guide, 'guide'),
    ...pageFiles(firstSheet, 'firstSheet'),
  };
}

/** A page of words as it stands in the notebook, to be read beside the code. */
function pageFiles(page: HerdPage, file: string): Record<string, string> {
  const { text, drawings } = pageAsMarkdown(page, `drawings/${page.name}`);
  const written = text.replace(
    '\n\n',
    `\n\nWritten by \`npm run docs\` from \`notebooks/${file}.ts\`; change that, not this page.\n\n`,
  );
  return {
    [`docs/${page.name}.md`]: written,
    ...Object.fromEntries(Object.entries(drawings).map(([path, drawing]) => [`docs/${path}`, drawing])),
  };
}

function columns(): string {
  return [
    '# What each column means',
    generated,
    'Angles are against the ground and open backwards under the wall: a steeper wall has the larger angle. In a shod foot "ground" is the ground side of the shoe, so the shoe is in every length. Differences are medial minus lateral (inside minus outside), hoof minus pastern, left minus right. Ranges are conventions with thin evidence: most sound feet break one.',
    '## Which foot, when and how',
    context.map(contextLine).join('\n'),
    '## Measured',
    'The error is one standard error of one reading. It is used where the herd has too few repeats of its own (fewer than ten degrees of freedom); a poor view, or hair over the hairline, doubles it (common practice, no source).',
    ...measured.map(measuredSection),
    '## Computed',
    'Each is a formula that you could type yourself.',
    ...measures.map(computedSection),
    '## Joined, counted and set side by side',
    'What the herd adds to its tables besides. The intervals have each of their columns at the start and at the end, and the change; the horses have the means of their front and hind feet, and of left minus right.',
    [...ownDerived, ...ofIntervals].map(derivedLine).join('\n'),
  ]
    .join('\n\n')
    .concat('\n');
}

function contextLine({ name, title, tables, about, words }: Context): string {
  const said = words === undefined ? '' : ` Words: ${Object.keys(words).join(', ')}.`;
  return `- \`${name}\` (${title}; ${tables.join(', ')}): ${about}${said}`;
}

function derivedLine({ name, title, unit, about, formula }: Derived): string {
  return `- \`${name}\` (${title}${unit === undefined ? '' : `, in ${unit}`}): ${about}${formula === undefined ? '' : ` \`${formula}\``}`;
}

function measuredSection({ name, title, unit, table, view, landmarks, how, anatomy, error }: Measured): string {
  const known = error === undefined ? 'unknown' : `${error.value} ${unit} (${citation(error.source)})`;
  return [
    `### ${title}`,
    `\`${name}\`, in ${unit}, table ${table}, seen ${from[view]}.`,
    `${landmarks} ${how}`,
    `Beyond ${anatomy[0]} to ${anatomy[1]} ${unit} a value is kept as entered, marked, and left out of computation. Error of one reading: ${known}.`,
  ].join('\n\n');
}

const from = {
  side: 'from the side',
  front: 'from the front',
  rear: 'from behind',
  below: 'from below',
  pair: 'on a pair of feet',
  horse: 'on the whole horse',
} as const;

function computedSection(measure: Measure): string {
  const { name, title, unit, formula, sentence, sentenceBelowZero, sign, about, table, view, ranges, source, example } =
    measure;
  const lines = [
    `### ${title}`,
    `\`${name}\`, in ${unit}, table ${table}, seen ${from[view]}.${sign === undefined ? '' : ` Sign: ${sign}.`}`,
    `\`\`\`\n${formula.replace(/\n\s*/g, '\n  ')}\n\`\`\``,
    about,
    `In words: “${sentence}”${sentenceBelowZero === undefined ? '' : `, below zero “${sentenceBelowZero}”`}. Definition: ${citation(source)}.`,
  ];
  for (const range of ranges) {
    const { when, below, above, publishedOutside = [] } = range;
    const conditions = [
      when?.end && `${when.end} feet`,
      when?.exceptBuild && `not ${when.exceptBuild.join(', ')}`,
      when?.build?.join(', '),
    ].filter(Boolean);
    const words = [below && `below: ${below}`, above && `above: ${above}`].filter(Boolean).join('; ');
    const shares = publishedOutside.map(({ outside, of, source }) => `${outside} of ${of} (${citation(source)})`);
    lines.push(
      `Range${conditions.length > 0 ? ` (${conditions.join('; ')})` : ''}: ${rangeSentence(range, unit, metric)}; ${words}. Source: ${rangeSource(range)}.${shares.length > 0 ? ` Outside in published herds, by their own definitions: ${shares.join('; ')}.` : ''}`,
    );
  }
  const cells = Object.entries(example.given).map(([column, value]) => `${column} ${value}`);
  const others = (example.others ?? []).map((row) =>
    Object.entries(row)
      .map(([column, value]) => `${column} ${value}`)
      .join(', '),
  );
  lines.push(`Example: ${[cells.join(', '), ...others].join('; beside ')} gives ${example.value}.`);
  return lines.join('\n\n');
}

function sources(): string {
  const entries = Object.entries(bibliography).map(
    ([key, { text, says, provenance, address }]) =>
      `- **${key}** (${provenance}). ${text}. ${says}${address === undefined ? '' : ` <${address}>`}`,
  );
  return [
    '# Sources',
    generated,
    'Figures and what they are cited for, in our own words. *read*: the figure stood on the page named, mostly an abstract. *read second-hand*: it stood on a page that quotes another work. *from memory*: recalled and not confirmed. What the trade says without a study is marked "common practice, no source" where it is used.',
    entries.join('\n'),
  ]
    .join('\n\n')
    .concat('\n');
}

const here = fileURLToPath(import.meta.url);
if (process.argv[1] === here)
  for (const [path, text] of Object.entries(generatedDocs()))
    writeFileSync(fileURLToPath(new URL(`../${path}`, import.meta.url)), text);
