import { formatQuantity } from '../../sheet/display.ts';
import { midSentence } from '../../words/midSentence.ts';
import { say } from '../../words/say.ts';
import { describeColumn } from '../describeColumn.ts';
import type { Pooled } from './pooled.ts';
import type { PoolTreatment } from './poolTreatment.ts';
import { type Remains, remains } from './remains.ts';

/** So many values far from others are named; the rest is counted. */
const MOST = 20;

/**
 * What was done to tables on their way into a pool and what in them still identifies, as a text in Markdown. It holds
 * nothing that the tables don't: no name, and no heading of a column that was left out.
 */
export function remainsInWords(pool: Pooled): string {
  const left = remains(pool);
  return `${[
    say`# What was done to these tables, and what in them still identifies`,
    say`Read this before you hand the tables on. Names are replaced and dates moved, so that nobody reads off whose horses these are. Whoever has the key, the yard’s own record or enough knowledge of the yard can still tell. The tables remain personal data of the people behind them (GDPR, Article 4(5) and Recital 26).`,
    ...done(pool),
    say`## Horses told apart by what people may know of them`,
    ...standingsInWords(left),
    say`## Values far from those of the others`,
    ...farInWords(left),
    say`## Days`,
    gapsInWords(left),
    say`## People and places`,
    ...namedInWords(left),
    say`## The measurements themselves`,
    say`They stand to the last digit. Someone who has the same measurements from elsewhere, with names, finds each horse by them.`,
    say`## Not in here`,
    say`The key, photographs and the points on them, texts that could not be read, the record’s history, notes and every other column that nobody asked to keep.`,
  ].join('\n\n')}\n`;
}

/** Headings of columns that were left out may name someone themselves, and are counted only. */
function done({ columns, textsTakenOut, rowsLeftOut }: Pooled): string[] {
  const of = (treatment: PoolTreatment) => columns.filter((one) => one.treatment === treatment);
  const listed = (treatment: PoolTreatment) =>
    of(treatment)
      .map(({ table, name }) => `\`${table}.${name}\``)
      .join(', ');
  const lines = [
    [listed('named'), say`**Replaced by pseudonyms**, the same for the same key:`],
    [listed('moved'), say`**Moved**, all days of a horse by the same number, from 1 to 182 days either way:`],
    [listed('worded'), say`**Cut down to the words that the column is known by** (texts taken out: ${textsTakenOut}):`],
    [listed('kept'), say`**Kept as they stand**:`],
    [String(of('left out').length || ''), say`**Columns left out**, as nobody knows what may stand in them:`],
    [String(of('computed').length || ''), say`**Computed columns left out**, as they are worked out afresh:`],
    [String(rowsLeftOut || ''), say`**Rows left out**, as they name no horse:`],
  ];
  return [
    say`## What was done`,
    lines.flatMap(([what, words]) => (what === '' ? [] : `- ${words} ${what}`)).join('\n'),
    say`Gaps between the days of a horse are exact to the day. The season is lost: nothing by the time of the year can be worked out from these tables. So is which horses were seen on the same day.`,
  ];
}

function standingsInWords({ horses, known, standings }: Remains): string[] {
  if (standings.length === 0) return [say`The tables say nothing else of their ${horses.length} horses.`];
  const rows = standings
    .filter(({ told }) => told > 0)
    .map(({ columns, told, alone, few }) => {
      const what = columns.length > 2 ? say`all of these` : columns.map(titleOf).join(say` and `);
      return `| ${what} | ${told} | ${alone.length} | ${few} |`;
    });
  const single = standings.filter(({ columns, alone }) => columns.length === 1 && alone.length > 0);
  const alone = single.flatMap(({ columns: [column], alone }) =>
    alone.map((row) => `- ${horses[row]}: ${midSentence(titleOf(column))} ${cell(known[column][row])}`),
  );
  return [
    say`Of ${horses.length} horses. A horse that stands alone is known to anyone who knows that much of it. Weights count in steps of 50 kg and lengths in steps of 5 cm, as closely as one may guess them.`,
    [
      `| ${say`known of a horse`} | ${say`horses that have it`} | ${say`standing alone`} | ${say`with one to three others`} |`,
      '| --- | --- | --- | --- |',
      ...rows,
    ].join('\n'),
    ...(alone.length > 0 ? [say`Alone by one thing only:`, alone.join('\n')] : []),
  ];
}

function farInWords({ far }: Remains): string[] {
  if (far.length === 0) return [say`None.`];
  const shown = (value: number, unit: string) => formatQuantity(value, unit, { length: 'mm', mass: 'kg' });
  const lines = far.slice(0, MOST).map(({ horse, column, value, middle, unit }) => {
    const title = midSentence(titleOf(column));
    return say`- ${horse}: ${title} ${shown(value, unit)}, the middle of all horses ${shown(middle, unit)}`;
  });
  const more = far.length - lines.length;
  return [lines.join('\n'), ...(more > 0 ? [say`And ${more} more.`] : [])];
}

function gapsInWords({ gaps: { horses, alone } }: Remains): string {
  return horses === 0
    ? say`No horse has more than one day.`
    : say`Horses with more than one day: ${horses}. Of these, with a sequence of gaps like no other here: ${alone}. Someone who has a diary of the visits finds such a horse by it, and with it the days. Someone who knows when the record begins or ends can guess how far a horse was moved, to about the length of its gaps; a day later than today tells that it was moved forward.`;
}

function namedInWords({ named }: Remains): string[] {
  if (named.length === 0) return [say`None.`];
  const lines = named.map(
    ({ table, name, names, withOneHorse }) =>
      say`- \`${table}.${name}\`: ${names} different, ${withOneHorse} of them with one horse only`,
  );
  return [
    lines.join('\n'),
    say`Someone who knows who works at how many horses of the yard may tell who is who; so may someone who knows that it is a yard with one farrier.`,
  ];
}

const titleOf = (column: string) => describeColumn(column).title ?? column;

/** Words that someone kept may hold signs of Markdown. */
const cell = (text: string) => text.replace(/[\\`*_{}[\]<>#|\r\n]/g, ' ');
