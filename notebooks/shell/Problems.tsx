import { useState } from 'preact/hooks';
import {
  BlockList,
  counted,
  type Problem,
  problemColumns,
  Sheet,
  SurroundingsContext,
  say,
  titleSentences,
  wholeNumber,
  withoutTitles,
} from '../../lib/index.ts';
import { units } from './displayUnits.ts';
import { problems } from './herdInUse.ts';
import { tableFiles } from './tableFiles.ts';

/** Every cell that could not be used as it stands, with what to do about it. */
export function Problems() {
  const [open, setOpen] = useState(false);
  const unusable = withoutTitles(problems.value);
  const count = unusable.length;
  return (
    <>
      <Titles problems={problems.value} />
      {count > 0 && (
        <details class="problems" onToggle={(event) => setOpen(event.currentTarget.open)}>
          <summary>
            {counted(count, {
              one: say`${wholeNumber(count)} cell could not be used as it stands`,
              other: say`${wholeNumber(count)} cells could not be used as they stand`,
            })}
          </summary>
          {open && <ProblemSheet problems={unusable} />}
        </details>
      )}
    </>
  );
}

/** What stood above the headings of a file, and is no cell that could not be used. */
export function Titles({ problems }: { problems: readonly Problem[] }) {
  return titleSentences(problems).map((sentence) => (
    <p key={sentence} class="note titles">
      {sentence}
    </p>
  ));
}

const titles: Readonly<Record<string, string>> = {
  file: say`file`,
  row: say`row`,
  column: say`column`,
  value: say`value`,
  expected: say`expected`,
  remedy: say`remedy`,
};

/** Problems as a table, which can be taken away. */
export function ProblemSheet({ problems }: { problems: readonly Problem[] }) {
  const titled = Object.entries(problemColumns(problems)).map(([name, { values }]) => [
    name,
    { values, title: titles[name] },
  ]);
  const sheet = Sheet.from(Object.fromEntries(titled));
  const surroundings = { units: units.value, still: false, set: () => {}, files: tableFiles };
  return (
    <SurroundingsContext.Provider value={surroundings}>
      <BlockList
        blocks={[
          {
            kind: 'sheet',
            name: 'problems',
            title: say`Cells that could not be used`,
            caption: say`They are kept as entered and left out of every computation. Rows are numbered as a spreadsheet numbers them.`,
            sheet,
            // The code is for programs: what it means stands beside it in words.
            columns: sheet.names.filter((name) => name !== 'code'),
          },
        ]}
      />
    </SurroundingsContext.Provider>
  );
}
