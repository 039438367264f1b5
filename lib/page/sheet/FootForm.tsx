import { useContext, useId, useRef } from 'preact/hooks';
import { TextColumn } from '../../sheet/column.ts';
import { say } from '../../words/say.ts';
import { wholeNumber } from '../../words/wholeNumber.ts';
import type { Editable, SheetBlock } from '../blocks.ts';
import { SurroundingsContext } from '../surroundings.ts';
import { useFieldText } from '../useFieldText.ts';
import { cellText } from './cellText.ts';
import type { Editing } from './editing.ts';
import { editText } from './editText.ts';
import { rowName } from './rowName.ts';
import { type ShownColumn, shownColumns } from './shownColumns.ts';
import { typeCell } from './typing.ts';

interface FormProps {
  readonly sheet: SheetBlock['sheet'];
  readonly editable: Editable;
  readonly editing: Editing;
  /** Rows of the sheet in the order shown, and which of them it is. */
  readonly rows: Uint32Array;
  readonly at: number;
  readonly onGo: (row: number) => void;
  readonly onSaid: (words: string) => void;
}

/** How far a finger goes to turn the page, in px, and how much straighter than down. */
const SWIPE = 70;
const STRAIGHT = 2;

/** One foot as a form with large fields: last time's value beside each, the next foot by a button or a swipe. */
export function FootForm({ sheet, editable, editing, rows, at, onGo, onSaid }: FormProps) {
  const { units } = useContext(SurroundingsContext);
  const from = useRef<{ x: number; y: number } | undefined>(undefined);
  const heading = useRef<HTMLHeadingElement>(null);
  if (at < 0) return <p class="note">{say`There is no foot yet. Begin with a new one.`}</p>;
  const row = rows[at];
  const fields = shownColumns(sheet, editable.form, units, (name) => editing.typed(name)).filter(({ typed }) => typed);
  const relation = sheet.relations.find(({ name }) => name === editable.lastTime);
  const last = relation ? sheet.partners(relation)[row] : -1;

  function turn(by: number) {
    const to = at + by;
    if (to < 0 || to >= rows.length) return;
    (document.activeElement as HTMLElement | null)?.blur();
    onGo(to);
    onSaid(rowName(sheet, editable.names, rows[to]));
    heading.current?.scrollIntoView({ block: 'nearest' });
  }

  function onPointerUp(event: PointerEvent) {
    const begun = from.current;
    from.current = undefined;
    if (!begun || event.pointerType === 'mouse') return;
    const [across, along] = [event.clientX - begun.x, event.clientY - begun.y];
    if (Math.abs(across) > SWIPE && Math.abs(across) > STRAIGHT * Math.abs(along)) turn(across < 0 ? 1 : -1);
  }

  const put = (shown: ShownColumn, text: string) =>
    onSaid(typeCell({ editing, columns: fields, data: [], rows, whole: false }, at, fields.indexOf(shown), text));
  const tellsWhich = ({ name }: ShownColumn) => editable.names.includes(name);
  const incomplete = fields.some(
    (shown) => tellsWhich(shown) && cellText(sheet.column(shown.name), row, shown).value === '',
  );
  const field = (shown: ShownColumn) => (
    <Field
      key={`${shown.name} ${editing.rowKey(row)}`}
      shown={shown}
      sheet={sheet}
      editing={editing}
      row={row}
      last={tellsWhich(shown) ? -1 : last}
      onPut={(text) => put(shown, text)}
    />
  );
  return (
    <section
      class="foot-form unprinted"
      aria-label={say`One foot`}
      onPointerDown={(event) => {
        from.current = { x: event.clientX, y: event.clientY };
      }}
      onPointerUp={onPointerUp}
      onPointerCancel={() => {
        from.current = undefined;
      }}
    >
      <h3 ref={heading}>
        {rowName(sheet, editable.names, row)
          .split(', ')
          .map((part, index) => (
            <span key={index}>
              {index > 0 && ', '}
              <span class="unbroken">{part}</span>
            </span>
          ))}
      </h3>
      <Turn at={at} of={rows.length} onTurn={turn} />
      <details class="which-foot" open={incomplete}>
        <summary>{say`Which foot it is`}</summary>
        <div class="foot-fields">{fields.filter(tellsWhich).map(field)}</div>
      </details>
      <div class="foot-fields">{fields.filter((shown) => !tellsWhich(shown)).map(field)}</div>
      <Turn at={at} of={rows.length} onTurn={turn} />
    </section>
  );
}

function Turn({ at, of, onTurn }: { at: number; of: number; onTurn: (by: number) => void }) {
  return (
    <p class="turn">
      <button type="button" aria-disabled={at === 0} onClick={() => onTurn(-1)}>{say`‹ Foot before`}</button>
      <span class="number">{say`${at + 1} of ${wholeNumber(of)}`}</span>
      <button type="button" aria-disabled={at === of - 1} onClick={() => onTurn(1)}>{say`Next foot ›`}</button>
    </p>
  );
}

interface FieldProps {
  readonly shown: ShownColumn;
  readonly sheet: SheetBlock['sheet'];
  readonly editing: Editing;
  readonly row: number;
  /** The row of last time, -1 where there is none. */
  readonly last: number;
  readonly onPut: (text: string) => void;
}

function Field({ shown, sheet, editing, row, last, onPut }: FieldProps) {
  const id = useId();
  const column = sheet.column(shown.name);
  const unread = editing.unread(shown.name, row);
  const text = unread?.text ?? editText(column, row, shown);
  const typed = useFieldText(text);
  const before =
    last >= 0 && !(column instanceof TextColumn) && column.kind === 'number'
      ? cellText(column, last, shown)
      : undefined;
  const words = editing.words(shown.name);
  const common = {
    id,
    'aria-invalid': unread !== undefined,
    'aria-describedby': `${id}-note`,
  };
  const change = (typed: string) => {
    if (typed !== text) onPut(typed);
  };
  return (
    <div class={`foot-field${unread ? ' doubted' : ''}`}>
      <label for={id}>{shown.title}</label>
      <span class="foot-input">
        {words ? (
          <select {...common} value={unread ? '' : text} onChange={(event) => change(event.currentTarget.value)}>
            <option value="">{say`not said`}</option>
            {words.map((word) => (
              <option key={word} value={word}>
                {word}
              </option>
            ))}
          </select>
        ) : (
          <input
            {...common}
            {...keyboard(shown.kind, unread !== undefined)}
            autocomplete="off"
            spellcheck={false}
            {...typed}
            onChange={(event) => change(event.currentTarget.value)}
            onKeyDown={(event) => {
              if (event.key === 'Enter') focusNext(event.currentTarget);
            }}
          />
        )}
        <span class="foot-unit">{shown.symbol}</span>
      </span>
      <p id={`${id}-note`} class="foot-note">
        {unread ? (
          <strong>{say`Expected ${unread.expected}. ${unread.remedy}.`}</strong>
        ) : (
          before?.value && say`last time ${before.value}${/^[°%]|^$/.test(shown.symbol) ? '' : ' '}${shown.symbol}`
        )}
      </p>
    </div>
  );
}

/** Which keyboard a touch screen brings up. A date that can't be read stands as it was typed. */
const keyboard = (kind: ShownColumn['kind'], unread: boolean): { readonly type: 'text' } => ({
  // Its type allows no choice between the two.
  type: (kind === 'date' && !unread ? 'date' : 'text') as 'text',
  ...(kind === 'number' && { inputMode: 'decimal' }),
  ...{ enterkeyhint: 'next' },
});

/** The field after this one, so that a whole foot is typed without touching the screen between fields. */
function focusNext(field: HTMLElement): void {
  const all = [...field.closest('.foot-form')!.querySelectorAll<HTMLElement>('input, select')];
  all[all.indexOf(field) + 1]?.focus();
}
