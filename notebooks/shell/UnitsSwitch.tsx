import type { DisplayUnits } from '../../lib/index.ts';
import { say } from '../../lib/index.ts';
import { units } from './displayUnits.ts';

const LENGTHS = { mm: 'millimetres', cm: 'centimetres', in: 'inches' };
const MASSES = { kg: 'kilograms', lb: 'pounds' };

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
