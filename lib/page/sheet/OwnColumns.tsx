import { useContext, useId, useMemo, useRef, useState } from 'preact/hooks';
import { type Column, TextColumn } from '../../sheet/column.ts';
import { type DisplayUnits, formatQuantity, symbolOf, toDisplay } from '../../sheet/display.ts';
import { say } from '../../words/say.ts';
import { shownDay } from '../../words/shownDay.ts';
import type { SheetBlock } from '../blocks.ts';
import { SurroundingsContext } from '../surroundings.ts';
import type { Editing } from './editing.ts';
import { FormulaField } from './FormulaField.tsx';
import { previewColumn } from './previewColumn.ts';
import { useRested } from './useRested.ts';

interface OwnProps {
  readonly sheet: SheetBlock['sheet'];
  readonly editing: Editing;
  readonly revision: number;
  /** The first rows in view, for the first values. */
  readonly rows: Uint32Array;
  readonly onSaid: (words: string) => void;
}

const FIRST = 4;

/** The reader's own computed columns: one is added by its formula, seen as it is typed, and taken away again. */
export function OwnColumns(props: OwnProps) {
  const { sheet, editing, onSaid } = props;
  const [refused, refuse] = useState('');
  const summary = useRef<HTMLElement>(null);
  const remove = (name: string) => {
    refuse('');
    try {
      editing.removeOwn(name);
      // The button goes with its column.
      summary.current!.focus();
      onSaid(say`The column ${name} is removed`);
    } catch (error) {
      refuse(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <details class="own unprinted">
      <summary ref={summary}>{say`Add a column that is worked out`}</summary>
      <NewColumn {...props} />
      {editing.own.length > 0 && (
        <ul class="own-list">
          {editing.own.map(({ name, formula }) => (
            <li key={name}>
              <strong>{name}</strong>{' '}
              {sheet.names.includes(name) ? <code>{formula}</code> : <CannotBe formula={formula} />}{' '}
              <button type="button" onClick={() => remove(name)}>{say`Remove ${name}`}</button>
            </li>
          ))}
        </ul>
      )}
      {refused && (
        <p class="trouble" role="alert">
          {refused}.
        </p>
      )}
    </details>
  );
}

function CannotBe({ formula }: { formula: string }) {
  return (
    <>
      <code>{formula}</code>{' '}
      <span class="trouble">{say`can’t be worked out from this table and is kept for later.`}</span>
    </>
  );
}

function NewColumn({ sheet, editing, revision, rows, onSaid }: OwnProps) {
  const { units } = useContext(SurroundingsContext);
  const id = useId();
  const [name, setName] = useState('');
  const [formula, setFormula] = useState('');
  const [unit, setUnit] = useState('');
  const [trouble, setTrouble] = useState('');
  const asked = useRested(formula, 80);
  const askedUnit = useRested(unit.trim(), 80);
  const preview = useMemo(
    () => previewColumn(sheet, { formula: asked, ...(askedUnit && { unit: askedUnit }) }),
    [sheet, revision, asked, askedUnit],
  );
  const fault = preview && 'message' in preview && asked === formula ? preview : undefined;
  const taken = sheet.names.includes(name.trim());

  function keep() {
    const wanted = name.trim();
    try {
      if (wanted === '') throw new Error(say`The column needs a name. Give it one`);
      editing.addOwn({ name: wanted, formula: formula.trim(), ...(unit.trim() && { unit: unit.trim() }) });
      onSaid(say`The column ${wanted} is added`);
      setName('');
      setFormula('');
      setUnit('');
      setTrouble('');
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : String(error));
    }
  }

  return (
    <form
      class="own-form"
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <div class="own-fields">
        <label class="own-name">
          {say`Name`}
          <input
            type="text"
            value={name}
            autocomplete="off"
            aria-invalid={taken}
            aria-describedby={`${id}-name`}
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
        <FormulaField sheet={sheet} value={formula} onChange={setFormula} fault={fault} describedBy={`${id}-preview`} />
        <label class="own-unit">
          {say`Unit, if another`}
          <input
            type="text"
            value={unit}
            autocomplete="off"
            autocapitalize="off"
            placeholder={say`mm, deg, %`}
            onInput={(event) => setUnit(event.currentTarget.value)}
          />
        </label>
        <button type="submit">{say`Keep this column`}</button>
      </div>
      <p id={`${id}-name`} class="note">
        {taken && say`There is a column ${name.trim()} already: choose another name.`}
      </p>
      <div id={`${id}-preview`} class="own-preview" aria-live="polite">
        {fault && <p class="trouble">{fault.message}.</p>}
        {preview && 'column' in preview && <FirstValues column={preview.column} rows={rows} units={units} />}
      </div>
      {trouble && (
        <p class="trouble" role="alert">
          {trouble}.
        </p>
      )}
    </form>
  );
}

function FirstValues({ column, rows, units }: { column: Column; rows: Uint32Array; units: DisplayUnits }) {
  const first = [...rows.subarray(0, FIRST)].map((row) => valueWords(column, row, units));
  return (
    <p>
      {say`In ${unitWords(column, units)}. First rows:`} <span class="number">{first.join(' · ')}</span>
    </p>
  );
}

function unitWords({ kind, unit }: Column, units: DisplayUnits): string {
  if (kind === 'text') return say`words`;
  if (kind === 'boolean') return say`yes and no`;
  if (kind === 'date') return say`dates`;
  return symbolOf(toDisplay(1, unit, units).unit) || say`plain numbers`;
}

function valueWords(column: Column, row: number, units: DisplayUnits): string {
  if (column instanceof TextColumn) return column.at(row) || say`missing`;
  const value = column.values[row];
  if (Number.isNaN(value)) return say`missing`;
  if (column.kind === 'boolean') return value ? say`yes` : say`no`;
  return column.kind === 'date' ? shownDay(value) : formatQuantity(value, column.unit, units);
}
