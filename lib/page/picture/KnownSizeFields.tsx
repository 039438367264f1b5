import { useState } from 'preact/hooks';
import { type DisplayUnits, toDisplay } from '../../sheet/display.ts';
import { say } from '../../words/say.ts';
import { Ways } from './WhichFoot.tsx';
import type { KnownSize } from './work.ts';

interface SizeProps {
  readonly size: KnownSize;
  readonly onChange: (size: KnownSize) => void;
  readonly units: DisplayUnits;
}

const KINDS = [
  { value: 'bar', label: say`A bar` },
  { value: 'board', label: say`A flat board` },
  { value: 'none', label: say`Nothing` },
];

const FIRST: Readonly<Record<KnownSize['kind'], KnownSize>> = {
  bar: { kind: 'bar', length: 100 },
  board: { kind: 'board', width: 200, height: 100 },
  none: { kind: 'none' },
};

const ABOUT: Readonly<Record<KnownSize['kind'], string>> = {
  bar: say`A ruler or stick in the plane of the foot, its length known between two marks. Lengths come out; how square the camera stood does not.`,
  board: say`A flat board with four marks at the corners of a rectangle, in the plane of the foot. Lengths come out, and how square the camera stood, and what is askew is set straight in that plane.`,
  none: say`Without a known size there are angles and no lengths.`,
};

/** What lies in the picture to give its size, and how large it is. */
export function KnownSizeFields({ size, onChange, units }: SizeProps) {
  const field = (name: 'length' | 'width' | 'height', label: string) => {
    const value = (size as unknown as Record<string, number>)[name];
    return (
      <LengthField
        key={`${size.kind} ${name} ${units.length}`}
        label={label}
        value={value}
        units={units}
        onChange={(mm) => onChange({ ...size, [name]: mm } as KnownSize)}
      />
    );
  };
  return (
    <div class="picture-size">
      <Ways
        legend={say`What gives the size`}
        choices={KINDS}
        value={size.kind}
        onChange={(kind) => onChange(FIRST[kind as KnownSize['kind']])}
      />
      {size.kind === 'bar' && field('length', say`Length between the marks`)}
      {size.kind === 'board' && field('width', say`Width between the marks`)}
      {size.kind === 'board' && field('height', say`Height between the marks`)}
      <p class="note">{ABOUT[size.kind]}</p>
    </div>
  );
}

interface LengthProps {
  readonly label: string;
  /** In mm. */
  readonly value: number;
  readonly units: DisplayUnits;
  readonly onChange: (mm: number) => void;
}

function LengthField({ label, value, units, onChange }: LengthProps) {
  const { value: one, symbol } = toDisplay(1, 'mm', units);
  const [text, setText] = useState(() => String(Number((value * one).toFixed(3))));
  const [doubt, setDoubt] = useState('');
  const read = (typed: string) => {
    setText(typed);
    const mm = Number(typed.trim().replace(',', '.')) / one;
    const good = mm >= 5 && mm <= 2000;
    setDoubt(good ? '' : say`Give a length from ${+(5 * one).toFixed(2)} to ${+(2000 * one).toFixed(0)} ${symbol}`);
    if (good) onChange(mm);
  };
  return (
    <label class="picture-field">
      {label}, {symbol}
      <input
        type="text"
        inputMode="decimal"
        class="number"
        value={text}
        autocomplete="off"
        aria-invalid={doubt !== ''}
        onInput={(event) => read(event.currentTarget.value)}
      />
      {doubt && (
        <span class="picture-doubt" role="alert">
          {doubt}
        </span>
      )}
    </label>
  );
}
