import { useContext, useId, useState } from 'preact/hooks';
import { type DisplayUnits, toDisplay } from '../../sheet/display.ts';
import { say } from '../../words/say.ts';
import type { Control } from '../blocks.ts';
import { SurroundingsContext } from '../surroundings.ts';
import { useFieldText } from '../useFieldText.ts';

type Of<Input extends Control['input']> = Control & { readonly input: Input };

export function ControlPart({ block }: { block: Control }) {
  const { still, units } = useContext(SurroundingsContext);
  if (still)
    return (
      <p class="control still">
        {block.label}: <strong>{words(block, units)}</strong>
      </p>
    );
  switch (block.input) {
    case 'choice':
      return <Choice block={block} />;
    case 'several':
      return <Several block={block} />;
    case 'number':
      return <NumberControl block={block} />;
    case 'yes-no':
      return <YesNo block={block} />;
    case 'text':
      return <Text block={block} />;
  }
}

function words(block: Control, units: DisplayUnits): string {
  switch (block.input) {
    case 'choice':
      return block.options.find(({ value }) => value === block.value)?.label ?? block.value;
    case 'several':
      return block.options
        .filter(({ value }) => block.value.includes(value))
        .map(({ label }) => label)
        .join(', ');
    case 'number': {
      const shown = toDisplay(block.value, block.unit, units);
      return `${tidy(shown.value)} ${shown.symbol}`.trim();
    }
    case 'yes-no':
      return block.value ? say`yes` : say`no`;
    case 'text':
      return block.value;
  }
}

/** Without the tail that converting between units leaves. */
const tidy = (value: number) => Number(value.toPrecision(10));

function Help({ block, id }: { block: Control; id: string }) {
  return block.help ? (
    <p class="note" id={`${id}-help`}>
      {block.help}
    </p>
  ) : null;
}

const described = (block: Control, id: string) => (block.help ? `${id}-help` : undefined);

function Choice({ block }: { block: Of<'choice'> }) {
  const { set } = useContext(SurroundingsContext);
  const id = useId();
  return (
    <div class="control">
      <label for={id}>{block.label}</label>
      <select
        id={id}
        value={block.value}
        aria-describedby={described(block, id)}
        onChange={(event) => set(block.name, event.currentTarget.value)}
      >
        {block.options.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
      <Help block={block} id={id} />
    </div>
  );
}

function Several({ block }: { block: Of<'several'> }) {
  const { set } = useContext(SurroundingsContext);
  const id = useId();
  const toggle = (value: string, on: boolean) =>
    set(
      block.name,
      block.options.map((option) => option.value).filter((one) => (one === value ? on : block.value.includes(one))),
    );
  return (
    <fieldset class="control" aria-describedby={described(block, id)}>
      <legend>{block.label}</legend>
      <div class="options">
        {block.options.map(({ value, label }) => (
          <label key={value}>
            <input
              type="checkbox"
              checked={block.value.includes(value)}
              onChange={(event) => toggle(value, event.currentTarget.checked)}
            />
            {label}
          </label>
        ))}
      </div>
      <Help block={block} id={id} />
    </fieldset>
  );
}

/** Shown and typed in the reader's unit, handed on in the page's. */
function NumberControl({ block }: { block: Of<'number'> }) {
  const { set, units } = useContext(SurroundingsContext);
  const id = useId();
  const [wrong, setWrong] = useState('');
  const factor = toDisplay(1, block.unit, units).value;
  const { symbol } = toDisplay(block.value, block.unit, units);
  const [least, most] = [tidy(block.least * factor), tidy(block.most * factor)];
  const typed = useFieldText(String(tidy(block.value * factor)));
  const take = (text: string) => {
    const value = text.trim() === '' ? Number.NaN : Number(text.replace(',', '.'));
    if (value >= least && value <= most) {
      setWrong('');
      set(block.name, tidy(value / factor));
    } else setWrong(say`Give a number from ${least} to ${most}`);
  };
  return (
    <div class="control">
      <label for={id}>
        {block.label}
        {symbol && `, ${symbol}`}
      </label>
      <input
        id={id}
        class="number"
        type="number"
        inputMode="decimal"
        min={least}
        max={most}
        step={tidy(block.step * factor)}
        {...typed}
        aria-invalid={wrong !== ''}
        aria-describedby={wrong ? `${id}-wrong` : described(block, id)}
        onChange={(event) => take(event.currentTarget.value)}
      />
      {wrong && (
        <p class="trouble" id={`${id}-wrong`} role="alert">
          {wrong}
        </p>
      )}
      <Help block={block} id={id} />
    </div>
  );
}

function YesNo({ block }: { block: Of<'yes-no'> }) {
  const { set } = useContext(SurroundingsContext);
  const id = useId();
  return (
    <div class="control">
      <label>
        <input
          type="checkbox"
          checked={block.value}
          aria-describedby={described(block, id)}
          onChange={(event) => set(block.name, event.currentTarget.checked)}
        />
        {block.label}
      </label>
      <Help block={block} id={id} />
    </div>
  );
}

function Text({ block }: { block: Of<'text'> }) {
  const { set } = useContext(SurroundingsContext);
  const id = useId();
  const typed = useFieldText(block.value);
  return (
    <div class="control">
      <label for={id}>{block.label}</label>
      <input
        id={id}
        type="text"
        {...typed}
        aria-describedby={described(block, id)}
        onChange={(event) => set(block.name, event.currentTarget.value)}
      />
      <Help block={block} id={id} />
    </div>
  );
}
