import type { DisplayUnits } from '../../lib/index.ts';
import { say } from '../../lib/index.ts';
import { units } from './displayUnits.ts';

const LENGTHS = { mm: say`millimetres`, cm: say`centimetres`, in: say`inches` };
const MASSES = { kg: say`kilograms`, lb: say`pounds` };

export function UnitsSwitch() {
  return (
    <div class="units">
      <Switch label={say`Lengths in`} options={LENGTHS} quantity="length" />
      <Switch label={say`Weights in`} options={MASSES} quantity="mass" />
    </div>
  );
}

function Switch(props: { label: string; options: Record<string, string>; quantity: keyof DisplayUnits }) {
  const { label, options, quantity } = props;
  return (
    <label>
      {label}{' '}
      <select
        value={units.value[quantity]}
        onChange={(event) => {
          units.value = { ...units.value, [quantity]: event.currentTarget.value };
        }}
      >
        {Object.entries(options).map(([unit, name]) => (
          <option key={unit} value={unit}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
