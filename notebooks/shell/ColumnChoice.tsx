import {
  type ColumnUse,
  type Limb,
  limbInHeading,
  limbName,
  limbs,
  sameUse,
  say,
  schemas,
  symbolOf,
  type TableName,
  unitOfHeading,
  usualUnits,
} from '../../lib/index.ts';

interface Props {
  readonly heading: string;
  /** Some of what stands in it. */
  readonly cells: readonly string[];
  readonly table: TableName;
  readonly use: ColumnUse;
  /** What is likely, where `use` was remembered from another file. */
  readonly instead?: ColumnUse;
  readonly change: (use: ColumnUse) => void;
}

/** What one column of a file is: a column of ours, with its limb and unit where they matter, or its own, or nothing. */
export function ColumnChoice({ heading, cells, table, use, instead, change }: Props) {
  const column = use.kind === 'column' ? schemas[table].columns.find(({ name }) => name === use.column) : undefined;
  const title = heading === '' ? say`no heading` : heading;
  const units = column?.kind === 'number' ? usualUnits(column.unit) : [];
  const ofAFoot =
    table === 'feet' && (column?.kind === 'number' || column?.kind === 'boolean') && column.name !== 'repeat';
  return (
    <li>
      <p>
        <strong>{brief(title)}</strong>{' '}
        <span class="note">{cells.length > 0 ? cells.map(brief).join(' · ') : say`empty`}</span>
      </p>
      <label>
        <span class="unseen">{brief(title)}</span> {say`is`}{' '}
        <select
          value={use.kind === 'column' ? use.column : `:${use.kind}`}
          onChange={({ currentTarget: { value } }) => {
            if (value === ':own' || value === ':nothing') change({ kind: value === ':own' ? 'own' : 'nothing' });
            else if (use.kind === 'column')
              change({ kind: 'column', column: value, ...(use.limb && { limb: use.limb }) });
            else change({ kind: 'column', column: value, ...saidInHeading(heading, table, value) });
          }}
        >
          {heading !== '' && <option value=":own">{say`kept under its own heading`}</option>}
          <option value=":nothing">{say`left out`}</option>
          {schemas[table].columns.map(({ name, title: ours }) => (
            <option key={name} value={name}>
              {ours}
            </option>
          ))}
        </select>
      </label>
      {use.kind === 'column' && ofAFoot && (
        <label>
          <span class="unseen">{brief(title)}:</span> {say`of`}{' '}
          <select
            value={use.limb ?? ''}
            onChange={({ currentTarget: { value } }) => {
              const { limb: _, ...rest } = use;
              change(value === '' ? rest : { ...rest, limb: value as Limb });
            }}
          >
            <option value="">{say`the row’s limb`}</option>
            {limbs.map((limb) => (
              <option key={limb} value={limb}>{say`the ${limbName(limb)}`}</option>
            ))}
          </select>
        </label>
      )}
      {use.kind === 'column' && column && units.length > 1 && (
        <label>
          <span class="unseen">{brief(title)}:</span> {say`in`}{' '}
          <select
            value={use.unit ?? column.unit}
            onChange={({ currentTarget: { value } }) => {
              const { unit: _, ...rest } = use;
              change(value === column.unit ? rest : { ...rest, unit: value });
            }}
          >
            {units.map((unit) => (
              <option key={unit} value={unit}>
                {symbolOf(unit)}
              </option>
            ))}
          </select>
        </label>
      )}
      {instead && !sameUse(use, instead) && (
        <p class="note">
          {say`as you chose before`}{' '}
          <button type="button" onClick={() => change(instead)}>
            <span class="unseen">{brief(title)}:</span> {say`Choose again`}
          </button>
        </p>
      )}
    </li>
  );
}

/** The limb and the unit that a heading names, where the column is one of numbers. */
function saidInHeading(heading: string, table: TableName, name: string): { limb?: Limb; unit?: string } {
  const column = schemas[table].columns.find((one) => one.name === name);
  if (column?.kind !== 'number') return {};
  const limb = table === 'feet' ? limbInHeading(heading)?.limb : undefined;
  const unit = usualUnits(column.unit).find((code) => code === unitOfHeading(heading) && code !== column.unit);
  return { ...(limb && { limb }), ...(unit && { unit }) };
}

/** A name or a cell may be thousands of letters long. */
const brief = (text: string) => (text.length > 60 ? `${text.slice(0, 60)}…` : text);
