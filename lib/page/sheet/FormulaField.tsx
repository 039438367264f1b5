import { useId, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Place } from '../../sheet/formula/syntax.ts';
import { say } from '../../words/say.ts';
import type { SheetBlock } from '../blocks.ts';
import { completions, wordAt } from './completions.ts';

interface FieldProps {
  readonly sheet: SheetBlock['sheet'];
  readonly value: string;
  readonly onChange: (formula: string) => void;
  /** What is wrong, underlined. */
  readonly fault?: Place;
  /** The element that says what is wrong. */
  readonly describedBy: string;
}

/** A formula while it is written: columns and functions are offered as one types, and a fault is underlined at its place. */
export function FormulaField({ sheet, value, onChange, fault, describedBy }: FieldProps) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const mirror = useRef<HTMLDivElement>(null);
  const caretAfter = useRef<number | undefined>(undefined);
  const [caret, setCaret] = useState(0);
  const [open, setOpen] = useState(false);
  const [active, setActive] = useState(0);
  const { start, word } = wordAt(value, caret);
  const offered = useMemo(() => completions(word, sheet, (name) => sheet.describe(name).title), [word, sheet]);
  const shown = open && offered.length > 0;
  const chosen = Math.min(active, offered.length - 1);

  useLayoutEffect(() => {
    if (caretAfter.current === undefined) return;
    input.current!.setSelectionRange(caretAfter.current, caretAfter.current);
    caretAfter.current = undefined;
    follow();
  }, [value]);

  /** The underline lies under the text, and scrolls with it. */
  function follow() {
    setCaret(input.current!.selectionStart ?? 0);
    mirror.current!.scrollLeft = input.current!.scrollLeft;
  }

  function take(index: number) {
    const { text } = offered[index];
    caretAfter.current = start + text.length;
    onChange(value.slice(0, start) + text + value.slice(caret));
    setCaret(caretAfter.current);
    setOpen(false);
  }

  function onKeyDown(event: KeyboardEvent) {
    if (!shown) {
      if (event.key === 'ArrowDown' && offered.length > 0) {
        setOpen(true);
        event.preventDefault();
      }
      return;
    }
    if (event.key === 'ArrowDown') setActive((chosen + 1) % offered.length);
    else if (event.key === 'ArrowUp') setActive((chosen + offered.length - 1) % offered.length);
    else if (event.key === 'Enter' || (event.key === 'Tab' && !event.shiftKey)) take(chosen);
    else if (event.key === 'Escape') setOpen(false);
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  return (
    <div class="formula-field">
      <label for={id}>{say`Formula`}</label>
      <div class="formula-box">
        <div class="formula-mirror" aria-hidden="true" ref={mirror}>
          {fault ? (
            <>
              {value.slice(0, fault.start)}
              <span class="fault">{value.slice(fault.start, Math.max(fault.end, fault.start + 1)) || ' '}</span>
              {value.slice(Math.max(fault.end, fault.start + 1))}
            </>
          ) : (
            value
          )}
        </div>
        <input
          id={id}
          ref={input}
          class="formula"
          type="text"
          role="combobox"
          aria-expanded={shown}
          aria-controls={`${id}-list`}
          aria-autocomplete="list"
          aria-activedescendant={shown ? `${id}-${chosen}` : undefined}
          aria-invalid={fault !== undefined}
          aria-describedby={describedBy}
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          placeholder="medial_heel_mm - lateral_heel_mm"
          value={value}
          onInput={(event) => {
            onChange(event.currentTarget.value);
            setOpen(true);
            setActive(0);
            follow();
          }}
          onKeyDown={onKeyDown}
          onKeyUp={follow}
          onClick={follow}
          onScroll={follow}
          onBlur={() => setOpen(false)}
        />
        <div id={`${id}-list`} class="offered" role="listbox" aria-label={say`Columns and functions`} hidden={!shown}>
          {offered.map(({ name, about }, index) => (
            // biome-ignore lint/a11y/useFocusableInteractive: the focus stays in the field, as the combobox pattern has it
            // biome-ignore lint/a11y/useKeyWithClickEvents: keys are the field's
            <div
              key={name}
              id={`${id}-${index}`}
              role="option"
              aria-selected={index === chosen}
              onPointerDown={(event) => event.preventDefault()}
              onClick={() => take(index)}
            >
              <code>{name}</code> <span>{about}</span>
            </div>
          ))}
        </div>
      </div>
    </div>
  );
}
