import { type Block, type HerdPage, say } from '../lib/index.ts';

/** What is pressed, chosen or looked at on the way, in the very words that stand there. */
export const words = {
  open: say`Open your own files`,
  folded: say`Files and units`,
  dayFirst: say`3 April, day first`,
  before: say`before the farrier’s work`,
  rows: say`The first rows, as they are read`,
  unread: say`Look at what can’t be used`,
  read: say`Read it so`,
  lengths: say`Lengths in`,
  inches: say`inches`,
  day: say`Day of the visit`,
  paper: say`On paper`,
  pages: say`A page for each horse`,
  table: say`The table to fill in, as CSV`,
  merge: say`Merge`,
  copies: say`Copies outside the browser`,
  save: say`Save a copy of the record`,
};

/** An invented yard's list, as lists are: a title, a row a horse and day, inches, a cell that holds no number. */
export const list = say`Hollow Lane yard,,,,,,,,
gauge and steel rule,,,,,,,,

Horse,Date,NF angle,OF angle,NF toe length in,OF toe length in,NF inside wall in,NF outside wall in,Notes
Bramble,3/4/2026,52,51,3 1/4,3.3,2 1/8,2,calm
Otter,3/4/2026,49,48,3 1/2,3.5,2 1/4,2 1/8,
Bramble,8/5/2026,50.5,about 50,3 1/2,3.6,2 3/8,2,
Otter,8/5/2026,48,47,3 3/4,3.7,2 1/4,2 3/8,lost OF shoe
`;

export const page: HerdPage = {
  name: 'first-sheet',
  title: say`From your own list to the sheet for the visit`,
  short: say`First steps`,
  question: say`How does a list that I keep anyway become the paper that I hold when the farrier comes?`,
  blocks: () => [
    {
      kind: 'prose',
      text: say`A quarter of an hour, a browser, and a list of your horses’ feet: from any spreadsheet, saved as CSV or as it is. To try it first, save this list of an invented yard and take that. What stands in quotation marks here stands so on the page.`,
    },
    {
      kind: 'download',
      label: say`A list to try it with`,
      filename: say`yard-list.csv`,
      type: 'text/csv',
      contents: () => list,
    },
    ...step(say`1. Open the list`, 'open', [
      say`At the top of every page press “${words.open}” and choose the file. On a phone it may be folded under “${words.folded}”. It is read on this device and goes nowhere else. The demo herd makes room for your horses and comes back whenever you like.`,
    ]),
    ...step(say`2. Say what its columns are`, 'columns', [
      say`Where a list is not laid out as a row a foot, each of its headings is shown with a few of its cells and what it is most likely meant to be. Look at each, and choose another where the guess is wrong. In the list to try, “NF angle” is the toe angle of the left fore, and the lengths are in inches. Rows above the headings are named and left out.`,
      say`Then answer what is asked. Which day is 03/04/2026: if you write the day first, choose “${words.dayFirst}”. When the feet were measured: for the list to try choose “${words.before}”; that makes a change from visit to visit mean something.`,
      say`Under “${words.rows}” stands what comes of it, a row a foot. Under “${words.unread}” stands every cell that is no number, here “about 50”: it is kept as it was written, and only left out of computing. When it looks right, press “${words.read}”. The next list with the same headings is matched in the same way, and says so.`,
    ]),
    ...step(say`3. Look at your herd`, 'herd', [
      say`[The herd](herd.html) ranks what is worth raising; with a few readings that is little, and it says of everything how sure it is. A cell that could not be used is typed anew on the page [The record](record.html), at any time.`,
    ]),
    ...step(say`4. Print the sheet for the visit`, 'print', [
      say`On the page [For the visit](for-the-visit.html) type the date at “${words.day}”, and at “${words.paper}” choose “${words.pages}”. Who reckons in inches chooses “${words.inches}” at “${words.lengths}”, at the top. Then print with the browser’s own command, from its menu or by Ctrl or ⌘ and P, on A4 or Letter; there you can also save a PDF, to send to the farrier. On a phone it stands under sharing.`,
      say`Each horse has a sheet: what is worth a look, how sure it is, the last numbers, and room for the new ones. It is for a talk; what is done to a foot is for the farrier and the vet to decide.`,
    ]),
    ...step(say`5. After the visit`, 'after', [
      say`If you would rather type than write, save “${words.table}” on the same page before the visit: it has a row for each foot. Fill it in, open it as you opened the list, and press “${words.merge}”: new rows join the old ones, and nothing is written over unasked.`,
    ]),
    ...step(say`6. Keep a copy`, 'keep', [
      say`The record stays in this browser on this device. Under “${words.copies}” press “${words.save}” now and then, and put the file where you keep what matters.`,
    ]),
  ],
};

function step(text: string, id: string, all: readonly string[]): Block[] {
  return [
    { kind: 'heading', level: 2, text, id },
    { kind: 'prose', text: all.join('\n\n') },
  ];
}
