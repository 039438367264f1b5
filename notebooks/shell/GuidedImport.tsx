import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import {
  type CellGrid,
  type ColumnUse,
  counted,
  fileHeadings,
  type ImportPlan,
  type Limb,
  limbName,
  limbs,
  limbsAcross,
  midSentence,
  type PlannedRead,
  readPlanned,
  sameUse,
  say,
  schemas,
  shownDay,
  suggestPlan,
  type TableName,
  wholeNumber,
  withoutTitles,
} from '../../lib/index.ts';
import { ColumnChoice } from './ColumnChoice.tsx';
import { FirstRows } from './FirstRows.tsx';
import { tableNames } from './herdInUse.ts';
import { forgetMatching, type Matching, rememberedMatching, rememberMatching } from './matchings.ts';
import { type GuidedTable, keptTable } from './openFiles.ts';
import { ProblemSheet, Titles } from './Problems.tsx';

/** So many rows are read while columns are matched; all of them once it is decided. */
const shownRows = 20_000;

interface Props {
  readonly sheets: readonly CellGrid[];
  readonly answer: (table: GuidedTable | undefined) => void;
}

const rowWords: Readonly<Record<TableName, string>> = {
  feet: say`feet, measured`,
  horses: say`horses`,
  visits: say`the farrier’s visits`,
};

/** Lets someone say what the columns of a file are: what is likely is chosen, what follows is shown, all can be corrected. */
export function GuidedImport({ sheets, answer }: Props) {
  const [at, setAt] = useState(0);
  const grid = sheets[at];
  const [fresh, setFresh] = useState<CellGrid | undefined>();
  const begun = useMemo(() => (fresh === grid ? { plan: suggestPlan(grid) } : beginning(grid)), [grid, fresh]);
  const [changed, setPlan] = useState<{ grid: CellGrid; plan: ImportPlan } | undefined>();
  const plan = changed?.grid === grid ? changed.plan : begun.plan;
  const change = (part: Partial<ImportPlan>) => setPlan({ grid, plan: { ...plan, ...part } });
  const again = (table: TableName, row: number) => change(suggestPlan(grid, table, row));
  const read = useMemo(() => readPlanned(grid, plan, shownRows), [grid, plan]);
  const unusable = withoutTitles(read.problems);
  const place = useRef<HTMLElement>(null);
  useEffect(() => place.current?.focus(), []);
  const insteadOf = (c: number) =>
    plan.table === begun.plan.table && sameUse(plan.uses[c], begun.plan.uses[c]) ? begun.before?.likely[c] : undefined;
  const headings = fileHeadings(grid, plan.headingRow);
  const lacking = lacks(plan);
  const ready = lacking.length === 0 && read.dates !== 'undecided' && read.rowsOfFile.length > 0;
  return (
    <section class="guided" tabIndex={-1} ref={place} aria-label={say`How ${grid.file} is read`}>
      <h2>{say`How is ${grid.file} meant?`}</h2>
      {begun.before ? (
        <p class="guided-before" role="status">
          {begun.before.made
            ? say`Matched as you did on ${shownDay(begun.before.made.on)} for ${begun.before.made.file}, a file with these headings.`
            : say`Matched as you did before for a file with these headings.`}{' '}
          <button
            type="button"
            onClick={() => {
              forgetMatching(grid, begun.plan);
              setFresh(grid);
              setPlan(undefined);
            }}
          >{say`Forget that and choose again`}</button>
        </p>
      ) : (
        <p>{say`What is likely is chosen already. Correct what is wrong; below stands what comes of it.`}</p>
      )}
      <div class="guided-file">
        {sheets.length > 1 && (
          <label>
            {say`Sheet`}{' '}
            <select value={at} onChange={(event) => setAt(Number(event.currentTarget.value))}>
              {sheets.map(({ sheet }, i) => (
                <option key={sheet} value={i}>
                  {sheet}
                </option>
              ))}
            </select>
          </label>
        )}
        <label>
          {say`It holds`}{' '}
          <select
            value={plan.table}
            onChange={(event) => again(event.currentTarget.value as TableName, plan.headingRow)}
          >
            {tableNames.map((name) => (
              <option key={name} value={name}>
                {rowWords[name]}
              </option>
            ))}
          </select>
        </label>
        <label>
          {say`Headings stand in row`}{' '}
          <input
            type="number"
            min={1}
            max={Math.max(grid.rows.length, 1)}
            value={plan.headingRow + 1}
            onChange={(event) => {
              const row = Math.round(Number(event.currentTarget.value));
              if (row >= 1 && row <= grid.rows.length) again(plan.table, row - 1);
            }}
          />
        </label>
      </div>
      <Titles problems={read.problems} />
      <ul class="guided-columns" aria-label={say`Columns of the file`}>
        {headings.map((heading, c) => (
          <ColumnChoice
            key={`${plan.headingRow} ${c}`}
            heading={heading}
            cells={firstCells(grid, plan, c)}
            table={plan.table}
            use={plan.uses[c] ?? { kind: 'nothing' }}
            instead={insteadOf(c)}
            change={(use) =>
              change({ uses: headings.map((_, i) => (i === c ? use : (plan.uses[i] ?? { kind: 'nothing' }))) })
            }
          />
        ))}
      </ul>
      <Twice plan={plan} />
      {lacking.map(({ name, title }) => (
        <label key={name} class="guided-given">
          {say`The file has no column for ${midSentence(title)}. Choose one above, or write what holds for all rows`}{' '}
          <input
            placeholder={name === 'date' ? '2026-03-09' : ''}
            onChange={(event) => {
              const text = event.currentTarget.value;
              if (text) change({ given: [...plan.given.filter(([column]) => column !== name), [name, text]] });
            }}
          />
        </label>
      ))}
      <Moment plan={plan} change={change} />
      <Dates plan={plan} read={read} change={change} />
      <Limbs plan={plan} read={read} change={change} />
      <FirstRows read={read} table={plan.table} />
      <p role="status">{say`${read.rowsOfFile.length} rows of ${plan.table} come of ${grid.rows.length > shownRows ? say`its first rows` : say`it`}. ${
        unusable.length === 0
          ? say`Every cell can be read.`
          : counted(unusable.length, {
              one: say`${wholeNumber(unusable.length)} thing can’t be used as written.`,
              other: say`${wholeNumber(unusable.length)} things can’t be used as written.`,
            })
      }`}</p>
      {unusable.length > 0 && (
        <details>
          <summary>{say`Look at what can’t be used`}</summary>
          <ProblemSheet problems={unusable} />
        </details>
      )}
      <div class="guided-end">
        <button
          type="button"
          disabled={!ready}
          onClick={() => {
            rememberMatching(grid, plan);
            answer({ name: plan.table, table: keptTable(readPlanned(grid, plan), grid.file) });
          }}
        >{say`Read it so`}</button>
        <button type="button" onClick={() => answer(undefined)}>{say`Leave it`}</button>
      </div>
    </section>
  );
}

interface Beginning {
  readonly plan: ImportPlan;
  /** What was chosen for a file with the same headings, and what is likely where that was not. */
  readonly before?: Pick<Matching, 'made'> & { readonly likely: readonly ColumnUse[] };
}

function beginning(grid: CellGrid): Beginning {
  const plan = suggestPlan(grid);
  const known = rememberedMatching(grid, plan);
  if (!known) return { plan };
  const likely = suggestPlan(grid, known.plan.table, plan.headingRow).uses;
  return { plan: known.plan, before: { made: known.made, likely } };
}

const firstCells = ({ rows }: CellGrid, { headingRow }: ImportPlan, c: number) =>
  rows
    .slice(headingRow + 1, headingRow + 40)
    .flatMap((row) => row[c] || [])
    .slice(0, 3);

/** What the table needs and neither a column nor a word for all rows gives. */
function lacks(plan: ImportPlan) {
  const { required, columns } = schemas[plan.table];
  const had = new Set([
    ...plan.uses.flatMap((use) => (use.kind === 'column' && !use.limb ? use.column : [])),
    ...plan.given.map(([column]) => column),
    ...(limbsAcross(plan).length > 0 ? ['limb'] : []),
  ]);
  return columns.filter(({ name }) => required.includes(name) && !had.has(name));
}

/** Says where two columns of the file are matched to the same of ours: the second would be kept under another name. */
function Twice({ plan }: { plan: ImportPlan }) {
  const places = plan.uses.flatMap((use) => (use.kind === 'column' ? `${use.limb ?? ''} ${use.column}` : []));
  const twice = places.find((place, i) => places.indexOf(place) < i)?.split(' ')[1];
  if (twice === undefined) return null;
  const title = schemas[plan.table].columns.find(({ name }) => name === twice)?.title ?? twice;
  return (
    <p
      class="trouble"
      role="alert"
    >{say`Two columns are matched to ${title}. Keep one of them under its own heading, or leave it out.`}</p>
  );
}

interface PartProps {
  readonly plan: ImportPlan;
  readonly read: PlannedRead;
  readonly change: (part: Partial<ImportPlan>) => void;
}

/** What is told from visit to visit hangs on it, so that it is asked where the file doesn't say. */
function Moment({ plan, change }: Omit<PartProps, 'read'>) {
  const said = plan.uses.some((use) => use.kind === 'column' && use.column === 'moment');
  if (plan.table !== 'feet' || said) return null;
  const others = plan.given.filter(([column]) => column !== 'moment');
  return (
    <label class="guided-given">
      {say`The file doesn’t say when the feet were measured. For all rows it was`}{' '}
      <select
        value={plan.given.find(([column]) => column === 'moment')?.[1] ?? ''}
        onChange={({ currentTarget: { value } }) =>
          change({ given: value === '' ? others : [...others, ['moment', value]] })
        }
      >
        <option value="">{say`between visits`}</option>
        <option value="before">{say`before the farrier’s work`}</option>
        <option value="after">{say`after the farrier’s work`}</option>
      </select>
    </label>
  );
}

function Dates({ plan, read, change }: PartProps) {
  const asked = plan.dates !== undefined || read.dates === 'undecided';
  const numbers = plan.serial !== undefined || read.problems.some(({ code }) => code === 'serial-date');
  return (
    <>
      {asked && (
        <fieldset class="guided-asked">
          <legend>{say`The dates can be read two ways. What does 03/04/2026 mean?`}</legend>
          {(['dmy', 'mdy'] as const).map((order) => (
            <label key={order}>
              <input
                type="radio"
                name="order of dates"
                checked={plan.dates === order}
                onChange={() => change({ dates: order })}
              />{' '}
              {order === 'dmy' ? say`3 April, day first` : say`4 March, month first`}
            </label>
          ))}
        </fieldset>
      )}
      {numbers && (
        <label class="guided-given">
          {say`Dates are written as day numbers, counted from`}{' '}
          <select
            value={plan.serial ?? ''}
            onChange={({ currentTarget: { value } }) =>
              change({ serial: value === '1900' ? 1900 : value === '1904' ? 1904 : undefined })
            }
          >
            <option value="1900">{say`1900, as most spreadsheets do`}</option>
            <option value="1904">{say`1904, as some old ones do`}</option>
            <option value="">{say`they are no dates`}</option>
          </select>
        </label>
      )}
    </>
  );
}

function Limbs({ plan, read, change }: PartProps) {
  const explained = plan.limbs.map(([said]) => said);
  const words = [...explained, ...read.strangeLimbs].slice(0, 40);
  if (words.length === 0) return null;
  const chosen = new Map(plan.limbs);
  return (
    <fieldset class="guided-asked">
      <legend>{say`Which limbs are meant?`}</legend>
      {words.map((said) => (
        <label key={said}>
          {say`“${said.slice(0, 40)}” is`}{' '}
          <select
            value={chosen.get(said) ?? ''}
            onChange={(event) => {
              const limb = event.currentTarget.value as Limb | '';
              const others = plan.limbs.filter(([other]) => other !== said);
              change({ limbs: limb === '' ? others : [...others, [said, limb]] });
            }}
          >
            <option value="">{say`no limb: leave it open`}</option>
            {limbs.map((limb) => (
              <option key={limb} value={limb}>
                {limbName(limb)}
              </option>
            ))}
          </select>
        </label>
      ))}
    </fieldset>
  );
}
