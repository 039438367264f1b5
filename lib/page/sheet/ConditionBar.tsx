import { useRef, useState } from 'preact/hooks';
import { daysFromIso } from '../../sheet/days.ts';
import { say } from '../../words/say.ts';
import { shownDay } from '../../words/shownDay.ts';
import { shownNumber } from '../../words/shownNumber.ts';
import type { Condition } from './matchingRows.ts';
import type { ShownColumn } from './shownColumns.ts';

interface BarProps {
  readonly columns: readonly ShownColumn[];
  readonly conditions: readonly Condition[];
  readonly onChange: (conditions: readonly Condition[]) => void;
}

/** Which rows to keep: one condition after another, each on one column, each to be taken off again. */
export function ConditionBar({ columns, conditions, onChange }: BarProps) {
  const [name, setName] = useState('');
  const choice = useRef<HTMLSelectElement>(null);
  const column = columns.find((one) => one.name === name);
  // What is pressed goes away with it, and the focus would be nowhere.
  const change = (changed: readonly Condition[]) => {
    choice.current!.focus();
    onChange(changed);
  };
  const add = (form: HTMLFormElement) => {
    const condition = column && conditionFrom(column, new FormData(form));
    if (!condition) return;
    change([...conditions, condition]);
    setName('');
  };
  return (
    <>
      <form
        class="sheet-bar unprinted"
        onSubmit={(event) => {
          event.preventDefault();
          add(event.currentTarget);
        }}
      >
        <label>
          {say`Keep rows by`}
          <select ref={choice} value={name} onChange={(event) => setName(event.currentTarget.value)}>
            <option value="">{say`all rows`}</option>
            {columns.map((one) => (
              <option key={one.name} value={one.name}>
                {one.title}
              </option>
            ))}
          </select>
        </label>
        {column && <Bounds key={column.name} column={column} />}
        {column && <button type="submit">{say`Keep these`}</button>}
      </form>
      {conditions.length > 0 && (
        <ul class="conditions">
          {conditions.map((condition, index) => (
            <li key={index}>
              <button
                type="button"
                onClick={() => change(conditions.filter((_, other) => other !== index))}
                aria-label={say`Take off: ${words(condition, columns)}`}
              >
                {words(condition, columns)} <span aria-hidden="true">×</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function Bounds({ column }: { column: ShownColumn }) {
  if (column.kind === 'text')
    return (
      <label>
        {say`containing`}
        <input name="contains" type="text" required />
      </label>
    );
  if (column.kind === 'boolean')
    return (
      <label>
        {say`being`}
        <select name="being">
          <option value="1">{say`yes`}</option>
          <option value="0">{say`no`}</option>
        </select>
      </label>
    );
  const type = column.kind === 'date' ? 'date' : 'number';
  const unit = column.symbol && `, ${column.symbol}`;
  return (
    <>
      <label>
        {say`from${unit}`}
        <input class="number" name="from" type={type} step="any" />
      </label>
      <label>
        {say`to${unit}`}
        <input class="number" name="to" type={type} step="any" />
      </label>
    </>
  );
}

/** What was typed, turned into the column's own unit; `undefined` where nothing was. */
function conditionFrom({ name, kind, factor }: ShownColumn, typed: FormData): Condition | undefined {
  const contains = typed.get('contains');
  if (kind === 'text') return contains ? { column: name, contains: String(contains) } : undefined;
  if (kind === 'boolean') return { column: name, from: Number(typed.get('being')), to: Number(typed.get('being')) };
  const bound = (end: string) => {
    const text = String(typed.get(end) ?? '');
    if (text === '') return undefined;
    return kind === 'date' ? daysFromIso(text) : Number(text) / factor;
  };
  const [from, to] = [bound('from'), bound('to')];
  return from === undefined && to === undefined ? undefined : { column: name, from, to };
}

function words(condition: Condition, columns: readonly ShownColumn[]): string {
  const column = columns.find(({ name }) => name === condition.column);
  if (!column) return condition.column;
  if ('contains' in condition) return say`${column.title} containing “${condition.contains}”`;
  const { from, to } = condition;
  if (column.kind === 'boolean') return `${column.title}: ${from ? say`yes` : say`no`}`;
  const shown = (value: number) =>
    column.kind === 'date' ? shownDay(value) : shownNumber(Number((value * column.factor).toPrecision(6)));
  const range = [from === undefined ? '' : say`from ${shown(from)}`, to === undefined ? '' : say`to ${shown(to)}`];
  return `${column.title} ${range.filter(Boolean).join(' ')} ${column.symbol}`.trim();
}
